package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.issue.CourseFolder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * What lies in the folder of made things, each with what has changed of the course since it was made. What this desk
 * made itself it knows; of anything else the files' own times tell.
 */
final class MadeThings {
    private static final String PAGES = "class";

    private final CourseSet set;
    private final Map<String, Ingredients> madeFrom = new TreeMap<>();

    MadeThings(CourseSet set) {
        this.set = set;
    }

    /** What is made by one button, and lies under one name. */
    enum Thing {
        HANDOUT("handout", CourseFolder::handout),
        CARDS("cards", CourseFolder::cards),
        PRACTICE("practice", CourseFolder::practice),
        EXCHANGE("exchange", CourseFolder::exchange),
        PAGES(MadeThings.PAGES, CourseFolder::pages);

        private final String stem;
        private final Function<CourseFolder, Path> place;

        Thing(String stem, Function<CourseFolder, Path> place) {
            this.stem = stem;
            this.place = place;
        }

        Path place(CourseFolder files) {
            return place.apply(files);
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
        List<Map<String, Object>> shown = new ArrayList<>();
        CourseFolder files = set.course().files();
        Ingredients now = set.ingredients();
        for (String name : set.course().names(files.made())) {
            shown.add(Pages.values("path", "/made/" + name, "name", name, "older", older(name, now)));
        }
        for (String name : set.course().names(files.pages())) {
            if (name.endsWith(".html") || name.endsWith(".csv")) {
                String of = PAGES + "/" + name;
                shown.add(Pages.values("path", "/made/" + of, "name", of, "older", older(of, now)));
            }
        }
        shown.sort(Comparator.comparingInt(one -> rank((String) one.get("name"))));
        return shown;
    }

    /** What is printed or opened first, what only programs read last. */
    private static int rank(String name) {
        return name.endsWith(".pdf") ? 0 : name.endsWith(".html") ? 1 : name.contains("manifest") ? 3 : 2;
    }

    private synchronized String older(String name, Ingredients now) {
        Optional<Thing> thing = thing(name);
        if (thing.isEmpty()) {
            return "";
        }
        Ingredients known = madeFrom.get(thing.get().stem);
        Ingredients asked = thing.get().isForNobodyInParticular() ? now.forNobodyInParticular() : now;
        List<String> changed = known != null
                ? asked.changedSince(known)
                : set.course().writtenAfter("made/" + name, asked.versions().keySet());
        return changed.isEmpty() ? "" : say("desk.older.file", "files", Ingredients.told(changed));
    }

    /** Tables that go with an archive, and archives, are to be kept as they are. */
    private static Optional<Thing> thing(String name) {
        for (Thing thing : Thing.values()) {
            boolean isOpened = name.equals(thing.stem + ".pdf")
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
