package ampersheet.template;

import ampersheet.answer.Acceptance;
import ampersheet.formula.Condition;
import ampersheet.formula.Expression;
import ampersheet.formula.Scope;
import ampersheet.formula.Symbol;
import ampersheet.formula.Working;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * A checked template: every name resolves, every formula has its dimension, every asked value has a proof.
 *
 * @param name {@code family/name}, as in the folder
 * @param skill what it practises; templates of one skill can stand in for each other in a pool
 * @param level 1 first lesson to 4 design task
 * @param givens drawn, in order
 * @param constants not drawn but printed, such as a property of copper
 * @param lines what is told of each step, in the order of {@code working}
 * @param curve of the worked solution; it decides nothing
 * @param designs the design tasks among the asks, at most one
 * @param cautions ids of caution boxes that always show
 * @param premises what the problem rests on without asking for it
 * @param fingerprint SHA-256 in hex over the template's files: its version
 */
public record ProblemTemplate(String name, String title, String family, String skill, int level,
    List<String> teaches, List<Given> givens, List<Constant> constants, List<Condition> requirements,
    Working working, List<StepLine> lines, List<Ask> asks, List<Design> designs, List<Mistake> mistakes,
    Optional<CircuitPlan> circuit, Optional<HeatPlan> heat, Optional<ChainPlan> chain,
    Optional<AssemblyPlan> assembly, Optional<CurvePlan> curve,
    List<Proof> proofs, List<String> cautions, Premises premises, Words words, String fingerprint) {

  public ProblemTemplate {
    teaches = List.copyOf(teaches);
    givens = List.copyOf(givens);
    constants = List.copyOf(constants);
    requirements = List.copyOf(requirements);
    lines = List.copyOf(lines);
    asks = List.copyOf(asks);
    designs = List.copyOf(designs);
    mistakes = List.copyOf(mistakes);
    proofs = List.copyOf(proofs);
    cautions = List.copyOf(cautions);
  }

  /** A given of the problem: a quantity drawn from values, or a word drawn from words. */
  public sealed interface Given {
    String name();

    String meaning();
  }

  /**
   * @param values in SI, ascending or in the author's order; every one that may be drawn
   * @param tolerance how far the real quantity may lie from the value drawn
   */
  public record QuantityGiven(String name, String meaning, Symbol symbol, Unit unit, List<Double> values,
      Optional<Tolerance> tolerance) implements Given {
    public QuantityGiven {
      values = List.copyOf(values);
    }

    /** Exactly what is drawn. */
    public QuantityGiven(String name, String meaning, Symbol symbol, Unit unit, List<Double> values) {
      this(name, meaning, symbol, unit, values, Optional.empty());
    }
  }

  /**
   * The quantity lies between {@code low} and {@code high}, formulas over givens and constants.
   *
   * @param amount a constant, or the name of the given or constant that holds it: a share of the value, or an amount in
   *     its unit
   */
  public record Tolerance(String of, Expression amount, Expression low, Expression high) {}

  public record WordGiven(String name, String meaning, List<String> values) implements Given {
    public WordGiven {
      values = List.copyOf(values);
    }
  }

  /** @param si value in coherent SI units */
  public record Constant(String name, String meaning, Symbol symbol, Unit unit, double si) {}

  /**
   * What is told of a step.
   *
   * @param reasons one per case of the step: why this formula
   * @param principle the law or rule that gives the line, one of {@code teaches}
   * @param acceptance of an answer where a sheet leaves the step blank without asking for it
   * @param noMistake why no wrong method is modelled; empty where nobody said so
   */
  public record StepLine(String id, String meaning, Symbol symbol, Unit unit, String principle,
      List<String> reasons, Acceptance acceptance, Optional<String> noMistake) {
    public StepLine {
      reasons = List.copyOf(reasons);
    }

    /** Any value near enough is accepted. */
    public StepLine(String id, String meaning, Symbol symbol, Unit unit, String principle, List<String> reasons) {
      this(id, meaning, symbol, unit, principle, reasons, BlankStep.within(unit), Optional.empty());
    }
  }

  /** A question of the problem. */
  public sealed interface Ask {
    /** Step id, or the id of the choice. */
    String of();

    /** A full sentence in Markdown; made from the step's meaning where the author gives none. */
    String prompt();
  }

  /** @param figures significant figures asked for */
  public record QuantityAsk(String of, String prompt, Acceptance acceptance, int figures) implements Ask {}

  /** One blank of a design: the step's value is only one of those that are right. */
  public record DesignAsk(String of, String prompt, String design, Acceptance.Designed acceptance) implements Ask {}

  /**
   * A design task: whatever meets the criteria is right.
   *
   * @param steps that its blanks stand for
   */
  public record Design(String id, List<String> steps, List<Criterion> criteria) {
    public Design {
      steps = List.copyOf(steps);
      criteria = List.copyOf(criteria);
    }
  }

  /**
   * @param where over givens, constants and steps, worked with the values chosen
   * @param shown the step whose value is told to a learner whose choice fails
   */
  public record Criterion(String id, Condition where, String shown, String says) {}

  /** Exactly one option's condition holds. */
  public record ChoiceAsk(String of, String prompt, List<ChoiceOption> options) implements Ask {
    public ChoiceAsk {
      options = List.copyOf(options);
    }
  }

  /** @param otherwise said to a learner who chose this when it does not hold */
  public record ChoiceOption(String text, Condition when, String otherwise) {}

  /**
   * A modelled wrong method for a step, asked or not.
   *
   * @param is the wrong formula over givens and steps; or empty, and then
   * @param instead steps worked wrongly, from which the asked step follows by the right formulas
   * @param when the mistake exists only if this holds (a wrong branch); empty: always
   */
  public record Mistake(String id, String of, Optional<Expression> is, Map<String, Expression> instead,
      Optional<Condition> when, String says) {
    public Mistake {
      instead = inOrder(instead);
    }
  }

  /** Parts whose values are formulas; with the numbers in they become a schematic. */
  public record CircuitPlan(List<PlannedPart> parts) {
    public CircuitPlan {
      parts = List.copyOf(parts);
    }
  }

  /** @param words each a word of the kind, or the name of a word given */
  public record PlannedPart(ampersheet.circuit.PartKind kind, String name,
      Map<String, ampersheet.circuit.GridPoint> ends, Map<String, Expression> values,
      Map<String, String> words, Optional<String> caption) {
    public PlannedPart {
      ends = inOrder(ends);
      values = inOrder(values);
      words = inOrder(words);
    }

    public PlannedPart(ampersheet.circuit.PartKind kind, String name,
        Map<String, ampersheet.circuit.GridPoint> ends, Map<String, Expression> values, Optional<String> caption) {
      this(kind, name, ends, values, Map.of(), caption);
    }

    /** With what the word givens say in the place of their names. */
    public Map<String, String> words(Map<String, String> given) {
      Map<String, String> said = new java.util.LinkedHashMap<>();
      words.forEach((key, word) -> said.put(key, given.getOrDefault(word, word)));
      return said;
    }
  }

  /** Watts may use {@code temperature(node)} and the circuit's {@code power(part)}, {@code current(part)}. */
  public record HeatPlan(List<PlannedAmbient> ambients, List<PlannedNode> nodes,
      List<PlannedResistance> resistances, List<PlannedLoss> losses) {}

  public record PlannedAmbient(String name, Expression at) {}

  public record PlannedNode(String name, Optional<Expression> capacity, Optional<Expression> initial) {}

  public record PlannedResistance(String name, String from, String to, Expression kelvinPerWatt) {}

  public record PlannedLoss(String name, String into, Expression watts) {}

  /**
   * A panel whose sizes are formulas and whose words (order, corner …) may be word givens.
   *
   * @param tileColumns pixels per tile row
   * @param layout how tiles follow each other
   * @param chains parallel chains to which the tiles are dealt out for the frame time; one unless said
   * @param frames frames kept in memory; one unless said
   */
  public record ChainPlan(Expression tileColumns, Expression tileRows, String order, String start, String along,
      String input, String output, Layout layout, boolean returnLine, Optional<Expression> bitsPerPixel,
      Optional<Expression> bitTime, Optional<Expression> resetTime, Optional<Expression> chains,
      Optional<Expression> frames, List<PlannedMark> marks) {}

  /** Either explicit places, or a grid of tiles of which every second row is turned half around. */
  public sealed interface Layout {
    record Places(List<PlannedPlace> places) implements Layout {}

    /**
     * Rows of tiles from the top; the data runs along a row of tiles, drops to the next and, {@code serpentine}, comes
     * back through tiles turned by two quarters.
     */
    record Rows(Expression columns, Expression rows) implements Layout {}

    /**
     * Rows of tiles that all run from left to right, joined by cables, of which one tile is turned.
     *
     * @param quarterTurns of that tile, clockwise
     */
    record Cabled(Expression columns, Expression rows, Expression turnedColumn, Expression turnedRow,
        Expression quarterTurns) implements Layout {}
  }

  public record PlannedPlace(Expression column, Expression row, Expression quarterTurns) {}

  public record PlannedMark(Expression x, Expression y, String label) {}

  /** Tiles joined in another way than a panel of pixels. */
  public sealed interface AssemblyPlan {
    /** All formulas that are values of the model. */
    List<Expression> values();

    /**
     * @param plainSides so many sides carry the row of contacts unmirrored
     * @param supplies places of the supply contacts, at least one; the same for the grounds
     */
    record Edge(Expression sides, Expression plainSides, Expression contacts, List<Expression> supplies,
        List<Expression> grounds, Expression output, Expression input) implements AssemblyPlan {
      public Edge {
        supplies = List.copyOf(supplies);
        grounds = List.copyOf(grounds);
      }

      @Override
      public List<Expression> values() {
        List<Expression> values = new ArrayList<>(List.of(sides, plainSides, contacts, output, input));
        values.addAll(supplies);
        values.addAll(grounds);
        return values;
      }
    }

    record Branches(Expression sides, Expression sideLength, List<PlannedArm> arms, List<PlannedMark> marks)
        implements AssemblyPlan {
      public Branches {
        arms = List.copyOf(arms);
        marks = List.copyOf(marks);
      }

      @Override
      public List<Expression> values() {
        List<Expression> values = new ArrayList<>(List.of(sides, sideLength));
        arms.forEach(arm -> values.addAll(List.of(arm.at(), arm.tiles())));
        return values;
      }
    }

    record Row(Expression tiles, Expression length, Expression error) implements AssemblyPlan {
      @Override
      public List<Expression> values() {
        return List.of(tiles, length, error);
      }
    }
  }

  /** @param at side of the first tile on which the arm stands */
  public record PlannedArm(Expression at, Expression tiles) {}

  /**
   * The second route to an asked or used step.
   *
   * @param of step id
   * @param varies name that the search of {@link Root}, {@link Smallest} and {@link Largest} varies in the model; the
   *     step itself unless said
   * @param with names that take other values in the model for this proof only
   * @param measure over measures of the models: {@code current(D1)}, {@code temperature(junction)}, {@code turn(x, y)}
   * @param way how the value follows from the measure
   * @param within relative gap allowed between the two routes
   * @param floor absolute gap allowed, SI
   * @param because why the routes may differ, where the gap is wider than arithmetic needs; printed by prove
   * @param shares the law on which both routes rest, so that the second only checks the method around it; empty: none
   */
  public record Proof(String of, String varies, Map<String, Expression> with, Expression measure, Way way,
      double within, double floor, String because, Optional<String> shares) {
    public Proof {
      with = inOrder(with);
    }

    /** Whose routes rest on no law in common. */
    public Proof(String of, String varies, Map<String, Expression> with, Expression measure, Way way, double within,
        double floor, String because) {
      this(of, varies, with, measure, way, within, floor, because, Optional.empty());
    }
  }

  public sealed interface Way {
    /** The measure is the value. */
    record Direct() implements Way {}

    /** The value is the root: the measure, as a function of the varied value in the model, equals {@code target}. */
    record Root(Expression target) implements Way {}

    /** The value is the smallest member of the series for which the condition on the measure holds. */
    record Smallest(Members members, Condition.Relation relation, Expression bound) implements Way {}

    /** The value is the largest member of the series for which the condition on the measure holds. */
    record Largest(Members members, Condition.Relation relation, Expression bound) implements Way {}

    /**
     * What the measure can become while quantities lie anywhere within their tolerances.
     *
     * @param largest whether the value is the largest it can become, or the smallest
     * @param tolerances of all quantities that vary
     */
    record Extreme(boolean largest, List<Tolerance> tolerances) implements Way {
      public Extreme {
        tolerances = List.copyOf(tolerances);
      }
    }
  }

  /** What Smallest and Largest walk through: a preferred series, or whole numbers up to a limit. */
  public sealed interface Members {
    record Series(ampersheet.quantity.PreferredSeries series) implements Members {}

    record WholeNumbers(int from, int to) implements Members {}
  }

  /** The statement's words, one FreeMarker text by language tag ({@code en} always), checked when read. */
  public record Words(Map<String, String> statements) {
    public Words {
      statements = inOrder(statements);
    }
  }

  /** A copy that keeps the order of the template: {@link Map#copyOf} would have another order in every run. */
  private static <V> Map<String, V> inOrder(Map<String, V> map) {
    return Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }

  /** Dimensions of all givens, constants and steps. */
  public Scope scope() {
    Map<String, Dimension> quantities = new LinkedHashMap<>();
    Map<String, Set<String>> choices = new LinkedHashMap<>();
    for (Given given : givens) {
      if (given instanceof QuantityGiven quantity) {
        quantities.put(given.name(), quantity.unit().dimension());
      } else if (given instanceof WordGiven word) {
        choices.put(given.name(), new TreeSet<>(word.values()));
      }
    }
    constants.forEach(constant -> quantities.put(constant.name(), constant.unit().dimension()));
    lines.forEach(line -> quantities.put(line.id(), line.unit().dimension()));
    return new Scope(quantities, choices, Scope.NO_MEASURES);
  }

  /** The same template, but its givens may be drawn from other values. */
  public ProblemTemplate withGivens(List<Given> other) {
    return new ProblemTemplate(name, title, family, skill, level, teaches, other, constants, requirements, working, lines,
        asks, designs, mistakes, circuit, heat, chain, assembly, curve, proofs, cautions, premises, words,
        fingerprint);
  }

  /**
   * The same template, but its steps are worked in another way; everything else stays, the proofs above all. Its curve goes:
   * a wrong working is to be caught by the second route, not by a point beside its line.
   */
  public ProblemTemplate withWorking(Working other) {
    return new ProblemTemplate(name, title, family, skill, level, teaches, givens, constants, requirements, other, lines,
        asks, designs, mistakes, circuit, heat, chain, assembly, Optional.empty(), proofs, cautions, premises,
        words, fingerprint);
  }

  /** Whether the step stands for a blank of a design. */
  public boolean isDesigned(String step) {
    return designs.stream().anyMatch(design -> design.steps().contains(step));
  }

  /** Whether the step, no blank itself, has another value after another design. */
  public boolean followsDesign(String step) {
    return !isDesigned(step) && designs.stream().anyMatch(design -> working.following(design.steps()).contains(step));
  }

  public StepLine line(String step) {
    return lines.stream().filter(line -> line.id().equals(step)).findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no step " + step));
  }

  /** Product of the numbers of values of all givens, before constraints; {@link Long#MAX_VALUE} if it is more. */
  public long spaceOfGivens() {
    return Samples.space(givens);
  }
}
