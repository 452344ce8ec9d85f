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

/** A plan again for those who need it: other numbers, and of its problems only those whose skills they missed. */
public final class Retake {
    private static final int ROUND = 50;

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
        return of(plan, lastSeat, 1, missed, library);
    }

    /**
     * The same for who takes it once more, with numbers that no earlier round had.
     *
     * @param round 1 for the first time that it is taken again
     */
    public static Plan of(
            Plan plan, int lastSeat, int round, Map<Integer, Set<String>> missed, TemplateLibrary library) {
        int seats = (lastSeat + ROUND - 1) / ROUND * ROUND;
        Map<String, Integer> taken = new TreeMap<>(plan.portion().taken());
        add(ProblemSet.of(plan, library), seats, taken);
        for (int earlier = 1; earlier < round; earlier++) {
            add(ProblemSet.of(all(behind(plan, seats, taken), earlier), library), seats, taken);
        }
        return again(behind(plan, seats, taken), round, missed, library);
    }

    private static Plan behind(Plan plan, int seats, Map<String, Integer> taken) {
        return with(plan, new Portion(plan.portion().week(), plan.portion().weeks(), true, seats, taken, Map.of()));
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
        Portion portion = all.portion();
        return with(all, new Portion(portion.week(), portion.weeks(), true, portion.seats(), portion.taken(), only));
    }

    private static Plan with(Plan plan, Portion portion) {
        return plan.part(plan.title(), plan.heading(), plan.entries(), portion, PlanWriter.said(plan));
    }

    /** All of its problems again, each after a worked example; who missed something has use for one. */
    static Plan all(Plan plan, int round) {
        List<Entry> entries = plan.entries().stream()
                .map(entry -> new Entry(
                        entry.source(), entry.count(), new Support.Bare(), true, entry.fixed(), entry.place()))
                .toList();
        String title = round == 1
                ? plan.language().say("sheet.plan.again", "title", plan.title())
                : plan.language()
                        .say("sheet.plan.again-once-more", "title", plan.title(), "round", Integer.toString(round));
        return plan.part(title, plan.heading(), entries, plan.portion(), PlanWriter.said(plan));
    }

    /** What a set takes goes before what comes next. */
    static void add(ProblemSet set, int seats, Map<String, Integer> taken) {
        set.sources()
                .keySet()
                .forEach(source -> taken.merge(source, Math.toIntExact(set.taken(source, seats)), Integer::sum));
        taken.values().removeIf(count -> count == 0);
    }
}
