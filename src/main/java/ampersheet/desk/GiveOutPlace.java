package ampersheet.desk;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.issue.BenchCardFile;
import ampersheet.issue.CourseFolder;
import ampersheet.issue.Exchange;
import ampersheet.issue.Handouts;
import ampersheet.issue.Issue;
import ampersheet.issue.Output;
import ampersheet.issue.PracticeFile;
import ampersheet.issue.Progress;
import ampersheet.render.pdf.ExtraFont;
import ampersheet.render.pdf.Profile;
import ampersheet.render.qti.QtiVersion;
import ampersheet.sheet.Document;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.source.Languages;
import ampersheet.source.Told;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** What is handed out: made in the background, each file whole or not there. */
final class GiveOutPlace {
    private static final Pattern MADE = Pattern.compile("made/[\\w.-]+\\.(?:pdf|html)\\b");
    private static final int MOST_VARIANTS = 200;
    private static final int PRACTICE_VARIANTS = 12;
    private static final int EXCHANGE_VARIANTS = 10;

    private final CourseSet set;
    private final Frame frame;
    private final Work work;

    GiveOutPlace(CourseSet set, Frame frame, Work work) {
        this.set = set;
        this.frame = frame;
        this.work = work;
    }

    Reply show(Call call) {
        CourseFolder files = set.course().files();
        Map<String, Object> values = Pages.values(
                "hasPlan", set.course().isThere(CourseFolder.PLAN),
                "hasClass", set.course().isThere(CourseFolder.CLASS),
                "keeping", PartsPlace.keeping(set),
                "hasFont", set.course().isThere(CourseFolder.FONT),
                "largest", Limits.USUAL.bodyBytes() >> 20,
                "own", set.course().isFolder(files.templates()),
                "learners", learners(),
                "made", made(),
                "work", shown(work.standing("give-out")));
        return frame.page(Reply.FINE, call, "give-out", "give-out", values);
    }

    private int learners() {
        try {
            return set.roster().map(roster -> roster.seats().size()).orElse(0);
        } catch (DiagnosticException broken) {
            return 0; // the place of the class tells why
        }
    }

    /** What lies there, to be opened. */
    private List<Map<String, Object>> made() {
        List<Map<String, Object>> made = new ArrayList<>();
        CourseFolder files = set.course().files();
        for (String name : set.course().names(files.made())) {
            made.add(Pages.values("path", "/made/" + name, "name", name));
        }
        for (String name : set.course().names(files.pages())) {
            if (name.endsWith(".html") || name.endsWith(".csv")) {
                made.add(Pages.values("path", "/made/class/" + name, "name", "class/" + name));
            }
        }
        made.sort(Comparator.comparingInt(one -> rank((String) one.get("name"))));
        return made;
    }

    /** What is printed or opened first, what only programs read last. */
    private static int rank(String name) {
        return name.endsWith(".pdf") ? 0 : name.endsWith(".html") ? 1 : name.contains("manifest") ? 3 : 2;
    }

    static Map<String, Object> shown(Optional<Work.Standing> standing) {
        if (standing.isEmpty()) {
            return Pages.values("is", false);
        }
        Work.Standing now = standing.get();
        return Pages.values(
                "is", true,
                "title", now.title(),
                "place", now.place(),
                "state", now.state().name().toLowerCase(Locale.ROOT),
                "of", now.of(),
                "made", now.made(),
                "all", now.all(),
                "seconds", now.seconds(),
                "left", now.secondsLeft(),
                "told", now.told(),
                "open", named(now.told()),
                "faults", Frame.told(now.faults()));
    }

    /** Files that are told of and can be opened. */
    private static List<String> named(List<String> told) {
        List<String> named = new ArrayList<>();
        for (String one : told) {
            MADE.matcher(one).results().map(MatchResult::group).forEach(named::add);
        }
        return named;
    }

    /** How far it is, for the script of any page. */
    Reply progress(Call call) {
        Map<String, Object> values = Pages.values("work", shown(work.standing()));
        if (call.part()) {
            return frame.part("work-part", values);
        }
        return Reply.to(work.standing().map(now -> "/" + now.place()).orElse("/give-out"));
    }

    Reply stop() {
        work.stop();
        return frame.goOn(
                work.standing().map(now -> "/" + now.place()).orElse("/give-out"), List.of(say("desk.work.stopping")));
    }

    /** Begins to make what was asked for. */
    Reply make(Call call) {
        Form form = call.form();
        String what = form.text("what");
        try {
            requireFolders();
            Work.Task task;
            String title;
            switch (what) {
                case "pdf", "count", "cards" -> {
                    Roster roster = learnersOf(form);
                    ProblemSet of = set.set();
                    Handouts.Wish wish = wish(form, of);
                    title = switch (what) {
                        case "pdf" -> say("desk.make.handout");
                        case "count" -> say("desk.make.count");
                        default -> say("desk.make.cards");
                    };
                    task = what.equals("cards")
                            ? progress -> cards(of, roster, wish, progress)
                            : progress -> handout(of, roster, wish, what.equals("count"), progress);
                }
                case "pages" -> {
                    Roster roster = classList();
                    ProblemSet of = set.set();
                    Issue.Besides besides = new Issue.Besides(
                            form.has("homework"),
                            form.has("pdf"),
                            form.has("drawings"),
                            form.has("pdf") ? set.font() : Optional.empty());
                    title = say("desk.make.pages");
                    task = progress -> pages(of, roster, besides, progress);
                }
                case "practice" -> {
                    ProblemSet of = set.setWhateverTheParts();
                    title = say("desk.make.practice");
                    task = progress ->
                            practice(of, form.number("variants", 1, MOST_VARIANTS, PRACTICE_VARIANTS), progress);
                }
                case "exchange" -> {
                    ProblemSet of = set.setWhateverTheParts();
                    title = say("desk.make.exchange");
                    task = progress -> exchange(of, form, progress);
                }
                default -> {
                    return Reply.unknown();
                }
            }
            return frame.begun(work.begin(title, "give-out", task), "/give-out");
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, "give-out", say("desk.make.unfit"), unfit);
        }
    }

    /** Nothing may be written through a link out of the course. */
    private void requireFolders() {
        CourseFolder files = set.course().files();
        for (Path folder : List.of(
                files.made(),
                files.pages(),
                files.pages().resolve("sheets"),
                files.pages().resolve("keys"),
                files.pages().resolve("homework"))) {
            set.course().requireFolder(folder);
        }
    }

    private Roster classList() {
        return set.roster()
                .orElseThrow(() -> new DiagnosticException(Diagnostic.error(
                        Place.inFile(CourseFolder.CLASS),
                        say("desk.class.missing"),
                        say("desk.class.missing.expected"),
                        say("desk.class.missing.next"))));
    }

    private Roster learnersOf(Form form) {
        int copies = form.number("copies", 1, 9_999, 0);
        if (!form.text("who").equals("copies") && set.course().isThere(CourseFolder.CLASS)) {
            return classList();
        }
        if (copies == 0) {
            return classList();
        }
        List<Roster.Seat> seats = new ArrayList<>();
        for (int seat = 1; seat <= copies; seat++) {
            seats.add(new Roster.Seat(seat, ""));
        }
        return new Roster(seats);
    }

    private Handouts.Wish wish(Form form, ProblemSet of) {
        Document.Paper paper = form.text("paper").equals("letter")
                ? Document.Paper.LETTER
                : form.text("paper").equals("a4")
                        ? Document.Paper.A4
                        : of.plan().paper();
        boolean folded = form.text("profile").equals("booklet");
        return new Handouts.Wish(
                folded ? paper.folded() : paper,
                choice(Profile.values(), form.text("profile"), Profile.COMPACT),
                choice(Handouts.Keys.values(), form.text("keys"), Handouts.Keys.GRID),
                !form.has("no-letters"),
                !form.has("no-host"),
                form.has("shared"),
                set.font());
    }

    /** Keeps a font in the course, if it is one. */
    Reply takeFont(Call call) {
        try {
            if (call.uploads().isEmpty()) {
                return frame.goOn("/give-out", List.of(say("desk.file.unchosen")));
            }
            byte[] bytes = call.uploads().get(0).bytes();
            new ExtraFont(say("desk.file.sent"), bytes);
            set.course().writeBytes(CourseFolder.FONT, bytes);
            return frame.goOn("/give-out", List.of(say("desk.font.kept")));
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, "give-out", say("desk.font.unfit"), unfit);
        }
    }

    Reply removeFont() {
        set.course().removeFile(CourseFolder.FONT);
        return frame.goOn("/give-out", List.of(say("desk.font.removed")));
    }

    private static <E extends Enum<E>> E choice(E[] values, String word, E otherwise) {
        for (E value : values) {
            if (value.name().toLowerCase(Locale.ROOT).equals(word)) {
                return value;
            }
        }
        return otherwise;
    }

    private Output.Terms terms(Progress progress) {
        CourseFolder files = set.course().files();
        return new Output.Terms(
                        List.of(files.plan(), files.roster(), files.parts(), files.font()), false, false, place -> {})
                .watchedBy(progress);
    }

    private List<String> handout(
            ProblemSet of, Roster roster, Handouts.Wish wish, boolean onlyCount, Progress progress) {
        Path out = set.course().files().handout();
        List<String> told = new ArrayList<>();
        if (onlyCount) {
            Handouts.print(of, roster, out, wish, terms(progress), paper -> {
                told.add(paper.sentence(Languages.ENGLISH));
                paper.saving().ifPresent(told::add);
                return false;
            });
            return told;
        }
        Handouts.Printed printed = Handouts.print(of, roster, out, wish, terms(progress), paper -> {
            told.add(paper.sentence(Languages.ENGLISH));
            return true;
        });
        told.add(say("desk.made.print", "files", names(printed.files())));
        told.add(say("desk.made.grid", "grid", set.course().shown(printed.grid())));
        told.add(say("desk.made.archive", "archive", set.course().shown(printed.archive())));
        printed.left()
                .ifPresent(left ->
                        told.add(say("desk.made.left", "file", set.course().shown(left))));
        return told;
    }

    private String names(List<Path> files) {
        return Told.all(files.stream().map(file -> set.course().shown(file)).toList());
    }

    private List<String> cards(ProblemSet of, Roster roster, Handouts.Wish wish, Progress progress) {
        BenchCardFile.Printed printed =
                BenchCardFile.print(of, roster, set.course().files().cards(), wish, terms(progress));
        List<String> told = new ArrayList<>();
        told.add(count("desk.made.cards", printed.cards()));
        printed.left()
                .forEach(one ->
                        told.add(say("desk.made.cards.none", "template", one.template(), "because", one.because())));
        return told;
    }

    private List<String> pages(ProblemSet of, Roster roster, Issue.Besides besides, Progress progress) {
        Issue.Issued issued = Issue.issue(
                of,
                roster,
                set.course().files().pages(),
                Math.max(1, Runtime.getRuntime().availableProcessors() - 1),
                besides,
                terms(progress));
        List<String> told = new ArrayList<>();
        told.add(count("desk.made.pages", issued.sheets()));
        told.add(besides.homework() ? say("desk.made.pages.homework") : say("desk.made.pages.sheets"));
        if (issued.left().files() > 0) {
            told.add(count("desk.made.pages.left", issued.left().files()));
        }
        return told;
    }

    private List<String> practice(ProblemSet of, int variants, Progress progress) {
        PracticeFile.Written written =
                PracticeFile.write(of, variants, set.course().files().practice(), terms(progress));
        return List.of(count("desk.made.practice", written.skills()));
    }

    private List<String> exchange(ProblemSet of, Form form, Progress progress) {
        Exchange.Packed packed = Exchange.pack(
                of.plan(),
                set.library(),
                form.number("variants", 1, MOST_VARIANTS, EXCHANGE_VARIANTS),
                form.text("version").equals("2.1") ? QtiVersion.V2_1 : QtiVersion.V3_0,
                set.course().files().exchange(),
                terms(progress));
        List<String> told = new ArrayList<>();
        told.add(count("desk.made.exchange", packed.items()));
        packed.leftOut().forEach(what -> told.add(say("desk.made.exchange.left", "what", what)));
        return told;
    }
}
