package ampersheet.page;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.template.ProblemTemplate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which skills of a set build on which: what any template of a skill says after {@code after:}, as far as it is in the
 * set.
 *
 * @param before for each skill, in the order of the set, those that it builds on
 */
record SkillOrder(Map<String, Set<String>> before) {

    /** @throws DiagnosticException where skills build on each other in a circle */
    static SkillOrder of(Map<String, List<ProblemTemplate>> bySkill) {
        Map<String, Set<String>> before = new LinkedHashMap<>();
        bySkill.forEach((skill, templates) -> {
            Set<String> known = new LinkedHashSet<>();
            templates.forEach(template -> template.premises().after().stream()
                    .filter(bySkill::containsKey)
                    .forEach(known::add));
            before.put(skill, known);
        });
        SkillOrder order = new SkillOrder(before);
        for (String skill : before.keySet()) {
            List<String> circle = order.circle(skill, new ArrayList<>());
            if (!circle.isEmpty()) {
                throw new DiagnosticException(Diagnostic.error(
                        Place.inFile(bySkill.get(skill).get(0).name()),
                        "these skills build on each other in a circle: " + String.join(" after ", circle),
                        "an order in which each skill comes after those it builds on",
                        "Take one of them out of after: in the templates of the skill before it."));
            }
        }
        return order;
    }

    /** The skills from this one back to itself; empty if there is no such way. */
    private List<String> circle(String skill, List<String> way) {
        if (way.contains(skill)) {
            List<String> circle = new ArrayList<>(way.subList(way.indexOf(skill), way.size()));
            circle.add(skill);
            return circle;
        }
        List<String> longer = new ArrayList<>(way);
        longer.add(skill);
        for (String earlier : before.get(skill)) {
            List<String> circle = circle(earlier, longer);
            if (!circle.isEmpty()) {
                return circle;
            }
        }
        return List.of();
    }

    /** Indexes of the skills that one builds on. */
    List<Integer> after(String skill) {
        List<String> names = new ArrayList<>(before.keySet());
        return before.get(skill).stream().map(names::indexOf).toList();
    }
}
