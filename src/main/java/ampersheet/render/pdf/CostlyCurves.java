package ampersheet.render.pdf;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Curves of worked examples that would cost a page of their own. On paper the example goes without: the key still has it. */
final class CostlyCurves {
  private CostlyCurves() {}

  /**
   * @param heights of all problems by id, in points, curves included
   * @param curves their heights, by the id of the problem
   * @param twins ids of worked examples, each with that of the problem that follows it
   * @param page height of a page
   * @return ids of the problems that take a page less without their curve, alone or with their twin
   */
  static Set<String> in(Map<String, Double> heights, Map<String, Double> curves, Map<String, String> twins, double page) {
    Set<String> costly = new TreeSet<>();
    curves.forEach((id, curve) -> {
      double with = heights.get(id);
      double twin = twins.containsKey(id) ? heights.get(twins.get(id)) : 0;
      boolean parts = twin > 0 && with + twin > page && with - curve + twin <= page;
      if (parts || Math.ceil(with / page) > Math.ceil((with - curve) / page)) {
        costly.add(id);
      }
    });
    return costly;
  }
}
