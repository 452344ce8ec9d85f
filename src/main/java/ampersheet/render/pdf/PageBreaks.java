package ampersheet.render.pdf;

import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.ProblemBlock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Which problems begin a page, so that none is split that fits on a page, and an example lies beside its twin: on one page,
 * or on the two pages of a spread. The first page is the front of a leaf; a left page is the back of one, and together
 * with the page that follows it makes a spread.
 */
final class PageBreaks {
  enum Kind { NEXT_PAGE, LEFT_PAGE }

  private final Map<String, Kind> kinds;

  private PageBreaks(Map<String, Kind> kinds) {
    this.kinds = new TreeMap<>(kinds);
  }

  /** Class of the problem's element; empty if it goes where there is room. */
  Optional<String> className(String problem) {
    Kind kind = kinds.get(problem);
    return kind == null ? Optional.empty() : Optional.of(kind == Kind.NEXT_PAGE ? "next-page" : "left-page");
  }

  /**
   * @param above height of what stands before the first problem, in points
   * @param heights of the problems by number, in points
   * @param page height of a page between its margins
   */
  static PageBreaks of(Document document, double above, Map<String, Double> heights, double page) {
    Planner planner = new Planner(page, above, heights);
    for (List<String> together : groups(document)) {
      planner.place(together);
    }
    return new PageBreaks(planner.kinds);
  }

  /** Problems alone, and worked examples with the problem of the same kind that follows. */
  private static List<List<String>> groups(Document document) {
    List<ProblemBlock> problems = problems(document.blocks());
    List<List<String>> groups = new ArrayList<>();
    for (int i = 0; i < problems.size(); i++) {
      ProblemBlock problem = problems.get(i);
      boolean pair = i + 1 < problems.size() && problem.tags().contains("worked example")
          && problems.get(i + 1).title().equals(problem.title());
      groups.add(pair ? List.of(problem.number(), problems.get(i + 1).number()) : List.of(problem.number()));
      i += pair ? 1 : 0;
    }
    return groups;
  }

  private static List<ProblemBlock> problems(List<Block> blocks) {
    return blocks.stream().filter(ProblemBlock.class::isInstance).map(ProblemBlock.class::cast).toList();
  }

  /** Fills pages from the first on. */
  private static final class Planner {
    /** What a page loses at its foot because a step or a box is not divided. */
    private static final double LOST = 0.1;

    private final double page;
    private final Map<String, Double> heights;
    private final Map<String, Kind> kinds = new TreeMap<>();
    private boolean left;
    private double used;

    Planner(double page, double above, Map<String, Double> heights) {
      this.page = page;
      this.heights = heights;
      this.used = above;
    }

    void place(List<String> together) {
      double whole = together.stream().mapToDouble(heights::get).sum();
      if (used + whole <= page) {
        used += whole;
      } else if (whole <= page) {
        begin(together.get(0), false);
        used = whole;
      } else {
        boolean restOfSpread = left && fitsFromHere(together);
        if (!restOfSpread) {
          begin(together.get(0), together.size() > 1 && whole <= 2 * page);
        }
        together.forEach(this::flow);
      }
    }

    /** On the rest of this left page and the right page beside it, no problem divided that fits on one of them. */
    private boolean fitsFromHere(List<String> together) {
      double first = heights.get(together.get(0));
      if (together.size() == 1) {
        return used + first <= (2 - LOST) * page && used < page / 2;
      }
      return used + first <= page && heights.get(together.get(1)) <= page;
    }

    /** At the end of what is there, if it fits; else it begins a page, so that its figure is not far from its words. */
    private void flow(String problem) {
      double height = heights.get(problem);
      if (used + height > page && used > 0) {
        begin(problem, false);
      }
      used += height;
      while (used > page) {
        used = used - page + LOST * page;
        left = !left;
      }
    }

    private void begin(String problem, boolean spread) {
      boolean nextIsLeft = !left;
      kinds.put(problem, spread ? Kind.LEFT_PAGE : Kind.NEXT_PAGE);
      left = spread || nextIsLeft;
      used = 0;
    }
  }
}
