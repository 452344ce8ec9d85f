package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.circuit.PartKind;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaReader;
import ampersheet.model.Measure;
import ampersheet.model.Measures;
import ampersheet.model.ModelKind;
import ampersheet.quantity.Dimension;
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

class MeasureCheckTest {
    /** The README is what authors read; it lists every measure with its arguments, and none that does not exist. */
    @Test
    void theReadmeListsExactlyTheMeasuresThereAre() throws IOException {
        Set<String> told = new TreeSet<>();
        for (String line : Files.readAllLines(Path.of("problem-templates/README.md"))) {
            if (line.startsWith("| circuit |")
                    || line.startsWith("| heat |")
                    || line.startsWith("| chain |")
                    || line.startsWith("| edge |")
                    || line.startsWith("| branches |")
                    || line.startsWith("| row |")
                    || line.startsWith("| net |")) {
                Matcher matcher = Pattern.compile("`([a-z_]+)\\(([^)]*)\\)`").matcher(line);
                while (matcher.find()) {
                    int arguments =
                            matcher.group(2).isEmpty() ? 0 : matcher.group(2).split(",").length;
                    told.add(line.substring(2, line.indexOf(' ', 2)) + " " + matcher.group(1) + "/" + arguments);
                }
            }
        }
        Set<String> known = new TreeSet<>();
        for (Measure measure : Measures.all()) {
            known.add(measure.kind().toString().toLowerCase(java.util.Locale.ROOT) + " " + measure.name() + "/"
                    + measure.arguments().size());
        }
        assertEquals(known, told);
    }

    @Test
    void aMeasureIsFoundByNameAndNumberOfArguments() {
        assertEquals(
                Dimension.VOLTAGE, Measures.first("voltage", 2).orElseThrow().dimension());
        assertEquals(
                Dimension.TIME, Measures.first("time_until", 2).orElseThrow().dimension());
        assertTrue(Measures.first("voltage", 3).isEmpty());
        assertTrue(Measures.first("ohms", 1).isEmpty());
    }

    @Test
    void ofTwoMeasuresWithOneNameTheOneWhoseThingsAreNamedIsMeant() {
        Expression.Call charging = (Expression.Call) FormulaReader.expression("time_until(out, 3 V)");
        Expression.Call warming = (Expression.Call) FormulaReader.expression("time_until(plate, 50 degC)");
        MeasureCheck.Things things = new MeasureCheck.Things(
                Set.of(ModelKind.CIRCUIT, ModelKind.HEAT), Set.of("out"), Map.of(), Set.of("plate"), Set.of());
        assertEquals(List.of(ModelKind.CIRCUIT), models(charging, things));
        assertEquals(List.of(ModelKind.HEAT), models(warming, things));
        MeasureCheck.Things heat =
                new MeasureCheck.Things(Set.of(ModelKind.HEAT), Set.of(), Map.of(), Set.of("plate"), Set.of());
        assertEquals(List.of(ModelKind.HEAT), models(charging, heat));
    }

    private static List<ModelKind> models(Expression.Call call, MeasureCheck.Things things) {
        return MeasureCheck.meant(call, things).stream().map(Measure::kind).toList();
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
            kind.needed().forEach(value -> words.add(value.key()));
            kind.optional().forEach(value -> words.add(value.key()));
            words.stream()
                    .filter(word -> !Pattern.compile("\\b" + word + "\\b")
                            .matcher(circuit)
                            .find())
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
