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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.stream.Stream;

/** The sheets that were given out, as their archives keep them, and which of them what came in is about. */
final class GivenOut {
    /** So many of the files that came in last are looked at for an ID. */
    private static final int MOST_LOOKED_AT = 20;

    private final CourseSet set;
    private final Map<String, Heading> headings = new TreeMap<>();
    private Last last = new Last("", Optional.empty());
    private Picked picked = new Picked("", "");

    /** @param of the state of the archive from which it was read */
    private record Heading(String of, String title, String date) {}

    /** @param of the state of all answers */
    private record Last(String of, Optional<String> set) {}

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
     */
    record Sheets(Path archive, String shown, String set, OptionalInt week, String title, String date) {
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
                heading.date());
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
            return new Heading(state, plan.title(), plan.heading().date());
        } catch (DiagnosticException unfit) {
            return new Heading(state, "", ""); // whoever marks by it is told why
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
            String code = IssuedArchive.set(IssuedArchive.fileName(set.known()));
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
    private static Optional<String> mostIn(Path file, Others known) {
        Map<String, Integer> count = new LinkedHashMap<>();
        Matcher ids = SheetId.PRINTED.matcher(text(file));
        while (ids.find()) {
            known.of(ids.group()).ifPresent(of -> count.merge(of.set(), 1, Integer::sum));
        }
        return count.entrySet().stream().max(Map.Entry.comparingByValue()).map(Map.Entry::getKey);
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
        for (String name : set.course().names(folder)) {
            state.append(name)
                    .append(' ')
                    .append(set.course().state(folder.resolve(name)))
                    .append('\n');
        }
        return Course.version(state.toString());
    }

    /** Archives of a week. */
    Stream<Sheets> ofWeek(int week) {
        return all().stream().filter(one -> one.week().equals(OptionalInt.of(week)));
    }
}
