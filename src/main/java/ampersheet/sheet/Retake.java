package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.sheet.Plan.Entry;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;

/** A plan again for those who need it: other numbers, and of its problems only those whose skills they missed. */
public final class Retake {
    private static final int ROUND = 50;
    /** Nobody takes anything again more often. */
    private static final int MOST_ROUNDS = 20;

    private Retake() {}

    /**
     * Of a plan that stands for itself. It keeps numbers for a larger class, so that who comes later has other ones,
     * too.
     *
     * @param missed skills, for each seat that needs it
     * @param lastSeat of the class
     * @throws DiagnosticException if nobody needs one
     */
    public static Plan of(Plan plan, int lastSeat, Map<Integer, Set<String>> missed, TemplateLibrary library) {
        return of(plan, lastSeat, Before.NONE, missed, library);
    }

    /**
     * What went before a retake.
     *
     * @param rounds in which it was taken again already, the first time first
     * @param issued whatever else of the same seed is known to lie out
     */
    public record Before(List<IssuedPart> rounds, IssuedParts issued) {
        public static final Before NONE = new Before(List.of(), IssuedParts.NONE);

        public Before {
            rounds = List.copyOf(rounds);
        }

        /** 1 for the first time that it is taken again. */
        int round() {
            return rounds.size() + 1;
        }
    }

    /** The same for who takes it once more, with numbers that no earlier round had. */
    public static Plan of(
            Plan plan, int lastSeat, Before before, Map<Integer, Set<String>> missed, TemplateLibrary library) {
        int seats = Math.min((lastSeat / ROUND + 1) * ROUND, SheetId.LAST_SEAT);
        Map<String, Integer> taken = new TreeMap<>(plan.portion().taken());
        add(ProblemSet.of(plan, library), seats, taken);
        for (int earlier = 1; earlier < before.round(); earlier++) {
            add(ProblemSet.of(all(behind(plan, seats, taken), earlier), library), seats, taken);
        }
        Plan again = again(behind(plan, seats, taken), before.round(), missed, library);
        return before.issued()
                .only(part -> isRetakeOf(plan, part.plan()))
                .and(List.of(IssuedPart.of(plan, library)))
                .and(before.rounds())
                .apart(again, library)
                .set()
                .plan();
    }

    private static Plan behind(Plan plan, int seats, Map<String, Integer> taken) {
        Portion portion = plan.portion();
        return plan.with(new Portion(portion.week(), portion.weeks(), true, seats, taken, Map.of(), 0));
    }

    /** Whether one plan is the other again, whichever time. */
    private static boolean isRetakeOf(Plan plan, Plan again) {
        return IntStream.rangeClosed(1, MOST_ROUNDS).anyMatch(round -> isRound(plan, round, again));
    }

    /**
     * Whether another plan is this one, taken again for so many times.
     *
     * @param plan of its own, or a week
     */
    public static boolean isRound(Plan plan, int round, Plan again) {
        return again.portion().retake()
                && again.portion().week() == plan.portion().week()
                && again.title().equals(title(plan, round));
    }

    /** @param behind the plan with the portion behind all that has been handed out */
    static Plan again(Plan behind, int round, Map<Integer, Set<String>> missed, TemplateLibrary library) {
        Plan all = all(behind, round);
        ProblemSet set = ProblemSet.of(all, library);
        List<ProblemSet.Wanted> wanted = set.wanted();
        Map<Integer, List<Integer>> only = new TreeMap<>();
        missed.forEach((seat, skills) -> {
            List<Integer> problems = new ArrayList<>();
            for (int problem = 0; problem < wanted.size(); problem++) {
                boolean practises = wanted.get(problem).sources().stream()
                        .map(source -> set.sources().get(source))
                        .map(ProblemTemplate::skill)
                        .anyMatch(skills::contains);
                if (practises) {
                    problems.add(problem + 1);
                }
            }
            if (!problems.isEmpty()) {
                only.put(seat, problems);
            }
        });
        if (only.isEmpty()) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(behind.file()),
                    say("plan.retake.nothing"),
                    say("plan.retake.nothing.expected"),
                    say("plan.retake.nothing.next")));
        }
        return all.with(all.portion().forOnly(only));
    }

    /** All of its problems again, each after a worked example; who missed something has use for one. */
    static Plan all(Plan plan, int round) {
        List<Entry> entries = plan.entries().stream()
                .map(entry -> new Entry(
                        entry.source(), entry.count(), new Support.Bare(), true, entry.fixed(), entry.place()))
                .toList();
        return plan.part(title(plan, round), plan.heading(), entries, plan.portion(), PlanWriter.said(plan));
    }

    private static String title(Plan plan, int round) {
        return round == 1
                ? plan.language().say("sheet.plan.again", "title", plan.title())
                : plan.language()
                        .say("sheet.plan.again-once-more", "title", plan.title(), "round", Integer.toString(round));
    }

    /** What a set takes goes before what comes next. */
    static void add(ProblemSet set, int seats, Map<String, Integer> taken) {
        set.sources()
                .keySet()
                .forEach(source -> taken.merge(source, Math.toIntExact(set.taken(source, seats)), Integer::sum));
        taken.values().removeIf(count -> count == 0);
    }
}
