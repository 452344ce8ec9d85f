package ampersheet.answer;

import ampersheet.quantity.Dimension;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Reading;
import ampersheet.quantity.SignificantFigures;
import ampersheet.quantity.Unit;
import java.util.Optional;

/**
 * The rungs for a quantity that could be read, tried in the order of {@link Rung}; the first that fits is the verdict.
 *
 * <p>Some choices that the order alone does not settle:
 *
 * <ul>
 *   <li>A value in the inner half of a modelled mistake's band is told as that mistake even where it is also the key in
 *       fewer figures, a power of ten of it, its negative or its reciprocal: the mistake comes with its own
 *       explanation, and telling a wrong method "right, but too coarse" would do harm. In the outer half those rungs
 *       come first.
 *   <li>Slips of sign, power of ten and rounding are looked for in the number as written. That matters for °C only,
 *       where the kelvin value has none of them.
 *   <li>A question in K asks for a difference, one in °C for a temperature. An answer of 25 °C to the former is read as
 *       25 K, an answer of 298.15 K to the latter as 25 °C.
 *   <li>A share asked for in % is right as a fraction, too: a bare number is taken as what it is right for, else as a
 *       modelled mistake, else as whichever lies nearer to the key. A number with the % sign is what it says.
 *   <li>A prefix without a unit belongs to the unit asked for, as the letter of a code does.
 *   <li>A bare number without a printed unit is told only if the number is right, in the unit asked or in the SI unit;
 *       a wrong one goes on down the ladder in the unit asked, to hear about the greater fault.
 * </ul>
 */
final class Ladder {
    private final AnswerKey key;
    private final Reading.Value typed;
    private final EarlierAnswers earlier;
    private final Sentences sentences;
    private final QuantityWriter writer;
    private final Acceptance acceptance;
    private final double expected;
    private final double si;

    Ladder(AnswerKey key, Reading.Value typed, EarlierAnswers earlier) {
        this.sentences = earlier.problem().sentences();
        this.writer = earlier.problem().writer();
        this.key = key;
        this.typed = typed;
        this.earlier = earlier;
        this.acceptance = key.acceptance();
        this.expected = key.expected();
        this.si = isDifferenceInCelsius() ? typed.number() : isBareShare() ? share() : typed.si(key.unit());
    }

    private boolean isBareShare() {
        return key.isShare() && typed.unit().isEmpty();
    }

    private double share() {
        double percent = typed.si(key.unit());
        double fraction = typed.si(Unit.ONE);
        if (acceptance.accepts(expected, percent)) {
            return percent;
        }
        if (acceptance.accepts(expected, fraction)) {
            return fraction;
        }
        if (mistake(percent, Acceptance.HALF).isPresent()) {
            return percent;
        }
        return mistake(fraction, Acceptance.HALF).isPresent() || Math.abs(fraction) < key.leastPercent()
                ? fraction
                : percent;
    }

    Verdict judge() {
        if (!unitTyped().dimension().equals(key.unit().dimension())) {
            return told(Rung.WRONG_DIMENSION, sentences.wrongDimension(unitTyped(), key.unit()));
        }
        Verdict verdict = judgeValue();
        earlier.add(
                key,
                isRightButForItsUnit(verdict.rung()) ? expected : si,
                verdict.rung() == Rung.CORRECT || isRightButForItsUnit(verdict.rung()));
        return verdict;
    }

    private static boolean isRightButForItsUnit(Rung rung) {
        return rung == Rung.UNIT_MISSING || rung == Rung.OTHER_SCALE;
    }

    private Verdict judgeValue() {
        return right().or(this::slip).or(this::followed).orElseGet(this::unexplained);
    }

    /** Right, or right but for its unit. */
    private Optional<Verdict> right() {
        if (isUnitMissing()) {
            String number =
                    writer.plain(typed.si(Unit.ONE), Unit.ONE, figuresTyped()).text();
            return Optional.of(Judge.told(key, typed.asTyped(), Rung.UNIT_MISSING, number, sentences.unitMissing()));
        }
        if (acceptance.accepts(expected, si)) {
            return Optional.of(told(
                    Rung.CORRECT, sentences.right(adviceOnFigures(), isDifferenceInCelsius(), isKelvinForCelsius())));
        }
        if (isKelvinForCelsius() && acceptance.accepts(expected, key.unit().toSi(si))) {
            return Optional.of(told(
                    Rung.OTHER_SCALE,
                    sentences.otherScale(
                            understood(),
                            writer.plain(si, key.unit(), figuresTyped() + 1).text())));
        }
        return Optional.empty();
    }

    /** A modelled mistake, or the right number written wrongly. */
    private Optional<Verdict> slip() {
        Optional<KnownMistake> mistake = mistake(si, Acceptance.HALF);
        if (mistake.isPresent()) {
            return Optional.of(told(mistake.get()));
        }
        if (isTooCoarse()) {
            return Optional.of(told(Rung.TOO_COARSE, sentences.tooCoarse(key.figures())));
        }
        int power = powerOfTen();
        if (power != 0) {
            return Optional.of(told(
                    Rung.POWER_OF_TEN,
                    sentences.powerOfTen(
                            power,
                            typed.unit().isEmpty() && !typed.hasPrefix()
                                    ? key.unit().symbol()
                                    : "")));
        }
        if (matches(-number(si))) {
            return Optional.of(told(Rung.SIGN, sentences.sign()));
        }
        if (isReciprocal()) {
            return Optional.of(told(Rung.RECIPROCAL, sentences.reciprocal()));
        }
        return mistake(si, 1).map(this::told);
    }

    private Optional<Verdict> followed() {
        EarlierAnswers.Followed followed = earlier.followedBy(key, si);
        return followed.questions().isEmpty()
                ? Optional.empty()
                : Optional.of(new Verdict(
                        key.question(),
                        typed.asTyped(),
                        Rung.CONSISTENT_WITH_EARLIER,
                        understood(),
                        followed.wrong()
                                ? sentences.followsFromWrong(followed.questions())
                                : sentences.followsFromRounded(followed.questions()),
                        Optional.empty(),
                        followed.wrongOnes()));
    }

    private Verdict unexplained() {
        Optional<String> neighbour = neighbour();
        if (neighbour.isPresent()) {
            return told(Rung.UNEXPLAINED, neighbour.get());
        }
        Optional<UsualSlip> slip = usualSlip();
        return slip.isPresent() ? told(slip.get().rung(), slip.get().says()) : told(Rung.UNEXPLAINED, unrecognised());
    }

    /** The nearest of the first rung that has one. */
    private Optional<UsualSlip> usualSlip() {
        Optional<UsualSlip> found = Optional.empty();
        for (UsualSlip slip : earlier.usualSlips(key)) {
            boolean better = found.isEmpty()
                    || slip.rung() == found.get().rung()
                            && Math.abs(si - slip.value())
                                    < Math.abs(si - found.get().value());
            if (slip.takes(si) && better) {
                found = Optional.of(slip);
            }
        }
        return found;
    }

    private Unit unitTyped() {
        return typed.unit().orElse(key.unit());
    }

    private boolean isDifferenceInCelsius() {
        return typed.unit().isPresent()
                && typed.unit().get().offset() != 0
                && key.unit().dimension().equals(Dimension.TEMPERATURE)
                && key.unit().offset() == 0;
    }

    private boolean isKelvinForCelsius() {
        return key.unit().offset() != 0
                && typed.unit().isPresent()
                && typed.unit().get().offset() == 0;
    }

    private boolean isUnitMissing() {
        return key.lacksUnit(typed)
                && (acceptance.accepts(expected, si) || acceptance.accepts(expected, typed.si(Unit.ONE)));
    }

    /** In the unit asked where its zero is not that of the SI unit, else in the SI unit. */
    private double number(double value) {
        return key.unit().offset() == 0 ? value : key.unit().fromSi(value);
    }

    /** Whether this number is taken for the key's. */
    private boolean matches(double number) {
        return matches(number, acceptance.band(expected));
    }

    private boolean matches(double number, double band) {
        double wanted = number(expected);
        return Math.abs(wanted) > acceptance.band(expected)
                && Math.abs(number - wanted) <= band + Acceptance.LAST_BITS * Math.abs(wanted);
    }

    /** The mistake nearest to the answer, if the answer lies within this part of its band. */
    private Optional<KnownMistake> mistake(double si, double part) {
        Optional<KnownMistake> nearest = Optional.empty();
        double least = Double.POSITIVE_INFINITY;
        for (KnownMistake mistake : key.mistakes()) {
            double distance = Math.abs(si - mistake.value());
            boolean within = distance
                    <= part * acceptance.band(mistake.value()) + Acceptance.LAST_BITS * Math.abs(mistake.value());
            if (within && distance < least) {
                nearest = Optional.of(mistake);
                least = distance;
            }
        }
        return nearest;
    }

    private boolean isTooCoarse() {
        if (!(acceptance instanceof Acceptance.Within)) {
            return false;
        }
        double wanted = key.unit().fromSi(expected);
        double given = key.unit().fromSi(si);
        if (Math.abs(given - wanted) > Acceptance.COARSEST * Math.abs(wanted)) {
            return false;
        }
        for (int figures = 1; figures < key.figures(); figures++) {
            double coarse = SignificantFigures.round(wanted, figures);
            if (Math.abs(given - coarse) <= Acceptance.SAME * Math.abs(coarse)) {
                return true;
            }
        }
        return false;
    }

    /** The power of ten by which the answer is too large (or too small, negative), or 0. */
    private int powerOfTen() {
        double given = number(si);
        for (int power : DecimalSlips.powers()) {
            double factor = DecimalSlips.factor(power);
            if (matches(given / factor)) {
                return power;
            }
            if (matches(given * factor)) {
                return -power;
            }
        }
        return 0;
    }

    /** In SI units or in the unit asked: whoever divides upside down may do it in either. */
    private boolean isReciprocal() {
        double given = key.unit().fromSi(si);
        boolean quantity = acceptance instanceof Acceptance.Within && key.unit().offset() == 0;
        double band = acceptance.reciprocalBand(expected);
        return quantity
                && si != 0
                && (matches(1 / si, band) || matches(key.unit().toSi(1 / given), band));
    }

    /** A step off in a series or a count: likelier than any value it may happen to be the same as. */
    private Optional<String> neighbour() {
        if (acceptance instanceof Acceptance.Preferred preferred) {
            String series = preferred.series().name();
            if (preferred.accepts(preferred.below(expected), si)) {
                return Optional.of(sentences.neighbourBelow(series));
            }
            return preferred.accepts(preferred.above(expected), si)
                    ? Optional.of(sentences.neighbourAbove(series))
                    : Optional.empty();
        }
        boolean next = acceptance instanceof Acceptance.Count
                && (acceptance.accepts(expected - 1, si) || acceptance.accepts(expected + 1, si));
        return next ? Optional.of(sentences.offByOne()) : Optional.empty();
    }

    private String unrecognised() {
        if (acceptance instanceof Acceptance.Preferred preferred) {
            String series = preferred.series().name();
            return preferred.series().contains(si)
                    ? sentences.otherMember(series)
                    : sentences.notInSeries(understood(), series);
        }
        if (acceptance instanceof Acceptance.Count) {
            return typed.wholeNumber()
                    ? sentences.unrecognisedCount(earlier.firstInput(key))
                    : sentences.notWhole(understood());
        }
        return sentences.unrecognised(earlier.firstInput(key));
    }

    private boolean adviceOnFigures() {
        return acceptance instanceof Acceptance.Within && typed.significantFigures() > key.figures() + 1;
    }

    private int figuresTyped() {
        return Math.max(typed.significantFigures(), 1);
    }

    private String understood() {
        boolean asAsked = isDifferenceInCelsius() || typed.isAngleFor(key.unit()) || typed.isTurnsFor(key.unit());
        Unit unit = asAsked ? key.unit() : unitTyped();
        return writer.plain(si, unit, figuresTyped()).text();
    }

    private Verdict told(Rung rung, String message) {
        return Judge.told(key, typed.asTyped(), rung, understood(), message);
    }

    private Verdict told(KnownMistake mistake) {
        return new Verdict(
                key.question(),
                typed.asTyped(),
                Rung.KNOWN_MISTAKE,
                understood(),
                mistake.explanation(),
                Optional.of(mistake.id()));
    }
}
