package ampersheet.sheet;

import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.StepLine;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The forms of a problem between its worked example and the question alone: steps left blank one by one. The last
 * answer is open in each, and no line is shown that follows from a blank one, for it could be worked back from there.
 */
public final class FadedForms {
    private FadedForms() {}

    /**
     * For each form, the numbers of its blank steps, from 1; each form has those of the one before and more. None for a
     * design, whose steps are one way among several.
     *
     * @param fade the plan's: from which end steps go blank, or a principle; without one from the end
     */
    public static List<List<Integer>> of(ProblemTemplate template, Optional<Support.Fade> fade) {
        List<List<Integer>> forms = new ArrayList<>();
        if (!template.designs().isEmpty()) {
            return forms;
        }
        int steps = template.lines().size();
        for (int blank = 1; blank < steps; blank++) {
            List<Integer> numbers = open(template, Fading.blankSteps(template, grown(fade, blank)));
            boolean more = forms.isEmpty()
                    || numbers.size() > forms.get(forms.size() - 1).size();
            if (more && numbers.size() < steps) {
                forms.add(numbers);
            }
        }
        return forms;
    }

    private static Support.Fade grown(Optional<Support.Fade> fade, int blank) {
        if (fade.isPresent() && fade.get() instanceof Support.Fade.Principle) {
            return fade.get();
        }
        return fade.isPresent() && fade.get() instanceof Support.Fade.Forward
                ? new Support.Fade.Forward(blank)
                : new Support.Fade.Backward(blank);
    }

    private static List<Integer> open(ProblemTemplate template, List<String> blank) {
        Set<String> open = new LinkedHashSet<>(blank);
        lastAsked(template).ifPresent(open::add);
        open.addAll(template.working().following(open));
        List<Integer> numbers = new ArrayList<>();
        for (int i = 0; i < template.lines().size(); i++) {
            if (open.contains(template.lines().get(i).id())) {
                numbers.add(i + 1);
            }
        }
        return numbers;
    }

    private static Optional<String> lastAsked(ProblemTemplate template) {
        List<String> asked =
                template.asks().stream().map(ProblemTemplate.Ask::of).toList();
        List<String> steps = template.lines().stream()
                .map(StepLine::id)
                .filter(asked::contains)
                .toList();
        return steps.isEmpty() ? Optional.empty() : Optional.of(steps.get(steps.size() - 1));
    }
}
