package ampersheet.sheet;

import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.StepLine;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Which steps a sheet leaves blank. */
final class Fading {
    private Fading() {}

    /** Ids of the blank steps, in the order of the working. */
    static List<String> blankSteps(ProblemTemplate template, Support support) {
        if (support instanceof Support.Faded faded) {
            return blankSteps(template, faded.fade());
        }
        return support instanceof Support.Full
                ? List.of()
                : template.lines().stream().map(StepLine::id).toList();
    }

    static List<String> blankSteps(ProblemTemplate template, Support.Fade fade) {
        List<StepLine> lines = template.lines();
        List<String> blank = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            boolean isBlank;
            if (fade instanceof Support.Fade.Forward forward) {
                isBlank = i < forward.blank();
            } else if (fade instanceof Support.Fade.Backward backward) {
                isBlank = i >= lines.size() - backward.blank();
            } else if (fade instanceof Support.Fade.Principle principle) {
                isBlank = lines.get(i).principle().equals(principle.name());
            } else {
                throw new IllegalStateException("a way to fade nobody told of: " + fade);
            }
            if (isBlank) {
                blank.add(lines.get(i).id());
            }
        }
        return withDesigns(template, blank);
    }

    /**
     * The blanks of a design are left open together, and with them all that follows: the results of one choice would
     * contradict another that is right as well.
     */
    private static List<String> withDesigns(ProblemTemplate template, List<String> blank) {
        Set<String> all = new LinkedHashSet<>(blank);
        for (ProblemTemplate.Design design : template.designs()) {
            if (design.steps().stream().anyMatch(blank::contains)) {
                all.addAll(design.steps());
                all.addAll(template.working().following(design.steps()));
            }
        }
        return template.lines().stream().map(StepLine::id).filter(all::contains).toList();
    }
}
