package ampersheet.sheet;

import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.StepLine;
import java.util.ArrayList;
import java.util.List;

/** Which steps a sheet leaves blank. */
final class Fading {
  private Fading() {}

  /** Ids of the blank steps, in the order of the working. */
  static List<String> blankSteps(ProblemTemplate template, Support support) {
    if (support instanceof Support.Faded faded) {
      return blankSteps(template, faded.fade());
    }
    return support instanceof Support.Full ? List.of() : template.lines().stream().map(StepLine::id).toList();
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
    return blank;
  }
}
