package ampersheet.render.qti;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.Judge;
import ampersheet.answer.RightDesigns;
import ampersheet.answer.Rung;
import ampersheet.answer.Verdict;
import ampersheet.quantity.SignificantFigures;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Designs are judged by lists in a package, and by working them in the engine. */
class DesignsScoredAlikeTest {
    private static final int TRIES = Boolean.getBoolean("ampersheet.deep") ? 4_000 : 250;
    private static final ExchangeSession SESSION = new ExchangeSession(1, true);

    private final Map<String, Integer> rungs = new TreeMap<>();

    @ParameterizedTest
    @ValueSource(
            strings = {
                "voltage-dividers/design-pair",
                "thermal-rise/design-test-load",
                "current-limiting/design-odd-value"
            })
    void aDesignIsRightInAPackageIfAndOnlyIfItIsRightWhenWorked(String template) throws Exception {
        long seed = Long.getLong("ampersheet.seed", 16);
        Random random = new Random(seed);
        ExchangeItem item = PackagedItems.bare(template, 0, 1).get(0);
        ItemModel model = ItemScoring.model(item, SESSION);
        ItemInterpreter good =
                new ItemInterpreter(ItemWriter.write(model, QtiVersion.V3_0).xml());
        PoorInterpreter poor =
                new PoorInterpreter(ItemWriter.write(model, QtiVersion.V2_1).xml());
        for (int i = 0; i < TRIES; i++) {
            Map<String, String> typed = typed(item, random);
            Map<String, String> responses = new TreeMap<>();
            model.places().forEach(place -> {
                if (typed.containsKey(place.key().question())) {
                    responses.put(place.response(), typed.get(place.key().question()));
                }
            });
            Map<String, Verdict> verdicts = new TreeMap<>();
            Judge.judge(item.asked().key(), typed).forEach(verdict -> verdicts.put(verdict.question(), verdict));
            Map<String, Object> read = good.score(responses);
            Map<String, String> readPoorly = poor.score(responses);
            double credit = 0;
            for (ItemModel.Place place : model.places()) {
                Verdict verdict = verdicts.get(place.key().question());
                rungs.merge(verdict.rung().name(), 1, Integer::sum);
                Object said = read.get(place.feedback());
                String where = template + " seed " + seed + " " + typed + " "
                        + place.key().question();
                assertEquals(said, readPoorly.get(place.feedback()), where);
                boolean right = verdict.rung() == Rung.CORRECT;
                boolean coarse = verdict.rung() == Rung.TOO_COARSE;
                credit += right ? 1 : coarse ? 0.5 : 0;
                assertEquals(right, "CORRECT".equals(said), where + " " + said + " " + verdict.rung());
                assertEquals(coarse, "TOO_COARSE".equals(said), where + " " + said + " " + verdict.rung());
                if (place.key().acceptance() instanceof Acceptance.Designed) {
                    assertEquals(verdict.rung().name(), said, where);
                }
            }
            assertEquals(credit, read.get("SCORE"), typed.toString());
            assertEquals(credit, Double.parseDouble(readPoorly.getOrDefault("SCORE", "0")), typed.toString());
        }
        for (Rung rung : List.of(Rung.CORRECT, Rung.CRITERION_MISSED, Rung.INCOMPLETE, Rung.BLANK)) {
            assertTrue(rungs.getOrDefault(rung.name(), 0) >= 10, rung + " is hardly tried: " + rungs);
        }
    }

    /**
     * Right pairs, other pairs, values that may not be chosen, nothing; and what follows from them, or what does not.
     */
    private static Map<String, String> typed(ExchangeItem item, Random random) {
        Map<String, String> typed = new TreeMap<>();
        RightDesigns design = item.asked().designs().get(0);
        RightDesigns.Choice choice =
                design.choices().get(random.nextInt(design.choices().size()));
        boolean right = random.nextInt(10) < 4;
        for (AnswerKey key : item.asked().key().answers()) {
            if (key.acceptance() instanceof Acceptance.Designed designed) {
                List<Double> members = designed.members();
                double si = right ? choice.chosen().get(key.step()) : members.get(random.nextInt(members.size()));
                int slip = random.nextInt(10);
                if (slip == 0 && !right) {
                    continue;
                }
                double number = key.unit().fromSi(slip == 1 && !right ? si * 1.013 : si);
                typed.put(key.question(), text(number));
            } else {
                double own = choice.worked().quantity(key.step()).value();
                List<Double> numbers = new ArrayList<>();
                for (double si : new double[] {own, key.expected()}) {
                    double number = key.unit().fromSi(si);
                    numbers.addAll(List.of(
                            number,
                            number * 1.001,
                            number * 0.96,
                            number * 10,
                            -number,
                            SignificantFigures.round(number, 2),
                            SignificantFigures.round(number, 1)));
                }
                typed.put(key.question(), text(numbers.get(random.nextInt(numbers.size()))));
            }
        }
        return typed;
    }

    private static String text(double number) {
        return new BigDecimal(number).round(new MathContext(11)).toPlainString();
    }
}
