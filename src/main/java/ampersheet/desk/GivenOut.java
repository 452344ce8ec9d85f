package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.IssuedArchive;
import ampersheet.sheet.Plan;
import ampersheet.sheet.SheetId;
import ampersheet.source.Bounds;
import ampersheet.source.SourceFile;
import ampersheet.source.Unread;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The sheets that were given out, as their archives keep them, and which of them what came in is about. */
final class GivenOut {
    /** So many of the files that came in last are looked at for an ID. */
    private static final int MOST_LOOKED_AT = 20;

    private final CourseSet set;
    private final Map<String, Heading> headings = new TreeMap<>();
    private final Map<Path, Looked> looked = new TreeMap<>();
    private Last last = new Last("", Optional.empty());
    private Picked picked = new Picked("", "");

    /**
     * What the plan of an archive says of its sheets.
     *
     * @param of the state of the archive from which it was read
     * @param due by when they are handed in, in whatever words
     */
    private record Heading(String of, String title, String date, String due) {}

    /** @param of the state of all answers */
    private record Last(String of, Optional<String> set) {}

    /** @param of the state of one of the answers */
    private record Looked(String of, Map<String, Integer> ids) {}

    /** Holds until something else comes in. */
    private record Picked(String of, String shown) {}

    GivenOut(CourseSet set) {
        this.set = set;
    }

    /**
     * Sheets of one archive.
     *
     * @param set with which their IDs begin
     * @param week empty for sheets of the plan
     * @param due as they were given out
     */
    record Sheets(Path archive, String shown, String set, OptionalInt week, String title, String date, String due) {
        /** What they are called, without a code; by the place of their archive where that is all there is. */
        String told() {
            if (title.isEmpty()) {
                return shown;
            }
            String called = date.isEmpty() ? title : say("desk.sheets.dated", "title", title, "date", date);
            return week.isPresent()
                    ? say("desk.sheets.week", "week", Integer.toString(week.getAsInt()), "sheets", called)
                    : called;
        }

        Map<String, Object> values() {
            return Pages.values("shown", shown, "told", told(), "code", shown.equals(told()) ? "" : shown);
        }
    }

    /** Sheets of other archives than the one at hand. */
    record Others(List<Sheets> all) {
        static Others than(List<Sheets> all, Optional<Sheets> one) {
            return new Others(all.stream()
                    .filter(other ->
                            one.isPresent() && !other.set().equals(one.get().set()))
                    .toList());
        }

        /** Those to which an ID belongs, as it was typed. */
        Optional<Sheets> of(String id) {
            return SheetId.set(id).flatMap(this::called);
        }

        Optional<Sheets> called(String code) {
            return all.stream().filter(one -> one.set().equals(code)).findFirst();
        }
    }

    List<Sheets> all() {
        return set.course().archives().stream().map(this::sheets).toList();
    }

    private Sheets sheets(Path archive) {
        String shown = set.course().shown(archive);
        Heading heading = heading(archive, shown);
        return new Sheets(
                archive,
                shown,
                IssuedArchive.set(archive.getFileName().toString()),
                set.course().weekOf(archive),
                heading.title(),
                heading.date(),
                heading.due());
    }

    private synchronized Heading heading(Path archive, String shown) {
        String state = set.course().state(archive);
        Heading known = headings.get(shown);
        if (known == null || !known.of().equals(state)) {
            known = read(archive, state);
            headings.put(shown, known);
        }
        return known;
    }

    private static Heading read(Path archive, String state) {
        try {
            Plan plan = ArchivedClass.plan(archive);
            return new Heading(
                    state, plan.title(), plan.heading().date(), plan.heading().due());
        } catch (DiagnosticException unfit) {
            return new Heading(state, "", "", ""); // whoever marks by it is told why
        }
    }

    /** Sheets of an archive as a form names it; empty if it is not there. */
    Optional<Sheets> named(List<Sheets> all, String shown) {
        return all.stream().filter(one -> one.shown().equals(shown)).findFirst();
    }

    /** Keeps in mind which were chosen, for as long as nothing else comes in. */
    synchronized void pick(Sheets chosen) {
        picked = new Picked(answers(), chosen.shown());
    }

    /**
     * Those that were chosen; or those that know the sheets of what came in last; or those of the plan as it is now.
     */
    synchronized Optional<Sheets> usual(List<Sheets> all) {
        String now = answers();
        Optional<Sheets> chosen = picked.of().equals(now) ? named(all, picked.shown()) : Optional.empty();
        return chosen.or(() -> ofLast(all, now))
                .or(() -> ofPlanNow(all))
                .or(() -> all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1)));
    }

    private Optional<Sheets> ofPlanNow(List<Sheets> all) {
        if (all.size() < 2) {
            return Optional.empty();
        }
        try {
            String code = set.known().id(1).set();
            return new Others(all).called(code);
        } catch (DiagnosticException unfit) {
            return Optional.empty(); // the place of the set tells
        }
    }

    private Optional<Sheets> ofLast(List<Sheets> all, String now) {
        Others known = new Others(all);
        String of = now + "\n" + all.stream().map(Sheets::set).toList();
        if (!last.of().equals(of)) {
            last = new Last(of, all.size() < 2 ? Optional.empty() : lastAnswered(known));
        }
        return last.set().flatMap(known::called);
    }

    private Optional<String> lastAnswered(Others known) {
        Path folder = set.course().files().answers();
        return set.course().names(folder).stream()
                .map(folder::resolve)
                .sorted(Comparator.comparing(set.course()::written).reversed())
                .limit(MOST_LOOKED_AT)
                .flatMap(file -> mostIn(file, known).stream())
                .findFirst();
    }

    /** The sheets that most IDs in a file belong to. */
    private Optional<String> mostIn(Path file, Others known) {
        return ids(file).entrySet().stream()
                .filter(one -> known.called(one.getKey()).isPresent())
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey);
    }

    /** Those of the answers, by name, that are not wholly to sheets of other archives. */
    List<String> notElsewhere(List<String> names, Others others) {
        Path folder = set.course().files().answers();
        return names.stream()
                .filter(name -> {
                    Set<String> sets = ids(folder.resolve(name)).keySet();
                    return sets.isEmpty()
                            || sets.stream().anyMatch(one -> others.called(one).isEmpty());
                })
                .toList();
    }

    /** How many IDs of which sheets stand in one of the answers, by what they begin with. */
    private synchronized Map<String, Integer> ids(Path file) {
        String state = set.course().state(file);
        Looked known = looked.get(file);
        if (known == null || !known.of().equals(state)) {
            known = new Looked(state, AnsweredSheets.in(text(file)));
            looked.put(file, known);
        }
        return known.ids();
    }

    private static String text(Path file) {
        try {
            return SourceFile.foreign(file, Bounds.WRITTEN, SourceFile.Links.REFUSED)
                    .text();
        } catch (Unread unread) {
            return ""; // marking tells what is wrong with it
        }
    }

    /** By which it is noticed that something came in. */
    private String answers() {
        Path folder = set.course().files().answers();
        StringBuilder state = new StringBuilder();
        looked.keySet()
                .removeIf(file -> !file.startsWith(folder)
                        || !set.course().isThere(set.course().shown(file)));
        for (String name : set.course().names(folder)) {
            state.append(name)
                    .append(' ')
                    .append(set.course().state(folder.resolve(name)))
                    .append('\n');
        }
        return Course.version(state.toString());
    }

    /** Those of a week. */
    static Stream<Sheets> ofWeek(List<Sheets> all, int week) {
        return all.stream().filter(one -> one.week().equals(OptionalInt.of(week)));
    }

    /** Archives of a week. */
    Stream<Sheets> ofWeek(int week) {
        return ofWeek(all(), week);
    }
}
