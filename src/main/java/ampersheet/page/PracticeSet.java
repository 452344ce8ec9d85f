package ampersheet.page;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.practice.Course;
import ampersheet.practice.Twin;
import ampersheet.problem.Draws;
import ampersheet.problem.FaultyWorking;
import ampersheet.problem.Problem;
import ampersheet.problem.Twins;
import ampersheet.problem.Workshop;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.template.ProblemTemplate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Proven problems by skill, for one learner to go through at her own pace. They come from the far end of the order in
 * which the class draws, so that no sheet of the class holds one of them.
 *
 * @param set the plan and its templates
 * @param skills in the order in which the plan first names a template of each
 */
public record PracticeSet(ProblemSet set, List<Skill> skills) {
    public PracticeSet {
        skills = List.copyOf(skills);
    }

    /** Enough to meet each kind once; more would make the page large. */
    private static final int MOST_FAULTY = 3;

    /**
     * @param variants in the order given, the templates of the skill by turns
     * @param faulty workings with one wrong line, by the variant of which they are; none unless the plan wants them
     * @param after indexes of the skills of the set that it builds on, by any of its templates
     */
    public record Skill(
            String name,
            List<Practised> templates,
            List<Variant> variants,
            Map<Integer, FaultyWorking> faulty,
            List<Integer> after) {
        public Skill {
            faulty = Collections.unmodifiableMap(new TreeMap<>(faulty));
            after = List.copyOf(after);
            templates = List.copyOf(templates);
            variants = List.copyOf(variants);
        }
    }

    /** @param example shown beside the variants of this template, and never asked */
    public record Practised(ProblemTemplate template, Problem example) {}

    /**
     * @param template index among the templates of its skill
     * @param twin asked once the problem is solved; empty where nothing can be asked without numbers
     */
    public record Variant(int template, Problem problem, Optional<Twin> twin) {}

    /**
     * @param variants of each skill, not counting one worked example of each of its templates
     * @throws DiagnosticException if a skill has not so many, or if skills build on each other in a circle
     */
    public static PracticeSet of(ProblemSet set, int variants) {
        return of(set, variants, () -> {});
    }

    /** @param each called before each skill; what it throws ends the work */
    public static PracticeSet of(ProblemSet set, int variants, Runnable each) {
        Map<String, List<ProblemTemplate>> bySkill = new LinkedHashMap<>();
        set.sources()
                .values()
                .forEach(template -> bySkill.computeIfAbsent(template.skill(), skill -> new ArrayList<>())
                        .add(template));
        SkillOrder order = SkillOrder.of(bySkill);
        List<Skill> skills = new ArrayList<>();
        try {
            bySkill.forEach((skill, templates) -> {
                each.run();
                skills.add(skill(skill, templates, set.plan(), variants, order.after(skill)));
            });
        } catch (DiagnosticException unmade) {
            requireEnough(bySkill, set.plan(), variants);
            throw unmade;
        }
        return new PracticeSet(set, skills);
    }

    /**
     * What the rules of practice know of it.
     *
     * @param name under which a browser keeps it
     */
    Course course(String name) {
        return new PracticeCourse(this).named(name);
    }

    private static Skill skill(
            String name, List<ProblemTemplate> templates, Plan plan, int variants, List<Integer> after) {
        List<Workshop> workshops = templates.stream().map(Workshop::new).toList();
        List<Draws> draws = draws(workshops, plan);
        List<Twins> twins = workshops.stream().map(Twins::new).toList();
        List<Practised> practised = draws.stream()
                .map(of -> new Practised(of.template(), of.draw(0)))
                .toList();
        List<Variant> given = new ArrayList<>();
        for (int i = 0; i < variants; i++) {
            int template = i % templates.size();
            int which = i / templates.size();
            Problem problem = draws.get(template).draw(1 + which);
            given.add(new Variant(template, problem, twins.get(template).of(problem, which)));
        }
        return new Skill(name, practised, given, plan.faultyLines() ? faulty(given) : Map.of(), after);
    }

    private static List<Draws> draws(List<Workshop> workshops, Plan plan) {
        return workshops.stream()
                .map(workshop -> new Draws(workshop, plan.seed(), plan.portion().ofPractice()))
                .toList();
    }

    /** Tells of the skill that has fewest how many these are. */
    private static void requireEnough(Map<String, List<ProblemTemplate>> bySkill, Plan plan, int variants) {
        String fewest = "";
        int most = variants;
        for (Map.Entry<String, List<ProblemTemplate>> skill : bySkill.entrySet()) {
            int there = most(draws(skill.getValue().stream().map(Workshop::new).toList(), plan), most);
            if (there < most) {
                fewest = skill.getKey();
                most = there;
            }
        }
        if (most < variants) {
            throw new DiagnosticException(few(fewest, most, plan, variants));
        }
    }

    /** How many problems of a skill there are, up to so many; one of each template is its worked example. */
    private static int most(List<Draws> draws, int variants) {
        int most = variants;
        for (int i = 0; i < draws.size(); i++) {
            Draws of = draws.get(i);
            int last = i < variants ? 1 + (variants - 1 - i) / draws.size() : 0;
            if (!of.has(last)) {
                int others = Math.toIntExact(of.tally().accepted()) - 1;
                most = others < 0 ? 0 : Math.min(most, i + draws.size() * others);
            }
        }
        return most;
    }

    private static Diagnostic few(String skill, int most, Plan plan, int variants) {
        return Diagnostic.error(
                Place.inFile(plan.file()),
                plan.portion().isOfCourse()
                        ? count(
                                "folder.practice.few.week",
                                most,
                                "skill",
                                skill,
                                "week",
                                Integer.toString(plan.portion().week()))
                        : count("folder.practice.few", most, "skill", skill),
                say("folder.practice.few.expected", "wanted", Integer.toString(variants)),
                most == 0
                        ? say("folder.practice.few.none.next")
                        : say("folder.practice.few.next", "most", Integer.toString(most)));
    }

    /** Of the first variants, each with another mistake as long as there are others; one that is carried on first. */
    private static Map<Integer, FaultyWorking> faulty(List<Variant> variants) {
        Map<Integer, FaultyWorking> faulty = new TreeMap<>();
        Set<String> made = new TreeSet<>();
        for (int i = 0; i < variants.size() && faulty.size() < MOST_FAULTY; i++) {
            Optional<FaultyWorking> best = FaultyWorking.of(variants.get(i).problem()).stream()
                    .min(Comparator.comparing((FaultyWorking one) -> made.contains(one.mistake()))
                            .thenComparing(one -> !one.isCarriedOn()));
            if (best.isPresent()) {
                faulty.put(i, best.get());
                made.add(best.get().mistake());
            }
        }
        return faulty;
    }
}
