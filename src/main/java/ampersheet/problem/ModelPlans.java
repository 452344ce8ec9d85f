package ampersheet.problem;

import ampersheet.chain.Assembly;
import ampersheet.chain.BranchedTiles;
import ampersheet.chain.MatingEdge;
import ampersheet.chain.Panel;
import ampersheet.chain.Tile;
import ampersheet.chain.TileRow;
import ampersheet.circuit.Netlist;
import ampersheet.circuit.PlacedPart;
import ampersheet.circuit.Schematic;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.AssemblyPlan;
import ampersheet.template.ProblemTemplate.ChainPlan;
import ampersheet.template.ProblemTemplate.CircuitPlan;
import ampersheet.template.ProblemTemplate.HeatPlan;
import ampersheet.template.ProblemTemplate.Layout;
import ampersheet.template.ProblemTemplate.PlannedLoss;
import ampersheet.template.ProblemTemplate.PlannedNode;
import ampersheet.template.ProblemTemplate.PlannedPart;
import ampersheet.template.ProblemTemplate.PlannedPlace;
import ampersheet.template.SizeLimits;
import ampersheet.thermal.HeatNetwork;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The models of a template before any number is known; makes the models of each draw. */
final class ModelPlans {
  /** Of pixels in a panel that a proof solves, or of tiles: as many as 256 rows of 256. What is drawn has fewer. */
  private static final long MOST = 65_536;

  private final Optional<CircuitPlan> circuit;
  private final Optional<HeatPlan> heat;
  private final Optional<ChainPlan> chain;
  private final Optional<AssemblyPlan> assembly;

  /** Which ends are connected does not depend on the numbers, so it is found once. */
  private final Optional<Netlist> connections;
  private final List<Set<String>> partNames;
  private final Set<String> circuitNames;
  private final Set<String> heatNames;
  private final Set<String> chainNames;
  private final Set<String> assemblyNames;
  private final boolean heatMeasuresCircuit;

  ModelPlans(ProblemTemplate template) {
    this.circuit = template.circuit();
    this.heat = template.heat();
    this.chain = template.chain();
    this.assembly = template.assembly();
    this.connections = circuit.map(plan -> connections(plan));
    this.partNames = circuit.map(ModelPlans::namesByPart).orElse(List.of());
    this.circuitNames = circuit.map(UsedNames::in).orElse(Set.of());
    this.heatNames = heat.map(UsedNames::in).orElse(Set.of());
    this.chainNames = chain.map(UsedNames::in).orElse(Set.of());
    this.assemblyNames = assembly.map(UsedNames::in).orElse(Set.of());
    this.heatMeasuresCircuit = circuit.isPresent() && heat.isPresent();
  }

  boolean hasCircuit() {
    return circuit.isPresent();
  }

  boolean hasHeat() {
    return heat.isPresent();
  }

  boolean hasChain() {
    return chain.isPresent();
  }

  boolean hasAssembly() {
    return assembly.isPresent();
  }

  boolean heatMeasuresCircuit() {
    return heatMeasuresCircuit;
  }

  boolean circuitUsesAny(Set<String> names) {
    return uses(circuitNames, names);
  }

  boolean heatUsesAny(Set<String> names) {
    return uses(heatNames, names);
  }

  boolean chainUsesAny(Set<String> names) {
    return uses(chainNames, names);
  }

  boolean assemblyUsesAny(Set<String> names) {
    return uses(assemblyNames, names);
  }

  private static boolean uses(Set<String> used, Set<String> names) {
    for (String name : names) {
      if (used.contains(name)) {
        return true;
      }
    }
    return false;
  }

  private static List<Set<String>> namesByPart(CircuitPlan plan) {
    List<Set<String>> names = new ArrayList<>();
    for (PlannedPart part : plan.parts()) {
      Set<String> ofPart = new LinkedHashSet<>();
      part.values().values().forEach(value -> ofPart.addAll(Evaluation.names(value)));
      names.add(ofPart);
    }
    return List.copyOf(names);
  }

  private static Netlist connections(CircuitPlan plan) {
    List<PlacedPart> parts = new ArrayList<>();
    for (PlannedPart part : plan.parts()) {
      Map<String, Double> unknown = new LinkedHashMap<>();
      part.values().keySet().forEach(value -> unknown.put(value, 1.0));
      parts.add(new PlacedPart(part.kind(), part.name(), part.ends(), unknown));
    }
    return new Schematic(parts).netlist();
  }

  /** A circuit with numbers: the drawing and the connections between its parts. */
  final class Wired {
    private final List<PlacedPart> parts;

    private Wired(List<PlacedPart> parts) {
      this.parts = parts;
    }

    Schematic schematic() {
      return new Schematic(parts);
    }

    Netlist netlist() {
      Netlist known = connections.orElseThrow();
      Map<String, PlacedPart> byName = new LinkedHashMap<>();
      parts.forEach(part -> byName.put(part.name(), part));
      List<Netlist.Connected> connected = new ArrayList<>(known.parts().size());
      for (Netlist.Connected without : known.parts()) {
        connected.add(new Netlist.Connected(byName.get(without.part().name()), without.node()));
      }
      return new Netlist(connected, known.nodes(), known.nodeAt(), known.doubts());
    }

    /** Only the parts that use one of the changed names are made again. */
    Wired with(Values values, Set<String> changed) {
      List<PlacedPart> next = new ArrayList<>(parts.size());
      for (int i = 0; i < parts.size(); i++) {
        next.add(uses(partNames.get(i), changed) ? placed(circuit.orElseThrow().parts().get(i), values) : parts.get(i));
      }
      return new Wired(next);
    }
  }

  Wired wire(Values values) {
    List<PlacedPart> parts = new ArrayList<>();
    for (PlannedPart part : circuit.orElseThrow().parts()) {
      parts.add(placed(part, values));
    }
    return new Wired(parts);
  }

  private static PlacedPart placed(PlannedPart part, Values values) {
    Map<String, Double> numbers = new LinkedHashMap<>();
    part.values().forEach((value, formula) -> numbers.put(value, number(formula, values)));
    return new PlacedPart(part.kind(), part.name(), part.ends(), numbers, part.words(values.words()));
  }

  /** @param circuitMeasured what a loss may measure besides temperatures */
  HeatNetwork heatNetwork(Values values, Values.Measured circuitMeasured) {
    HeatPlan plan = heat.orElseThrow();
    List<HeatNetwork.Ambient> ambients = new ArrayList<>();
    plan.ambients().forEach(ambient ->
        ambients.add(new HeatNetwork.Ambient(ambient.name(), number(ambient.at(), values))));
    List<HeatNetwork.Node> nodes = new ArrayList<>();
    for (PlannedNode node : plan.nodes()) {
      double initial = node.initial().map(formula -> number(formula, values))
          .orElseGet(() -> ambients.get(0).kelvin());
      nodes.add(new HeatNetwork.Node(node.name(),
          node.capacity().map(formula -> number(formula, values)).orElse(0.0), initial));
    }
    List<HeatNetwork.Resistance> resistances = new ArrayList<>();
    plan.resistances().forEach(resistance -> resistances.add(new HeatNetwork.Resistance(resistance.name(),
        resistance.from(), resistance.to(), number(resistance.kelvinPerWatt(), values))));
    List<HeatNetwork.Loss> losses = new ArrayList<>();
    plan.losses().forEach(loss ->
        losses.add(new HeatNetwork.Loss(loss.name(), loss.into(), watts(loss, values, circuitMeasured))));
    return new HeatNetwork(ambients, nodes, resistances, losses);
  }

  private static HeatNetwork.PowerLaw watts(PlannedLoss loss, Values values, Values.Measured circuitMeasured) {
    if (!followsTemperature(loss.watts())) {
      double constant = number(loss.watts(), values.measuring(circuitMeasured));
      return temperatures -> constant;
    }
    return temperatures -> number(loss.watts(), values.measuring((measure, arguments) ->
        measure.equals("temperature")
            ? new ampersheet.quantity.Quantity(temperatures.kelvin(((Expression.Name) arguments.get(0)).id()),
                ampersheet.quantity.Dimension.TEMPERATURE)
            : circuitMeasured.value(measure, arguments)));
  }

  private static boolean followsTemperature(Expression expression) {
    if (expression instanceof Expression.Call call && call.function().equals("temperature")) {
      return true;
    }
    for (Expression part : expression.parts()) {
      if (followsTemperature(part)) {
        return true;
      }
    }
    return false;
  }

  /** @throws Unsolved if a size is not a whole number above zero, or the tiles cannot be made so */
  Panel panel(Values values) {
    try {
      return laid(chain.orElseThrow(), values);
    } catch (IllegalArgumentException impossible) {
      throw new Unsolved(impossible.getMessage());
    }
  }

  private static Panel laid(ChainPlan plan, Values values) {
    Tile tile = new Tile(size("columns of a tile", plan.tileColumns(), values),
        size("rows of a tile", plan.tileRows(), values),
        Tile.Order.called(said(plan.order(), values)), word(Tile.Corner.class, plan.start(), values),
        Tile.Along.called(said(plan.along(), values)), word(Tile.Side.class, plan.input(), values),
        word(Tile.Side.class, plan.output(), values));
    few("pixels in a tile", (long) tile.columns() * tile.rows());
    List<Panel.Place> places = places(plan.layout(), values);
    few("pixels", (long) tile.columns() * tile.rows() * places.size());
    return new Panel(tile, places, 0, plan.returnLine(),
        plan.bitsPerPixel().map(bits -> size("bits per pixel", bits, values, SizeLimits.BITS)).orElse(24),
        plan.bitTime().map(time -> number(time, values)).orElse(1.25e-6),
        plan.resetTime().map(time -> number(time, values)).orElse(0.0), plan.layout() instanceof Layout.Cabled);
  }

  /** Parallel chains to which the tiles are dealt out. */
  int parallelChains(Values values) {
    return chain.orElseThrow().chains().map(count -> size("parallel chains", count, values)).orElse(1);
  }

  /** Frames kept in memory. */
  int framesKept(Values values) {
    return chain.orElseThrow().frames().map(count -> size("frames in memory", count, values, SizeLimits.FRAMES)).orElse(1);
  }

  /** @throws Unsolved if the tiles cannot be put together so */
  Assembly assembly(Values values) {
    try {
      return put(assembly.orElseThrow(), values);
    } catch (IllegalArgumentException impossible) {
      throw new Unsolved(impossible.getMessage());
    }
  }

  private static Assembly put(AssemblyPlan plan, Values values) {
    if (plan instanceof AssemblyPlan.Edge edge) {
      size("contacts", edge.contacts(), values, SizeLimits.JOINED);
      return new MatingEdge(size("sides of a tile", edge.sides(), values, SizeLimits.SIDES),
          size("plain sides", edge.plainSides(), values), size("contacts", edge.contacts(), values),
          places("place of the supply contact", edge.supplies(), values),
          places("place of the ground contact", edge.grounds(), values),
          size("place of the output contact", edge.output(), values),
          size("place of the input contact", edge.input(), values));
    } else if (plan instanceof AssemblyPlan.Branches branches) {
      List<BranchedTiles.Arm> arms = new ArrayList<>();
      branches.arms().forEach(arm -> arms.add(new BranchedTiles.Arm(whole("side of an arm", arm.at(), values),
          whole("tiles of an arm", arm.tiles(), values))));
      few("tiles in the arms", arms.stream().mapToLong(BranchedTiles.Arm::tiles).sum(), SizeLimits.JOINED);
      BranchedTiles tiles = new BranchedTiles(size("sides of a tile", branches.sides(), values),
          number(branches.sideLength(), values), arms);
      if (!tiles.fault().isEmpty()) {
        throw new Unsolved(tiles.fault());
      }
      return tiles;
    }
    AssemblyPlan.Row row = (AssemblyPlan.Row) plan;
    return new TileRow(size("tiles of the row", row.tiles(), values), number(row.length(), values),
        number(row.error(), values));
  }

  private static List<Integer> places(String what, List<Expression> formulas, Values values) {
    return formulas.stream().map(formula -> size(what, formula, values)).toList();
  }

  private static List<Panel.Place> places(Layout layout, Values values) {
    List<Panel.Place> places = new ArrayList<>();
    if (layout instanceof Layout.Rows rows) {
      int columns = size("columns of tiles", rows.columns(), values);
      int count = size("rows of tiles", rows.rows(), values);
      few("tiles", (long) columns * count);
      for (int row = 0; row < count; row++) {
        boolean back = row % 2 == 1;
        for (int i = 0; i < columns; i++) {
          places.add(new Panel.Place(back ? columns - 1 - i : i, row, back ? 2 : 0));
        }
      }
      return places;
    }
    if (layout instanceof Layout.Cabled cabled) {
      int columns = size("columns of tiles", cabled.columns(), values);
      int rows = size("rows of tiles", cabled.rows(), values);
      few("tiles", (long) columns * rows);
      int turnedColumn = whole("column of the turned tile", cabled.turnedColumn(), values);
      int turnedRow = whole("row of the turned tile", cabled.turnedRow(), values);
      int quarters = Math.floorMod(whole("quarter turns", cabled.quarterTurns(), values), 4);
      for (int row = 0; row < rows; row++) {
        for (int column = 0; column < columns; column++) {
          places.add(new Panel.Place(column, row, column == turnedColumn && row == turnedRow ? quarters : 0));
        }
      }
      return places;
    }
    for (PlannedPlace place : ((Layout.Places) layout).places()) {
      places.add(new Panel.Place(whole("column of a tile", place.column(), values),
          whole("row of a tile", place.row(), values),
          Math.floorMod(whole("quarter turns", place.quarterTurns(), values), 4)));
    }
    return places;
  }

  /** A word of the tile, or of the given that the word names. */
  private static <E extends Enum<E>> E word(Class<E> kind, String wordOrGiven, Values values) {
    String word = said(wordOrGiven, values);
    String constant = word.toUpperCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
    for (E known : kind.getEnumConstants()) {
      if (known.name().equals(constant)) {
        return known;
      }
    }
    throw new Unsolved("\"" + word + "\" is no " + kind.getSimpleName().toLowerCase(Locale.ROOT) + " of a tile");
  }

  private static String said(String wordOrGiven, Values values) {
    return values.words().getOrDefault(wordOrGiven, wordOrGiven).strip();
  }

  private static int size(String what, Expression formula, Values values) {
    int size = whole(what, formula, values);
    if (size < 1) {
      throw new Unsolved("the " + what + " must be at least 1, not " + size);
    }
    return size;
  }

  private static int size(String what, Expression formula, Values values, int most) {
    int size = size(what, formula, values);
    few(what, size, most);
    return size;
  }

  private static void few(String what, long count) {
    few(what, count, MOST);
  }

  private static void few(String what, long count, long most) {
    if (count > most) {
      throw new Unsolved("so many " + what + ", " + count + ", are not laid out; at most " + most + " are");
    }
  }

  private static int whole(String what, Expression formula, Values values) {
    double number = number(formula, values);
    if (!Boundaries.isWhole(number) || Math.abs(number) > 1e6) {
      throw new Unsolved("the " + what + " must be a whole number, not " + number);
    }
    return (int) number;
  }

  private static double number(Expression formula, Values values) {
    return Evaluation.evaluate(formula, values).value();
  }
}
