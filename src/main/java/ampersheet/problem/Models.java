package ampersheet.problem;

import ampersheet.chain.Assembly;
import ampersheet.chain.BranchedTiles;
import ampersheet.chain.DataPath;
import ampersheet.chain.FrameMemory;
import ampersheet.chain.MatingEdge;
import ampersheet.chain.Panel;
import ampersheet.chain.TileRow;
import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.circuit.TransientSolver;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.thermal.HeatNetwork;
import ampersheet.thermal.HeatSolver;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntBinaryOperator;
import java.util.function.Supplier;

/**
 * A template's models with one set of values put in. Built and solved when first asked, and kept. Not for several
 * threads at once.
 */
final class Models {
  private static final double EQUAL_VOLTAGES = 1e-10;

  private final ModelPlans plans;
  private final Values values;

  private ModelPlans.Wired wired;
  private OperatingPoint operatingPoint;
  private HeatNetwork heatNetwork;
  private HeatSolver.Outcome.Solved steady;
  private Panel panel;
  private DataPath.Outcome.Traced traced;
  private Assembly assembly;

  /** @param values of everything the plans name: givens, constants, steps */
  Models(ModelPlans plans, Values values) {
    this.plans = plans;
    this.values = values;
  }

  /** The models with other values for {@code changed}; what does not depend on those is not solved again. */
  Models with(Values other, Set<String> changed) {
    Models varied = new Models(plans, other);
    boolean sameCircuit = !plans.circuitUsesAny(changed);
    if (sameCircuit) {
      varied.wired = wired;
      varied.operatingPoint = operatingPoint;
    } else if (wired != null) {
      varied.wired = wired.with(other, changed);
    }
    if (!plans.heatUsesAny(changed) && (sameCircuit || !plans.heatMeasuresCircuit())) {
      varied.heatNetwork = heatNetwork;
      varied.steady = steady;
    }
    if (!plans.chainUsesAny(changed)) {
      varied.panel = panel;
      varied.traced = traced;
    }
    if (!plans.assemblyUsesAny(changed)) {
      varied.assembly = assembly;
    }
    return varied;
  }

  Optional<Schematic> schematic() {
    return plans.hasCircuit() ? Optional.of(wired().schematic()) : Optional.empty();
  }

  Optional<HeatNetwork> heatNetworkIfAny() {
    return plans.hasHeat() ? Optional.of(heatNetwork()) : Optional.empty();
  }

  Optional<Panel> panelIfAny() {
    return plans.hasChain() ? Optional.of(panel()) : Optional.empty();
  }

  Optional<Assembly> assemblyIfAny() {
    return plans.hasAssembly() ? Optional.of(assembly()) : Optional.empty();
  }

  /** The nodes and parts of the circuit. */
  ModelPlans.Wired wired() {
    if (wired == null) {
      wired = plans.wire(values);
    }
    return wired;
  }

  /** @throws Unsolved with the circuit's own reason */
  OperatingPoint operatingPoint() {
    if (operatingPoint == null) {
      operatingPoint = Solutions.of(wired().netlist());
    }
    return operatingPoint;
  }

  /** For those who can do without a solution. */
  static <T> Optional<T> orNone(Supplier<T> solution) {
    try {
      return Optional.of(solution.get());
    } catch (Unsolved none) {
      return Optional.empty();
    }
  }

  private HeatNetwork heatNetwork() {
    if (heatNetwork == null) {
      heatNetwork = plans.heatNetwork(values, this::measured);
    }
    return heatNetwork;
  }

  /** @throws Unsolved with the network's own reason */
  HeatSolver.Outcome.Solved steady() {
    if (steady == null) {
      steady = Solutions.of(HeatSolver.steady(heatNetwork()));
    }
    return steady;
  }

  private Panel panel() {
    if (panel == null) {
      panel = plans.panel(values);
    }
    return panel;
  }

  private Assembly assembly() {
    if (assembly == null) {
      assembly = plans.assembly(values);
    }
    return assembly;
  }

  private MatingEdge edge() {
    return (MatingEdge) assembly();
  }

  private BranchedTiles branches() {
    return (BranchedTiles) assembly();
  }

  private TileRow row() {
    return (TileRow) assembly();
  }

  private DataPath.Outcome.Traced traced() {
    if (traced == null) {
      traced = Solutions.of(DataPath.trace(panel()));
    }
    return traced;
  }

  /** The values with this model's measures, for a formula that asks for them. */
  Values measuredBy(Values asking) {
    return asking.measuring((measure, arguments) -> measure(measure, arguments, asking));
  }

  /** For the formulas of losses, which may measure the circuit. */
  private Quantity measured(String measure, List<Expression> arguments) {
    return measure(measure, arguments, values);
  }

  /**
   * @param asking values for arguments that are formulas, such as a time
   * @throws Unsolved if the model has no solution
   */
  private Quantity measure(String measure, List<Expression> arguments, Values asking) {
    return switch (measure) {
      case "voltage" -> new Quantity(arguments.size() == 1
          ? operatingPoint().voltage(name(arguments, 0))
          : operatingPoint().voltage(name(arguments, 0)) - operatingPoint().voltage(name(arguments, 1)),
          Dimension.VOLTAGE);
      case "across" -> new Quantity(operatingPoint().across(name(arguments, 0)), Dimension.VOLTAGE);
      case "current" -> new Quantity(operatingPoint().current(name(arguments, 0)), Dimension.CURRENT);
      case "power" -> new Quantity(operatingPoint().power(name(arguments, 0)), Dimension.POWER);
      case "temperature" -> new Quantity(kelvin(steady(), name(arguments, 0)), Dimension.TEMPERATURE);
      case "temperature_after" -> new Quantity(
          kelvin(Solutions.of(HeatSolver.after(heatNetwork(), seconds(arguments, asking))), name(arguments, 0)),
          Dimension.TEMPERATURE);
      case "tap_voltage" -> new Quantity(load(arguments, number(arguments, 1, asking) - 1, "tap"), Dimension.VOLTAGE);
      case "pixel_voltage" -> new Quantity(pixelVoltage(arguments, asking), Dimension.VOLTAGE);
      case "lowest_voltage" -> new Quantity(Collections.min(loads(arguments)), Dimension.VOLTAGE);
      case "lowest_tap" -> Quantity.number(lowestTap(loads(arguments)));
      case "voltage_after" -> new Quantity(after(arguments, asking).voltage(name(arguments, 0)), Dimension.VOLTAGE);
      case "current_after" -> new Quantity(after(arguments, asking).current(name(arguments, 0)), Dimension.CURRENT);
      case "time_until" -> new Quantity(timeUntil(arguments, asking), Dimension.TIME);
      case "heat" -> new Quantity(found(steady().watts().get(name(arguments, 0)), arguments), Dimension.POWER);
      case "turn" -> ofPixel(traced()::turn, arguments, asking);
      case "lines_before" -> ofPixel(traced()::linesBefore, arguments, asking);
      case "tile_turn" -> ofPixel(traced()::tileTurn, arguments, asking);
      case "return_turn" -> ofPixel(traced()::returnTurn, arguments, asking);
      case "column_of" -> Quantity.number(stopAt(arguments, asking).x());
      case "row_of" -> Quantity.number(stopAt(arguments, asking).y());
      case "pixels" -> Quantity.number(traced().stops().size());
      case "tiles" -> Quantity.number(traced().tileOrder().size());
      case "memory" -> Quantity.number(FrameMemory.bits(panel(), plans.framesKept(values)));
      case "touched" -> Quantity.number(touched(number(arguments, 0, asking)));
      case "safe_pairs" -> Quantity.number(edge().safePairs());
      case "fault" -> Quantity.number(fault(number(arguments, 0, asking), number(arguments, 1, asking)));
      case "working_pairs" -> Quantity.number(edge().workingPairs());
      case "harmful_pairs" -> Quantity.number(edge().harmfulPairs());
      case "unmatched" -> Quantity.number(edge().unmatched());
      case "arm_turn" -> Quantity.number(armTurn(number(arguments, 0, asking), number(arguments, 1, asking)));
      case "crossings" -> Quantity.number(branches().walk().size());
      case "way" -> new Quantity(branches().way(), Dimension.LENGTH);
      case "open_sides" -> Quantity.number(branches().openSides());
      case "last_side" -> Quantity.number(branches().lastSide());
      case "worst_edge" -> new Quantity(row().worstEdge(), Dimension.LENGTH);
      case "typical_edge" -> new Quantity(row().typicalEdge(), Dimension.LENGTH);
      case "worst_gap_from_datum" -> new Quantity(row().worstGapFromDatum(), Dimension.LENGTH);
      case "frame_time" -> new Quantity(frameTime(), Dimension.TIME);
      default -> throw new IllegalArgumentException("no measure " + measure);
    };
  }

  private List<Double> loads(List<Expression> arguments) {
    return operatingPoint().loads(name(arguments, 0));
  }

  /** @param index from 0 */
  private double load(List<Expression> arguments, double index, String what) {
    List<Double> loads = loads(arguments);
    if (!Boundaries.isWhole(index) || index < 0 || index >= loads.size()) {
      throw new Unsolved(name(arguments, 0) + " has no such " + what);
    }
    return loads.get((int) index);
  }

  private double pixelVoltage(List<Expression> arguments, Values asking) {
    PlacedPart panel = wired().schematic().parts().stream()
        .filter(part -> part.name().equals(name(arguments, 0))).findFirst().orElseThrow();
    double columns = panel.values().get("columns");
    double x = number(arguments, 1, asking);
    double y = number(arguments, 2, asking);
    return load(arguments, x >= 0 && x < columns ? y * columns + x : -1, "pixel");
  }

  /** Of taps that are equal but for rounding, the first. */
  private static int lowestTap(List<Double> loads) {
    double lowest = Collections.min(loads);
    int tap = 0;
    while (loads.get(tap) - lowest > EQUAL_VOLTAGES * Math.abs(lowest)) {
      tap++;
    }
    return tap + 1;
  }

  private static double seconds(List<Expression> arguments, Values asking) {
    double seconds = number(arguments, 1, asking);
    if (seconds < 0) {
      throw new Unsolved("time runs forwards, but " + seconds + " s is before the beginning");
    }
    return seconds;
  }

  private OperatingPoint after(List<Expression> arguments, Values asking) {
    return Solutions.of(TransientSolver.after(wired().netlist(), seconds(arguments, asking)));
  }

  /** Circuits and heat paths both have this measure: what is waited for tells which. */
  private double timeUntil(List<Expression> arguments, Values asking) {
    Quantity awaited = Evaluation.evaluate(arguments.get(1), asking);
    return awaited.dimension().equals(Dimension.VOLTAGE)
        ? Solutions.of(TransientSolver.timeUntil(wired().netlist(), name(arguments, 0), awaited.value()))
        : Solutions.of(HeatSolver.timeUntil(heatNetwork(), name(arguments, 0), awaited.value()));
  }

  private static Quantity ofPixel(IntBinaryOperator turn, List<Expression> arguments, Values asking) {
    double x = number(arguments, 0, asking);
    double y = number(arguments, 1, asking);
    int found = Boundaries.isWhole(x) && Boundaries.isWhole(y) ? turn.applyAsInt((int) x, (int) y) : -1;
    if (found < 0) {
      throw new Unsolved("the data never passes a pixel at column " + x + ", row " + y);
    }
    return Quantity.number(found);
  }

  private int armTurn(double arm, double tile) {
    int turn = Boundaries.isWhole(arm) && Boundaries.isWhole(tile) ? branches().turn((int) arm - 1, (int) tile) : -1;
    if (turn < 0) {
      throw new Unsolved("arm " + arm + " has no tile " + tile);
    }
    return turn;
  }

  private int touched(double place) {
    if (!Boundaries.isWhole(place) || place < 1 || place > edge().contacts()) {
      throw new Unsolved("the row of contacts has no place " + place);
    }
    return edge().touched((int) place);
  }

  /** @param mine side of the one tile, from 1; {@code its} of the other */
  private int fault(double mine, double its) {
    for (double side : new double[] {mine, its}) {
      if (!Boundaries.isWhole(side) || side < 1 || side > edge().sides()) {
        throw new Unsolved("the tile has no side " + side);
      }
    }
    return edge().fault((int) mine - 1, (int) its - 1).map(fault -> fault.ordinal() + 1).orElse(0);
  }

  private double frameTime() {
    // A panel whose path is not complete has no frame; the trace tells why.
    traced();
    return DataPath.frameTime(panel(), plans.parallelChains(values), 0);
  }

  private DataPath.Stop stopAt(List<Expression> arguments, Values asking) {
    double turn = number(arguments, 0, asking);
    List<DataPath.Stop> stops = traced().stops();
    if (!Boundaries.isWhole(turn) || turn < 0 || turn >= stops.size()) {
      throw new Unsolved("no pixel of the chain has turn " + turn);
    }
    return stops.get((int) turn);
  }

  private static double kelvin(HeatSolver.Outcome.Solved solved, String node) {
    Double kelvin = solved.kelvin().get(node);
    if (kelvin == null) {
      throw new IllegalArgumentException("no node " + node + " in the heat path");
    }
    return kelvin;
  }

  private static double found(Double watts, List<Expression> arguments) {
    if (watts == null) {
      throw new IllegalArgumentException("no resistance or loss " + name(arguments, 0) + " in the heat path");
    }
    return watts;
  }

  private static String name(List<Expression> arguments, int index) {
    return ((Expression.Name) arguments.get(index)).id();
  }

  private static double number(List<Expression> arguments, int index, Values asking) {
    return Evaluation.evaluate(arguments.get(index), asking).value();
  }
}
