package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.CourseFolder;
import ampersheet.sheet.ArchivedClass;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.UnaryOperator;

/**
 * What lies in the folder of made things, each with what has changed of the course since it was made. What this desk
 * made itself it knows; of anything else an archive beside it tells what was asked for, and the files' own times the
 * rest.
 */
final class MadeThings {
    private static final String PDF = ".pdf";
    private static final String PAGES = CourseFolder.Made.PAGES;

    private final Course course;
    private final Source source;
    private final Map<String, Ingredients> madeFrom = new TreeMap<>();
    /** What was asked for by archives, by the state in which they were read. */
    private final Map<String, String> archived = new TreeMap<>();

    MadeThings(Course course, Source source) {
        this.course = course;
        this.source = source;
    }

    /** What is made by one button, and lies under one name. */
    enum Thing {
        HANDOUT("handout", CourseFolder.Made::handout),
        CARDS("cards", CourseFolder.Made::cards),
        PRACTICE("practice", CourseFolder.Made::practice),
        EXCHANGE("exchange", CourseFolder.Made::exchange),
        PAGES(MadeThings.PAGES, CourseFolder.Made::pages);

        private final String stem;
        private final Function<CourseFolder.Made, Path> place;

        Thing(String stem, Function<CourseFolder.Made, Path> place) {
            this.stem = stem;
            this.place = place;
        }

        Path place(CourseFolder.Made made) {
            return place.apply(made);
        }

        boolean isForNobodyInParticular() {
            return this == PRACTICE || this == EXCHANGE;
        }
    }

    /** Notes down what a thing was made from. */
    synchronized void made(Thing thing, Ingredients from) {
        madeFrom.put(thing.stem, thing.isForNobodyInParticular() ? from.forNobodyInParticular() : from);
    }

    /** What lies there, to be opened. */
    List<Map<String, Object>> shown() {
        Ingredients now = source.ingredients();
        return shown(name -> older(name, now));
    }

    /** The same where it cannot be made anew, so that nothing is older than what it would be. */
    List<Map<String, Object>> left() {
        return shown(name -> "");
    }

    private List<Map<String, Object>> shown(UnaryOperator<String> older) {
        List<Map<String, Object>> shown = new ArrayList<>();
        for (String name : course.names(source.made().folder())) {
            shown.add(shown(name, older));
        }
        for (String name : course.names(source.made().pages())) {
            if (name.endsWith(".html") || name.endsWith(".csv")) {
                shown.add(shown(PAGES + "/" + name, older));
            }
        }
        shown.sort(Comparator.comparingInt(one -> rank((String) one.get("name"))));
        return shown;
    }

    private Map<String, Object> shown(String name, UnaryOperator<String> older) {
        Map<String, Object> shown = link(path(name));
        shown.put("name", name);
        shown.put("older", older.apply(name));
        return shown;
    }

    /** A made file by its path in the course, with what a browser does with it. */
    static Map<String, Object> link(String path) {
        String name = path.substring(path.lastIndexOf('/') + 1);
        boolean isPage = name.endsWith(".html") && !acts(path);
        String opens = name.endsWith(PDF) ? "apart" : isPage ? "here" : "saved";
        return Pages.values("path", "/" + path, "name", path, "opens", opens);
    }

    /** Whether a page does nothing without its script, so that it is not shown but handed over. */
    static boolean acts(String path) {
        String name = path.substring(path.lastIndexOf('/') + 1);
        return name.startsWith("practice") || path.endsWith("homework/" + name);
    }

    private String path(String name) {
        return course.shown(source.made().folder()) + "/" + name;
    }

    /** What is printed or opened first, what only programs read last. */
    private static int rank(String name) {
        return name.endsWith(PDF) ? 0 : name.endsWith(".html") ? 1 : name.contains("manifest") ? 3 : 2;
    }

    private synchronized String older(String name, Ingredients now) {
        Optional<Thing> thing = thing(name);
        if (thing.isEmpty()) {
            return "";
        }
        Ingredients known = madeFrom.get(thing.get().stem);
        Ingredients asked = thing.get().isForNobodyInParticular() ? now.forNobodyInParticular() : now;
        List<String> changed = known != null ? asked.changedSince(known) : changedByTime(name, asked);
        return changed.isEmpty() ? "" : say("desk.older.file", "files", Ingredients.told(changed));
    }

    private List<String> changedByTime(String name, Ingredients now) {
        String asking = course.shown(source.file());
        return course.writtenAfter(path(name), now.versions().keySet()).stream()
                .filter(file -> !file.equals(asking)
                        || course.archives(source.made()).stream()
                                .noneMatch(archive ->
                                        asked(archive).equals(now.versions().get(asking))))
                .toList();
    }

    private String asked(Path archive) {
        return archived.computeIfAbsent(archive + " " + course.state(archive), read -> {
            try {
                return Course.version(ArchivedClass.plan(archive).written());
            } catch (DiagnosticException unfit) {
                return ""; // whoever marks by it is told why
            }
        });
    }

    /** Tables that go with an archive, and archives, are to be kept as they are. */
    private static Optional<Thing> thing(String name) {
        for (Thing thing : Thing.values()) {
            boolean isOpened = name.equals(thing.stem + PDF)
                    || name.equals(thing.stem + "-keys.pdf")
                    || name.equals(thing.stem + ".html")
                    || name.equals(thing.stem + ".zip")
                    || name.startsWith(thing.stem + "/") && name.endsWith(".html");
            if (isOpened) {
                return Optional.of(thing);
            }
        }
        return Optional.empty();
    }
}
