package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Severity;
import ampersheet.issue.CourseFolder;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What all pages have around them: the places, the course, and what there is to tell of the last thing done. */
final class Frame {
    private static final int MOST_NOTICES = 200;
    private static final List<String[]> PLACES = List.of(
            new String[] {"lessons", say("desk.place.lessons")},
            new String[] {"set", say("desk.place.set")},
            new String[] {"weeks", say("desk.place.weeks")},
            new String[] {"class", say("desk.place.class")},
            new String[] {"parts", say("desk.place.parts")},
            new String[] {"give-out", say("desk.place.give-out")},
            new String[] {"take-in", say("desk.place.take-in")},
            new String[] {"help", say("desk.place.help")});

    private final Pages pages = new Pages();
    private final CourseSet set;
    private final Alone alone;
    private final OwnFiles own;
    private final Map<Integer, List<String>> notices = new LinkedHashMap<>();
    private int last;

    Frame(CourseSet set, Alone alone, OwnFiles own) {
        this.set = set;
        this.alone = alone;
        this.own = own;
    }

    /** A page of a place. */
    Reply page(int status, Call call, String place, String template, Map<String, Object> values) {
        Map<String, Object> all = new LinkedHashMap<>(values);
        all.put("place", place);
        all.put("status", status);
        all.put("program", own.version());
        all.put("ownTemplates", set.course().isFolder(set.course().files().templates()));
        all.put("ownFont", set.course().isThere(CourseFolder.FONT));
        all.put("notices", notices(call));
        all.put("folder", String.valueOf(set.course().files().folder().getFileName()));
        all.put("alone", alone.isSo());
        all.put("path", set.course().files().folder().toString());
        all.put(
                "places",
                PLACES.stream()
                        .map(one -> Pages.values("path", one[0], "label", one[1], "here", one[0].equals(place)))
                        .toList());
        return Reply.page(status, pages.fill(template, all));
    }

    /** Part of a page, for its script. */
    Reply part(String template, Map<String, Object> values) {
        return Reply.page(Reply.FINE, pages.fill(template, values));
    }

    /** Goes on at the page that shows how far it is, or tells there that something else is being made. */
    Reply begun(boolean begun, String path) {
        return begun ? Reply.to(path) : goOn(path, List.of(say("desk.work.busy")));
    }

    /** Goes on at a page that tells this; reloading it tells it again, and does nothing again. */
    synchronized Reply goOn(String path, List<String> told) {
        if (told.isEmpty()) {
            return Reply.to(path);
        }
        last++;
        notices.put(last, List.copyOf(told));
        notices.keySet().removeIf(number -> number <= last - MOST_NOTICES);
        return Reply.to(path + (path.contains("?") ? "&" : "?") + "told=" + last);
    }

    /** Tells whether the last change of a file was taken back. */
    Reply undone(boolean undone, String path, String file) {
        String done = file.equals(CourseFolder.DECISIONS) ? say("desk.undone.decision") : say("desk.undone.change");
        return goOn(path, List.of(undone ? done : say("desk.undone.not", "file", file)));
    }

    private synchronized List<String> notices(Call call) {
        return notices.getOrDefault(call.query().number("told").orElse(0), List.of());
    }

    /** For pages: by file and line where it stands in one; each once, however many readers met it. */
    static List<Map<String, Object>> told(List<Diagnostic> diagnostics) {
        List<Map<String, Object>> told = new ArrayList<>();
        for (Diagnostic one : new LinkedHashSet<>(diagnostics)) {
            told.add(Pages.values(
                    "error", one.severity() == Severity.ERROR,
                    "file", inCourse(one.place().file()),
                    "line", one.place().line(),
                    "problem", capital(one.problem()),
                    "expected", one.expected(),
                    "next", capital(one.nextAction())));
        }
        return told;
    }

    /** In one line. */
    static String said(Diagnostic one) {
        return say("desk.remark", "problem", one.problem(), "next", one.nextAction());
    }

    /** Templates are read by their whole path; who reads this knows the folder. */
    private static String inCourse(String file) {
        int templates = file.lastIndexOf("/" + CourseFolder.TEMPLATES + "/");
        return file.substring(templates + 1);
    }

    static String capital(String sentence) {
        return sentence.isEmpty()
                ? sentence
                : sentence.substring(0, sentence.offsetByCodePoints(0, 1)).toUpperCase(Locale.ROOT)
                        + sentence.substring(sentence.offsetByCodePoints(0, 1));
    }

    /** A page that only says what does not fit. */
    Reply unfit(Call call, String place, String title, DiagnosticException unfit) {
        return page(
                Reply.NOT_FITTING,
                call,
                place,
                "unfit",
                Pages.values("title", title, "faults", told(unfit.diagnostics()), "back", place));
    }

    /** The lines of a text, each with whether the other lacks it, apart from what both begin and end with. */
    private static List<Map<String, Object>> apart(String text, String other) {
        List<String> lines = List.of(text.split("\n", -1));
        List<String> others = List.of(other.split("\n", -1));
        int shorter = Math.min(lines.size(), others.size());
        int begin = 0;
        while (begin < shorter && lines.get(begin).equals(others.get(begin))) {
            begin++;
        }
        int end = 0;
        while (end < shorter - begin && lines.get(lines.size() - 1 - end).equals(others.get(others.size() - 1 - end))) {
            end++;
        }
        List<Map<String, Object>> shown = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            shown.add(Pages.values("text", lines.get(i), "apart", i >= begin && i < lines.size() - end));
        }
        return shown;
    }

    /** A page that shows what is there beside what would have been written over it. */
    Reply stale(Call call, String place, Course.Stale stale, String mine) {
        return page(
                Reply.STALE,
                call,
                place,
                "stale",
                Pages.values(
                        "file", stale.file(),
                        "now", stale.now().text(),
                        "lines", apart(stale.now().text(), mine),
                        "mineLines", apart(mine, stale.now().text()),
                        "version", stale.now().version(),
                        "mine", mine,
                        "isPlan", stale.file().equals(CourseFolder.PLAN)));
    }
}
