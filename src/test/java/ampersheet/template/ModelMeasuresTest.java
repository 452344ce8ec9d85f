package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.circuit.PartKind;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaReader;
import ampersheet.quantity.Dimension;
import ampersheet.template.ModelMeasures.Model;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class ModelMeasuresTest {
  /** The README is what authors read; it lists every measure with its arguments, and none that does not exist. */
  @Test
  void theReadmeListsExactlyTheMeasuresThereAre() throws IOException {
    Set<String> told = new TreeSet<>();
    for (String line : Files.readAllLines(Path.of("problem-templates/README.md"))) {
      if (line.startsWith("| circuit |") || line.startsWith("| heat |") || line.startsWith("| chain |")
          || line.startsWith("| edge |") || line.startsWith("| branches |") || line.startsWith("| row |")) {
        Matcher matcher = Pattern.compile("`([a-z_]+)\\(([^)]*)\\)`").matcher(line);
        while (matcher.find()) {
          int arguments = matcher.group(2).isEmpty() ? 0 : matcher.group(2).split(",").length;
          told.add(line.substring(2, line.indexOf(' ', 2)) + " " + matcher.group(1) + "/" + arguments);
        }
      }
    }
    Set<String> known = new TreeSet<>();
    for (ModelMeasures.Measure measure : ModelMeasures.all()) {
      known.add(measure.model().toString().toLowerCase(java.util.Locale.ROOT) + " " + measure.name() + "/"
          + measure.arguments().size());
    }
    assertEquals(known, told);
  }

  @Test
  void aMeasureIsFoundByNameAndNumberOfArguments() {
    assertEquals(Dimension.VOLTAGE, ModelMeasures.named("voltage", 2).orElseThrow().dimension());
    assertEquals(Dimension.TIME, ModelMeasures.named("time_until", 2).orElseThrow().dimension());
    assertTrue(ModelMeasures.named("voltage", 3).isEmpty());
    assertTrue(ModelMeasures.named("ohms", 1).isEmpty());
  }

  @Test
  void ofTwoMeasuresWithOneNameTheOneWhoseThingsAreNamedIsMeant() {
    Expression.Call charging = (Expression.Call) FormulaReader.expression("time_until(out, 3 V)");
    Expression.Call warming = (Expression.Call) FormulaReader.expression("time_until(plate, 50 degC)");
    ModelMeasures.Things things = new ModelMeasures.Things(Set.of(Model.CIRCUIT, Model.HEAT), Set.of("out"), Map.of(),
        Set.of("plate"), Set.of());
    assertEquals(List.of(Model.CIRCUIT), models(charging, things));
    assertEquals(List.of(Model.HEAT), models(warming, things));
    ModelMeasures.Things heat = new ModelMeasures.Things(Set.of(Model.HEAT), Set.of(), Map.of(), Set.of("plate"),
        Set.of());
    assertEquals(List.of(Model.HEAT), models(charging, heat));
  }

  private static List<Model> models(Expression.Call call, ModelMeasures.Things things) {
    return ModelMeasures.meant(call, things).stream().map(ModelMeasures.Measure::model).toList();
  }

  @Test
  void theReadmeNamesEveryKindOfPartWithItsValuesAndEnds() throws IOException {
    String readme = Files.readString(Path.of("problem-templates/README.md"));
    int start = readme.indexOf("**Circuit.**");
    String circuit = readme.substring(start, readme.indexOf("**Heat.**", start));
    Set<String> missing = new TreeSet<>();
    for (PartKind kind : PartKind.values()) {
      Set<String> words = new TreeSet<>(kind.terminals());
      words.add(kind.word());
      words.addAll(kind.needed().keySet());
      words.addAll(kind.optional().keySet());
      words.stream().filter(word -> !Pattern.compile("\\b" + word + "\\b").matcher(circuit).find())
          .forEach(word -> missing.add(kind.word() + ": " + word));
    }
    assertEquals(Set.of(), missing);
  }

  @Test
  void theReadmeListsExactlyTheCautionsThereAre() throws IOException {
    String readme = Files.readString(Path.of("problem-templates/README.md"));
    int start = readme.indexOf("**Cautions** by id:");
    String list = readme.substring(start, readme.indexOf(". ", start));
    Set<String> told = new TreeSet<>();
    Matcher matcher = Pattern.compile("`([a-z-]+)`").matcher(list);
    while (matcher.find()) {
      told.add(matcher.group(1));
    }
    assertEquals(new TreeSet<>(Cautions.IDS), told);
  }
}
