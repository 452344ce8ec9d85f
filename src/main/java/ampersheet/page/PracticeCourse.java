package ampersheet.page;

import ampersheet.formula.Step;
import ampersheet.language.Language;
import ampersheet.page.PracticeSet.Practised;
import ampersheet.page.PracticeSet.Skill;
import ampersheet.page.PracticeSet.Variant;
import ampersheet.practice.Course;
import ampersheet.practice.Twin;
import ampersheet.problem.Problem;
import ampersheet.sheet.FadedForms;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.StepLine;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** What the rules of practice know of a set: forms, lines and their rules, twins. */
final class PracticeCourse {
    private final PracticeSet practice;

    PracticeCourse(PracticeSet practice) {
        this.practice = practice;
    }

    /** @param name under which a browser keeps it */
    Course named(String name) {
        List<Course.Skill> skills = practice.skills().stream().map(this::skill).toList();
        Set<String> rules = new TreeSet<>();
        skills.forEach(skill ->
                skill.templates().forEach(template -> template.lines().forEach(line -> rules.add(line.principle()))));
        return new Course(
                name,
                skills,
                RuleBook.does(rules, language()),
                language(),
                practice.set().plan().decimal());
    }

    private Language language() {
        return practice.set().plan().language();
    }

    private Course.Skill skill(Skill skill) {
        Set<String> rules = new TreeSet<>();
        skill.templates()
                .forEach(practised -> practised.template().lines().forEach(line -> rules.add(line.principle())));
        List<Set<Twin>> twins = new ArrayList<>();
        skill.templates().forEach(practised -> twins.add(new LinkedHashSet<>()));
        skill.variants()
                .forEach(variant -> variant.twin()
                        .ifPresent(twin -> twins.get(variant.template()).add(twin)));
        List<Course.Template> templates = new ArrayList<>();
        for (int i = 0; i < skill.templates().size(); i++) {
            Practised practised = skill.templates().get(i);
            ProblemTemplate template = practised.template();
            templates.add(new Course.Template(
                    template.name(),
                    template.lines().size(),
                    FadedForms.of(template, practice.set().fade(template.name())),
                    lines(practised.example(), rules),
                    List.copyOf(twins.get(i))));
        }
        return new Course.Skill(
                language().name(skill.name()),
                templates,
                skill.variants().stream().map(Variant::template).toList(),
                skill.after(),
                skill.variants().stream()
                        .map(variant -> index(variant.twin(), twins.get(variant.template())))
                        .toList(),
                faulty(skill));
    }

    private static Map<Integer, Course.Faulty> faulty(Skill skill) {
        Map<Integer, Course.Faulty> faulty = new TreeMap<>();
        skill.faulty().forEach((variant, working) -> {
            List<String> steps = working.shown().template().lines().stream()
                    .map(StepLine::id)
                    .toList();
            faulty.put(variant, new Course.Faulty(steps.indexOf(working.step()) + 1, working.mistake()));
        });
        return faulty;
    }

    private static int index(Optional<Twin> twin, Set<Twin> among) {
        return twin.map(one -> new ArrayList<>(among).indexOf(one)).orElse(-1);
    }

    /** @param rules of the skill; of those that would be true as well, only these can come up */
    static List<Course.Line> lines(Problem problem, Set<String> rules) {
        List<Course.Line> lines = new ArrayList<>();
        Language language = problem.template().language();
        for (StepLine line : problem.template().lines()) {
            Step step = problem.template().working().steps().get(lines.size());
            Set<String> also = RuleBook.alike(line.principle());
            for (String rule : RulesInLine.of(step, problem.values())) {
                also.addAll(RuleBook.alike(rule));
            }
            also.remove(line.principle());
            also.retainAll(rules);
            lines.add(new Course.Line(
                    language.name(line.principle()),
                    line.meaning(),
                    also.stream().map(language::name).toList()));
        }
        return lines;
    }
}
