package ampersheet.marking;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.KnownMistake;
import ampersheet.quantity.QuantityWriter;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SheetProblem;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/**
 * Learners who work their sheets rightly except for wrong ideas planted in them. Whoever holds a wrong idea follows it
 * wherever the sheet gives occasion; the rest is right, a slip of attention (an unexplained value) or left open.
 */
final class SimulatedClass {
    private final SheetMaker maker;
    private final Random random;
    private final Map<Integer, Learner> learners = new LinkedHashMap<>();

    /**
     * @param holds ids of mistakes planted
     * @param answerable those of them for which the sheet gave occasion
     */
    record Learner(int seat, Sheet sheet, Set<String> holds, Set<String> answerable, Map<String, String> typed) {}

    SimulatedClass(SheetMaker maker, long seed) {
        this.maker = maker;
        this.random = new Random(seed);
    }

    /** @param most mistakes that one learner may hold */
    Learner learner(int seat, int most, double slips, double blanks) {
        Sheet sheet = maker.sheet(seat);
        Set<String> ideas = new LinkedHashSet<>();
        maker.set().templates().forEach(template -> template.mistakes().forEach(mistake -> ideas.add(mistake.id())));
        List<String> all = new ArrayList<>(ideas);
        Set<String> holds = new LinkedHashSet<>();
        int count = random.nextInt(most + 1);
        while (holds.size() < count) {
            holds.add(all.get(random.nextInt(all.size())));
        }
        return holding(sheet, holds, slips, blanks);
    }

    /** One who holds just these mistakes. */
    Learner holding(int seat, Set<String> holds, double slips, double blanks) {
        return holding(maker.sheet(seat), holds, slips, blanks);
    }

    private Learner holding(Sheet sheet, Set<String> holds, double slips, double blanks) {
        int seat = sheet.id().seat();
        Set<String> answerable = new LinkedHashSet<>();
        Map<String, String> typed = new LinkedHashMap<>();
        for (SheetProblem problem : sheet.problems()) {
            for (AnswerKey key : problem.places()) {
                typed.put(key.question(), answer(key, holds, answerable, slips, blanks));
            }
        }
        Learner learner = new Learner(seat, sheet, holds, answerable, typed);
        learners.put(seat, learner);
        return learner;
    }

    private String answer(AnswerKey key, Set<String> holds, Set<String> answerable, double slips, double blanks) {
        for (KnownMistake mistake : key.mistakes()) {
            if (holds.contains(mistake.id())) {
                answerable.add(mistake.id());
                return written(key, mistake.value());
            }
        }
        if (random.nextDouble() < blanks) {
            return "";
        }
        if (key.acceptance() instanceof Acceptance.Choice || random.nextDouble() >= slips) {
            return written(key, key.expected());
        }
        double factor = 1.37 + random.nextDouble();
        return key.acceptance() instanceof Acceptance.Count
                ? Long.toString((long) (key.expected() * factor) + 7)
                : written(key, key.unit().toSi(key.unit().fromSi(key.expected()) * factor));
    }

    /** As a careful learner would type it. */
    static String written(AnswerKey key, double value) {
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            return choice.options().get((int) value).text();
        }
        return QuantityWriter.POINT
                .plain(value, key.unit(), key.acceptance() instanceof Acceptance.Within ? 4 : 9)
                .text();
    }

    /** What the learner's page saves. */
    static String file(Learner learner) {
        StringBuilder out = new StringBuilder("sheet,question,answer\n");
        learner.typed()
                .forEach((question, text) -> out.append(learner.sheet().id())
                        .append(',')
                        .append(question)
                        .append(",\"")
                        .append(text.replace("\"", "\"\""))
                        .append("\"\n"));
        return out.toString();
    }
}
