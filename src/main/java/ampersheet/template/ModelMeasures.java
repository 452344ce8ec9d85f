package ampersheet.template;

import ampersheet.circuit.PartKind;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaFault;
import ampersheet.formula.Scope;
import ampersheet.formula.TradeWords;
import ampersheet.quantity.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What can be read off the solved models of a template: the measures that proofs are made of, with their arguments and
 * dimensions.
 */
public final class ModelMeasures {
  public enum Model { CIRCUIT, HEAT, CHAIN, EDGE, BRANCHES, ROW }

  /** What an argument is: the name of a thing in the model, or a quantity. */
  public enum Argument {
    /** A named node of the circuit. */
    CIRCUIT_NODE("a named node of the circuit", null),
    /** A part of the circuit. */
    PART("a part of the circuit", null),
    STRIP("a strip of the circuit", null),
    PANEL("a panel of the circuit", null),
    STRIP_OR_PANEL("a strip or panel of the circuit", null),
    /** An ambient or node of the heat network. */
    HEAT_NODE("a node of the heat network", null),
    /** A resistance or loss of the heat network. */
    HEAT_FLOW("a resistance or loss of the heat network", null),
    TIME("a time", Dimension.TIME),
    VOLTAGE("a voltage", Dimension.VOLTAGE),
    TEMPERATURE("a temperature", Dimension.TEMPERATURE),
    TAP("a plain number", Dimension.ONE),
    COLUMN("a plain number", Dimension.ONE),
    ROW("a plain number", Dimension.ONE),
    TURN("a plain number", Dimension.ONE),
    PLACE("a plain number", Dimension.ONE),
    SIDE("a plain number", Dimension.ONE),
    ARM("a plain number", Dimension.ONE),
    TILE("a plain number", Dimension.ONE);

    private final String told;
    private final Dimension dimension;

    Argument(String told, Dimension dimension) {
      this.told = told;
      this.dimension = dimension;
    }

    /** Empty for the name of a thing. */
    public Optional<Dimension> dimension() {
      return Optional.ofNullable(dimension);
    }
  }

  /** @param meaning what it measures, without article */
  public record Measure(Model model, String name, List<Argument> arguments, Dimension dimension, String meaning) {
    public Measure {
      arguments = List.copyOf(arguments);
    }

    /** Such as {@code voltage(node, node)}. */
    String shape() {
      List<String> kinds = new ArrayList<>();
      for (int i = 0; i < arguments.size(); i++) {
        kinds.add(argumentWord(i));
      }
      return name + "(" + String.join(", ", kinds) + ")";
    }

    String argumentWord(int index) {
      return switch (arguments.get(index)) {
        case CIRCUIT_NODE, HEAT_NODE -> "node";
        case PART -> "part";
        case STRIP -> "strip";
        case PANEL -> "panel";
        case STRIP_OR_PANEL -> "strip or panel";
        case HEAT_FLOW -> "resistance or loss";
        case TIME -> "time";
        case VOLTAGE -> "voltage";
        case TEMPERATURE -> "temperature";
        case TAP -> "tap";
        case COLUMN -> "x";
        case ROW -> "y";
        case TURN -> "turn";
        case PLACE -> "place";
        case SIDE -> "side";
        case ARM -> "arm";
        case TILE -> "tile";
      };
    }
  }

  private static final List<Measure> ALL = List.of(
      new Measure(Model.CIRCUIT, "voltage", List.of(Argument.CIRCUIT_NODE), Dimension.VOLTAGE,
          "voltage of a node against the reference node"),
      new Measure(Model.CIRCUIT, "voltage", List.of(Argument.CIRCUIT_NODE, Argument.CIRCUIT_NODE), Dimension.VOLTAGE,
          "voltage of the first node against the second"),
      new Measure(Model.CIRCUIT, "across", List.of(Argument.PART), Dimension.VOLTAGE, "voltage across a part"),
      new Measure(Model.CIRCUIT, "current", List.of(Argument.PART), Dimension.CURRENT, "current through a part"),
      new Measure(Model.CIRCUIT, "power", List.of(Argument.PART), Dimension.POWER,
          "power a part takes up, a source delivers"),
      new Measure(Model.CIRCUIT, "tap_voltage", List.of(Argument.STRIP, Argument.TAP), Dimension.VOLTAGE,
          "voltage across the load at a tap of a strip, from 1"),
      new Measure(Model.CIRCUIT, "pixel_voltage", List.of(Argument.PANEL, Argument.COLUMN, Argument.ROW),
          Dimension.VOLTAGE, "voltage across the pixel at column x and row y of a panel, from 0"),
      new Measure(Model.CIRCUIT, "lowest_voltage", List.of(Argument.STRIP_OR_PANEL), Dimension.VOLTAGE,
          "lowest voltage across any load of a strip or panel"),
      new Measure(Model.CIRCUIT, "lowest_tap", List.of(Argument.STRIP), Dimension.ONE,
          "first tap of a strip with the lowest voltage"),
      new Measure(Model.CIRCUIT, "voltage_after", List.of(Argument.CIRCUIT_NODE, Argument.TIME), Dimension.VOLTAGE,
          "voltage of a node after a time"),
      new Measure(Model.CIRCUIT, "current_after", List.of(Argument.PART, Argument.TIME), Dimension.CURRENT,
          "current through a part after a time"),
      new Measure(Model.CIRCUIT, "time_until", List.of(Argument.CIRCUIT_NODE, Argument.VOLTAGE), Dimension.TIME,
          "time until a node passes a voltage"),
      new Measure(Model.HEAT, "temperature", List.of(Argument.HEAT_NODE), Dimension.TEMPERATURE,
          "steady temperature of a node"),
      new Measure(Model.HEAT, "temperature_after", List.of(Argument.HEAT_NODE, Argument.TIME), Dimension.TEMPERATURE,
          "temperature of a node after a time"),
      new Measure(Model.HEAT, "time_until", List.of(Argument.HEAT_NODE, Argument.TEMPERATURE), Dimension.TIME,
          "time until a node reaches a temperature"),
      new Measure(Model.HEAT, "heat", List.of(Argument.HEAT_FLOW), Dimension.POWER,
          "heat through a resistance or of a loss"),
      new Measure(Model.CHAIN, "turn", List.of(Argument.COLUMN, Argument.ROW), Dimension.ONE,
          "turn of the pixel at column x and row y, from 0"),
      new Measure(Model.CHAIN, "lines_before", List.of(Argument.COLUMN, Argument.ROW), Dimension.ONE,
          "lines of pixels of its tile that the data has left behind at the pixel"),
      new Measure(Model.CHAIN, "column_of", List.of(Argument.TURN), Dimension.ONE,
          "column of the pixel with that turn, from 0"),
      new Measure(Model.CHAIN, "row_of", List.of(Argument.TURN), Dimension.ONE,
          "row of the pixel with that turn, from 0"),
      new Measure(Model.CHAIN, "pixels", List.of(), Dimension.ONE, "number of pixels"),
      new Measure(Model.CHAIN, "tiles", List.of(), Dimension.ONE, "number of tiles"),
      new Measure(Model.CHAIN, "frame_time", List.of(), Dimension.TIME, "time of one frame"),
      new Measure(Model.CHAIN, "memory", List.of(), Dimension.ONE, "memory of the frames kept"),
      new Measure(Model.CHAIN, "tile_turn", List.of(Argument.COLUMN, Argument.ROW), Dimension.ONE,
          "turn of the tile that holds the pixel"),
      new Measure(Model.CHAIN, "return_turn", List.of(Argument.COLUMN, Argument.ROW), Dimension.ONE,
          "tiles the return line passes from the pixel's tile back to the controller"),
      new Measure(Model.EDGE, "touched", List.of(Argument.PLACE), Dimension.ONE,
          "place that lies on that place of the row where two plain sides meet"),
      new Measure(Model.EDGE, "safe_pairs", List.of(), Dimension.ONE, "pairs of sides that may meet without a short"),
      new Measure(Model.EDGE, "fault", List.of(Argument.SIDE, Argument.SIDE), Dimension.ONE,
          "gravest fault where these sides of two tiles meet, from 1 for a short to 5; 0 if the pair works"),
      new Measure(Model.EDGE, "working_pairs", List.of(), Dimension.ONE,
          "pairs of sides that pass supply, ground and data without a fault"),
      new Measure(Model.EDGE, "harmful_pairs", List.of(), Dimension.ONE,
          "pairs of sides with a short, a forced output or a tile fed through a data pin"),
      new Measure(Model.EDGE, "unmatched", List.of(), Dimension.ONE,
          "contacts of a plain side that meet no partner on another plain side"),
      new Measure(Model.BRANCHES, "arm_turn", List.of(Argument.ARM, Argument.TILE), Dimension.ONE,
          "turn of a tile of an arm, the first tile's being 0"),
      new Measure(Model.BRANCHES, "crossings", List.of(), Dimension.ONE,
          "times the data crosses from tile to tile until it is back in the first"),
      new Measure(Model.BRANCHES, "way", List.of(), Dimension.LENGTH,
          "way of the data from the centre of the first tile round all others and back"),
      new Measure(Model.BRANCHES, "open_sides", List.of(), Dimension.ONE,
          "sides on which neither a tile nor the controller sits"),
      new Measure(Model.BRANCHES, "last_side", List.of(), Dimension.ONE,
          "side of the first tile at which the data comes home last"),
      new Measure(Model.ROW, "worst_edge", List.of(), Dimension.LENGTH,
          "farthest the last edge can be from its place, each tile set against the one before"),
      new Measure(Model.ROW, "typical_edge", List.of(), Dimension.LENGTH,
          "root mean square of how far that edge is from its place"),
      new Measure(Model.ROW, "worst_gap_from_datum", List.of(), Dimension.LENGTH,
          "widest gap or deepest overlap, each tile set from one datum"));

  private ModelMeasures() {}

  public static List<Measure> all() {
    return ALL;
  }

  /** The first measure of that name with so many arguments; two models may have one. */
  public static Optional<Measure> named(String name, int arguments) {
    return allNamed(name, arguments).stream().findFirst();
  }

  private static List<Measure> allNamed(String name, int arguments) {
    return ALL.stream()
        .filter(measure -> measure.name().equals(name) && measure.arguments().size() == arguments)
        .toList();
  }

  /** The measures that may be meant: where two models have one of that name, those whose things it names. */
  static List<Measure> meant(Expression.Call call, Things things) {
    List<Measure> named = allNamed(call.function(), call.arguments().size());
    List<Measure> ofModels = named.stream().filter(measure -> things.models().contains(measure.model())).toList();
    List<Measure> fitting = ofModels.stream().filter(measure -> namesItsThings(call, measure, things)).toList();
    return !fitting.isEmpty() ? fitting : !ofModels.isEmpty() ? ofModels : named;
  }

  private static boolean namesItsThings(Expression.Call call, Measure measure, Things things) {
    for (int i = 0; i < call.arguments().size(); i++) {
      Argument wanted = measure.arguments().get(i);
      if (wanted.dimension().isEmpty() && !(call.arguments().get(i) instanceof Expression.Name name
          && things.of(wanted).contains(name.id()))) {
        return false;
      }
    }
    return true;
  }

  /** The things measures can name, and the models there are. */
  record Things(Set<Model> models, Set<String> circuitNodes, Map<String, Optional<PartKind>> parts,
      Set<String> heatNodes, Set<String> heatFlows) {
    Set<String> of(Argument argument) {
      return switch (argument) {
        case CIRCUIT_NODE -> circuitNodes;
        case PART -> parts.keySet();
        case STRIP -> partsOf(PartKind.STRIP);
        case PANEL -> partsOf(PartKind.PANEL);
        case STRIP_OR_PANEL -> partsOf(PartKind.STRIP, PartKind.PANEL);
        case HEAT_NODE -> heatNodes;
        case HEAT_FLOW -> heatFlows;
        default -> Set.of();
      };
    }

    /** With those whose kind could not be read, which is told already. */
    private Set<String> partsOf(PartKind... kinds) {
      Set<String> names = new TreeSet<>();
      parts.forEach((name, kind) -> {
        if (kind.isEmpty() || List.of(kinds).contains(kind.get())) {
          names.add(name);
        }
      });
      return names;
    }
  }

  /** Whether the template has the model, and things of it that can be named. */
  private static boolean isUsable(Measure measure, Things things) {
    return things.models().contains(measure.model()) && measure.arguments().stream()
        .allMatch(wanted -> wanted.dimension().isPresent() || !things.of(wanted).isEmpty());
  }

  /** A measure of that dimension as it could stand in this template. */
  static Optional<String> example(Dimension dimension, Things things) {
    for (Measure measure : ALL) {
      if (measure.dimension().equals(dimension) && isUsable(measure, things)) {
        List<String> arguments = new ArrayList<>();
        for (Argument wanted : measure.arguments()) {
          arguments.add(wanted.dimension().isPresent() ? measure.argumentWord(arguments.size())
              : new TreeSet<>(things.of(wanted)).last());
        }
        return Optional.of(measure.name() + "(" + String.join(", ", arguments) + ")");
      }
    }
    return Optional.empty();
  }

  /** Dimensions by name and number of arguments, for {@link Evaluation#check}. */
  public static final Scope.Measures DIMENSIONS =
      (measure, arguments) -> named(measure, arguments.size()).map(Measure::dimension);

  static boolean isMeasure(String name) {
    return ALL.stream().anyMatch(measure -> measure.name().equals(name));
  }

  /** Whether an argument names a thing of the model rather than a quantity. */
  static boolean namesAThing(Expression.Call call, int argument) {
    Optional<Measure> measure = named(call.function(), call.arguments().size());
    return measure.map(known -> known.arguments().get(argument).dimension().isEmpty())
        .orElse(isMeasure(call.function()));
  }

  /** @throws FormulaFault if there is no such measure, model or thing, or an argument has the wrong dimension */
  static void check(Expression.Call call, Things things, Scope quantities) {
    List<Measure> meant = meant(call, things);
    if (meant.isEmpty()) {
      throw unknown(call, things);
    }
    Measure measure = meant.stream().filter(one -> quantitiesFit(call, one, quantities)).findFirst()
        .orElse(meant.get(0));
    if (!things.models().contains(measure.model())) {
      throw new FormulaFault(call.position(), measure.name() + " is a measure of " + told(measure.model())
          + ", and this template has none", "a measure of " + toldAll(things.models()),
          "Add the model under " + key(measure.model()) + ":, or use another measure.");
    }
    for (int i = 0; i < measure.arguments().size(); i++) {
      check(call.arguments().get(i), measure.arguments().get(i), things, quantities);
    }
  }

  private static boolean quantitiesFit(Expression.Call call, Measure measure, Scope quantities) {
    for (int i = 0; i < call.arguments().size(); i++) {
      Optional<Dimension> wanted = measure.arguments().get(i).dimension();
      if (wanted.isPresent() && !Evaluation.check(call.arguments().get(i), quantities).equals(wanted.get())) {
        return false;
      }
    }
    return true;
  }

  private static void check(Expression given, Argument wanted, Things things, Scope quantities) {
    if (wanted.dimension().isPresent()) {
      Dimension dimension = Evaluation.check(given, quantities);
      if (!dimension.equals(wanted.dimension().get())) {
        throw new FormulaFault(given.position(), "this is in " + TradeWords.plural(dimension), wanted.told,
            "Give " + wanted.told + " here.");
      }
      return;
    }
    Set<String> names = things.of(wanted);
    if (given instanceof Expression.Name name && names.contains(name.id())) {
      return;
    }
    String typed = given instanceof Expression.Name name ? name.id() : "";
    throw new FormulaFault(given.position(),
        typed.isEmpty() ? "this is not the name of " + wanted.told : typed + " is not " + wanted.told,
        Guess.among(names, wanted.told),
        Guess.of(typed, names, wanted == Argument.CIRCUIT_NODE
            ? "Name the node with {node: name, at: [x, y]}, or use one that is named." : "Use one of these names."));
  }

  private static FormulaFault unknown(Expression.Call call, Things things) {
    List<String> shapes = new ArrayList<>();
    Set<String> names = new TreeSet<>();
    for (Measure measure : ALL) {
      names.add(measure.name());
      if (measure.name().equals(call.function())) {
        shapes.add(measure.shape());
      }
    }
    if (!shapes.isEmpty()) {
      return new FormulaFault(call.position(), call.function() + " does not take " + count(call.arguments().size()),
          String.join(" or ", shapes), "Give it these.");
    }
    Set<String> usable = new TreeSet<>();
    ALL.stream().filter(measure -> isUsable(measure, things)).forEach(measure -> usable.add(measure.name()));
    return new FormulaFault(call.position(), "there is no function or measure " + call.function(),
        Guess.among(usable, "a measure of a model"),
        Guess.of(call.function(), names, "Use one of the measures."));
  }

  private static String count(int arguments) {
    return arguments == 0 ? "no argument" : arguments == 1 ? "one argument" : arguments + " arguments";
  }

  private static String told(Model model) {
    return switch (model) {
      case CIRCUIT -> "a circuit";
      case HEAT -> "a heat network";
      case CHAIN -> "a chain";
      case EDGE -> "an edge";
      case BRANCHES -> "branches";
      case ROW -> "a row";
    };
  }

  private static String toldAll(Set<Model> models) {
    List<String> told = new ArrayList<>();
    for (Model model : Model.values()) {
      if (models.contains(model)) {
        told.add(told(model));
      }
    }
    return told.isEmpty() ? "a model" : String.join(" or ", told);
  }

  private static String key(Model model) {
    return switch (model) {
      case CIRCUIT -> "circuit";
      case HEAT -> "heat";
      case CHAIN -> "chain";
      case EDGE -> "edge";
      case BRANCHES -> "branches";
      case ROW -> "row";
    };
  }
}
