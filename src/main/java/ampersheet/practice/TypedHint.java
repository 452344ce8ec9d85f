package ampersheet.practice;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.DesignKey;
import ampersheet.answer.KnownMistake;
import ampersheet.answer.ProblemKey;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.Reading;
import ampersheet.quantity.Unit;
import java.util.Optional;

/**
 * What can be said of a wrong value beyond its verdict: what its unit should be made of, on which side and how far off
 * it lies, which modelled mistake it is near. Never the value asked for.
 */
final class TypedHint {
    /** How near, and nearer than to the key: whoever makes this mistake and a small slip lands here. */
    private static final double NEAR_A_MISTAKE = 0.15;

    private TypedHint() {}

    /** Empty where nothing was typed, or where the verdict said all there is to say. */
    static Optional<String> of(ProblemKey key, AnswerKey answer, Attempt attempt) {
        String text = attempt.text(answer.question());
        Acceptance acceptance = answer.acceptance();
        if (acceptance instanceof Acceptance.Choice) {
            return Optional.empty();
        }
        for (DesignKey design : key.designs()) {
            if (design.steps().contains(answer.step())) {
                return DesignHint.of(key, design, attempt);
            }
        }
        String typed = WorkingLine.read(text, key, answer)
                .filter(line -> !line.isFaulty())
                .map(WorkingLine::value)
                .orElse(text);
        if (!(QuantityReader.read(typed, answer.unit()) instanceof Reading.Value value)) {
            return Optional.empty();
        }
        Unit unit = value.unit().orElse(answer.unit());
        if (!unit.dimension().equals(answer.unit().dimension())) {
            return madeOf(answer.unit())
                    .map(made -> Sentences.unitIsMadeOf(answer.unit().symbol(), made));
        }
        double si = value.si(answer.unit());
        if (acceptance.accepts(answer.expected(), si)) {
            return Optional.empty();
        }
        return near(answer, si).or(() -> Optional.of(size(answer, si)));
    }

    /** A mistake that the verdict did not name, because the value is too far off it. */
    private static Optional<String> near(AnswerKey answer, double si) {
        Optional<KnownMistake> nearest = Optional.empty();
        double least = Math.abs(si - answer.expected());
        for (KnownMistake mistake : answer.mistakes()) {
            double distance = Math.abs(si - mistake.value());
            if (answer.acceptance().accepts(mistake.value(), si)) {
                return Optional.empty();
            }
            if (distance < least && distance <= NEAR_A_MISTAKE * Math.abs(mistake.value())) {
                nearest = Optional.of(mistake);
                least = distance;
            }
        }
        return nearest.map(mistake -> Sentences.nearMistake(mistake.explanation()));
    }

    private static String size(AnswerKey answer, double si) {
        boolean scale = answer.unit().offset() != 0;
        boolean count = answer.acceptance() instanceof Acceptance.Count;
        if (scale || answer.expected() == 0 || si == 0 || si < 0 != answer.expected() < 0) {
            return scale ? Sentences.warmer(si > answer.expected()) : Sentences.side(si > answer.expected());
        }
        double ratio = Math.abs(si / answer.expected());
        boolean large = ratio > 1;
        double times = large ? ratio : 1 / ratio;
        return Sentences.size(large, times, count);
    }

    /** How the unit asked for comes about from volts, amperes and the like. */
    private static Optional<String> madeOf(Unit asked) {
        Object[][] made = {
            {Dimension.RESISTANCE, "volts divided by amperes"},
            {Dimension.CURRENT, "volts divided by ohms, or watts divided by volts"},
            {Dimension.VOLTAGE, "amperes times ohms, or watts divided by amperes"},
            {Dimension.POWER, "volts times amperes"},
            {Dimension.ENERGY, "watts times seconds"},
            {Dimension.TIME, "ohms times farads, or joules divided by watts"},
            {Dimension.TEMPERATURE, "watts times kelvins per watt"},
            {Dimension.TEMPERATURE.over(Dimension.POWER), "kelvins divided by watts"},
        };
        for (Object[] row : made) {
            if (row[0].equals(asked.dimension())) {
                return Optional.of((String) row[1]);
            }
        }
        return Optional.empty();
    }
}
