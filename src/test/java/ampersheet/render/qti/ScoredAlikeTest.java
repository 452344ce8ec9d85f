package ampersheet.render.qti;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.Judge;
import ampersheet.answer.KnownMistake;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.Rung;
import ampersheet.answer.UsualSlips;
import ampersheet.answer.Verdict;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Both interpreters in the tests, on both versions of the format, against the engine. */
class ScoredAlikeTest {
    private static final boolean DEEP = Boolean.getBoolean("ampersheet.deep");
    private static final ExchangeSession SESSION = new ExchangeSession(1, true);

    private final List<String> differences = new ArrayList<>();
    private final Map<String, Integer> rungs = new TreeMap<>();
    private int compared;

    @Test
    void everyAnswerIsScoredAsTheEngineJudgesItByAGoodAndByAPoorReaderOfEitherVersion() throws Exception {
        int every = DEEP ? 1 : 17;
        List<String> names = PackagedItems.LIBRARY.names();
        for (int i = 0; i < names.size(); i += every) {
            compareAll(PackagedItems.bare(names.get(i), 0, 1));
            compareAll(PackagedItems.faded(names.get(i), 0, 1));
        }
        System.out.println(compared + " answers scored alike by two readers of two versions: " + rungs);
        assertEquals(List.of(), differences.stream().limit(20).toList(), differences.size() + " of " + compared);
        if (PackagedItems.LIBRARY.names().size() > every) {
            assertTrue(compared >= (DEEP ? 40_000 : 3_000), compared + " answers");
            for (Rung rung : List.of(
                    Rung.BLANK,
                    Rung.CORRECT,
                    Rung.TOO_COARSE,
                    Rung.POWER_OF_TEN,
                    Rung.SIGN,
                    Rung.RECIPROCAL,
                    Rung.KNOWN_MISTAKE,
                    Rung.OTHER_QUANTITY,
                    Rung.NEAR_MISS,
                    Rung.UNEXPLAINED)) {
                assertTrue(rungs.getOrDefault(rung.name(), 0) >= (DEEP ? 20 : 5), rung + " is hardly tried: " + rungs);
            }
        }
    }

    private void compareAll(List<ExchangeItem> items) throws Exception {
        for (ExchangeItem item : items) {
            ItemModel model = ItemScoring.model(item, SESSION);
            String newer = ItemWriter.write(model, QtiVersion.V3_0).xml();
            String older = ItemWriter.write(model, QtiVersion.V2_1).xml();
            boolean swapped = compared % 2 == 0;
            Readers readers = new Readers(
                    new ItemInterpreter(swapped ? older : newer), new PoorInterpreter(swapped ? newer : older));
            for (ItemModel.Place place : model.places()) {
                if (!(place.key().acceptance() instanceof Acceptance.Designed)) {
                    compare(item, place, readers);
                }
            }
        }
    }

    private record Readers(ItemInterpreter good, PoorInterpreter poor) {}

    private void compare(ExchangeItem item, ItemModel.Place place, Readers readers) {
        AnswerKey key = place.key();
        ProblemKey whole = item.asked().key();
        for (String typed : probes(whole, key)) {
            Verdict verdict = Judge.judge(whole, Map.of(key.question(), typed)).stream()
                    .filter(one -> one.question().equals(key.question()))
                    .findFirst()
                    .orElseThrow();
            String expected = expected(key, verdict);
            Map<String, String> responses = typed.isEmpty() ? Map.of() : Map.of(place.response(), response(key, typed));
            Map<String, Object> good = readers.good().score(responses);
            Map<String, String> poor = readers.poor().score(responses);
            String said = good.get(place.feedback()) + " " + good.get("SCORE");
            String saidPoorly = poor.get(place.feedback()) + " " + Double.valueOf(poor.getOrDefault("SCORE", "0"));
            compared++;
            rungs.merge(verdict.rung().name(), 1, Integer::sum);
            if (!said.equals(expected) || !saidPoorly.equals(expected)) {
                differences.add(item.identifier() + " " + key.question() + " “" + typed + "”: engine " + expected
                        + ", package " + said + ", read poorly " + saidPoorly);
            }
        }
    }

    private static String response(AnswerKey key, String typed) {
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            return ItemModel.option(choice.options().stream()
                    .map(Acceptance.Option::text)
                    .toList()
                    .indexOf(typed));
        }
        return typed;
    }

    private static String expected(AnswerKey key, Verdict verdict) {
        double credit = verdict.isRight() ? 1 : verdict.rung() == Rung.TOO_COARSE ? 0.5 : 0;
        if (verdict.rung() != Rung.KNOWN_MISTAKE) {
            return verdict.rung().name() + " " + credit;
        }
        String id = verdict.mistake().orElseThrow();
        if (key.acceptance() instanceof Acceptance.Choice) {
            return "OPTION_" + (Integer.parseInt(id.substring("option-".length())) + 1) + " " + credit;
        }
        List<String> ids = key.mistakes().stream().map(KnownMistake::id).toList();
        return ScoringRules.mistake(ids.indexOf(id)) + " " + credit;
    }

    /** Ends of every band, a little inside and outside of them, and what every rung is made for. */
    private static Set<String> probes(ProblemKey problem, AnswerKey key) {
        Set<String> probes = new LinkedHashSet<>(List.of(""));
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            choice.options().forEach(option -> probes.add(option.text()));
            return probes;
        }
        double k = key.unit().fromSi(key.expected());
        List<Double> centres = new ArrayList<>(List.of(
                k, -k, k * 1.37, k / 7.7, k * 1e3, k / 1e3, k * 10, k / 10, k * 1e6, k / 1e9, 0.98 * k, 1.02 * k));
        if (k != 0) {
            centres.add(1 / k);
            centres.add(1 / (k * key.unit().factor() * key.unit().factor()));
        }
        key.mistakes().forEach(mistake -> centres.add(key.unit().fromSi(mistake.value())));
        UsualSlips.of(problem, key).forEach(slip -> centres.add(key.unit().fromSi(slip.value())));
        centres.add(1.04 * k);
        if (key.isShare()) {
            List.copyOf(centres).forEach(centre -> centres.add(centre / 100));
        }
        for (double centre : centres) {
            double band =
                    key.acceptance().band(key.unit().toSi(centre)) / key.unit().factor();
            for (double part : new double[] {0, 0.5, 1}) {
                for (double nudge : new double[] {0, -1e-6, 1e-6, -1e-3, 1e-3}) {
                    add(probes, centre + band * part * (1 + nudge));
                    add(probes, centre - band * part * (1 + nudge));
                }
            }
        }
        for (int figures = 1; figures <= key.figures(); figures++) {
            add(probes, new BigDecimal(k).round(new MathContext(figures)).doubleValue());
        }
        add(probes, 0);
        return probes;
    }

    private static void add(Set<String> probes, double value) {
        if (Double.isFinite(value)) {
            BigDecimal typed = new BigDecimal(value).round(new MathContext(11));
            boolean plain = value == 0 || Math.abs(value) >= 1e-5 && Math.abs(value) < 1e12;
            probes.add(plain ? typed.toPlainString() : typed.toString());
        }
    }
}
