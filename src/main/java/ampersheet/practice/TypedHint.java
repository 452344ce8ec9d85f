package ampersheet.practice;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.DesignKey;
import ampersheet.answer.KnownMistake;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.Rung;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.Reading;
import ampersheet.quantity.Unit;
import java.util.Optional;

/**
 * What can be said of a wrong value: its verdict, where that does not stand beside yet, or what tells more than that:
 * what its unit should be made of, on which side and how far off it lies, which modelled mistake it is near. Never the
 * value asked for.
 */
final class TypedHint {
    /** How near, and nearer than to the key: whoever makes this mistake and a small slip lands here. */
    private static final double NEAR_A_MISTAKE = 0.15;

    private TypedHint() {}

    /**
     * Empty where the verdict stands beside and says all there is to say.
     *
     * @param told of what is typed now
     */
    static Optional<String> of(ProblemKey key, AnswerKey answer, Attempt attempt, Checked.Told told) {
        boolean isTold = !attempt.typed().get(answer.question()).at().isAfter(attempt.checked());
        if (told.kind() == Checked.Kind.RIGHT) {
            return Optional.empty();
        }
        if (!(answer.acceptance() instanceof Acceptance.Choice)) {
            Optional<String> more = beyond(key, answer, attempt, told, isTold);
            if (more.isPresent()) {
                return more;
            }
        }
        return isTold ? Optional.empty() : Optional.of(told.message());
    }

    /** What the verdict does not say. */
    private static Optional<String> beyond(
            ProblemKey key, AnswerKey answer, Attempt attempt, Checked.Told told, boolean isTold) {
        for (DesignKey design : key.designs()) {
            if (design.steps().contains(answer.step())) {
                return told.rung() == Rung.CRITERION_MISSED
                        ? DesignHint.of(key, design, attempt, isTold)
                        : Optional.empty();
            }
        }
        boolean saysWhatIsWrong = switch (told.rung()) {
            case WRONG_DIMENSION, UNEXPLAINED, NEAR_MISS -> false;
            default -> true;
        };
        if (saysWhatIsWrong) {
            return Optional.empty();
        }
        String text = attempt.text(answer.question());
        String typed = WorkingLine.read(text, key, answer)
                .filter(line -> !line.isFaulty())
                .map(WorkingLine::value)
                .orElse(text);
        Sentences sentences = new Sentences(key.language());
        if (!(QuantityReader.read(typed, answer.unit(), key.decimal()) instanceof Reading.Value value)) {
            return Optional.empty();
        }
        Unit unit = value.unit().orElse(answer.unit());
        if (!unit.dimension().equals(answer.unit().dimension())) {
            return madeOf(answer.unit())
                    .map(made -> sentences.unitIsMadeOf(
                            answer.unit().symbol(), key.language().say(made)));
        }
        double si = value.si(answer.unit());
        if (saysWhichWay(answer, value, si)) {
            return Optional.empty();
        }
        return near(answer, si, sentences)
                .or(() -> Optional.of(
                        told.rung() == Rung.NEAR_MISS
                                ? sentences.little(si > answer.expected())
                                : size(answer, si, sentences)));
    }

    /** Whether the verdict on a member of a series or a count tells more than its side or its size would. */
    private static boolean saysWhichWay(AnswerKey answer, Reading.Value value, double si) {
        double expected = answer.expected();
        if (answer.acceptance() instanceof Acceptance.Preferred preferred) {
            return !preferred.series().contains(si)
                    || preferred.accepts(preferred.below(expected), si)
                    || preferred.accepts(preferred.above(expected), si);
        }
        return answer.acceptance() instanceof Acceptance.Count
                && (!value.wholeNumber() || Math.abs(si - expected) < 1.5);
    }

    /** A mistake that the verdict did not name, because the value is too far off it. */
    private static Optional<String> near(AnswerKey answer, double si, Sentences sentences) {
        Optional<KnownMistake> nearest = Optional.empty();
        double least = Math.abs(si - answer.expected());
        for (KnownMistake mistake : answer.mistakes()) {
            double distance = Math.abs(si - mistake.value());
            if (distance < least && distance <= NEAR_A_MISTAKE * Math.abs(mistake.value())) {
                nearest = Optional.of(mistake);
                least = distance;
            }
        }
        return nearest.map(mistake -> sentences.nearMistake(mistake.explanation()));
    }

    private static String size(AnswerKey answer, double si, Sentences sentences) {
        boolean scale = answer.unit().offset() != 0;
        boolean count = answer.acceptance() instanceof Acceptance.Count;
        if (scale || answer.expected() == 0 || si == 0 || si < 0 != answer.expected() < 0) {
            return scale ? sentences.warmer(si > answer.expected()) : sentences.side(si > answer.expected());
        }
        double ratio = Math.abs(si / answer.expected());
        boolean large = ratio > 1;
        double times = large ? ratio : 1 / ratio;
        return sentences.size(large, times, count);
    }

    /** Key of the words for how the unit asked for comes about from volts, amperes and the like. */
    private static Optional<String> madeOf(Unit asked) {
        Object[][] made = {
            {Dimension.RESISTANCE, "practice.hint.unit.resistance"},
            {Dimension.CURRENT, "practice.hint.unit.current"},
            {Dimension.VOLTAGE, "practice.hint.unit.voltage"},
            {Dimension.POWER, "practice.hint.unit.power"},
            {Dimension.ENERGY, "practice.hint.unit.energy"},
            {Dimension.TIME, "practice.hint.unit.time"},
            {Dimension.TEMPERATURE, "practice.hint.unit.temperature"},
            {Dimension.TEMPERATURE.over(Dimension.POWER), "practice.hint.unit.thermal-resistance"},
        };
        for (Object[] row : made) {
            if (row[0].equals(asked.dimension())) {
                return Optional.of((String) row[1]);
            }
        }
        return Optional.empty();
    }
}
