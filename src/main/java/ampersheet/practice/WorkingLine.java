package ampersheet.practice;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.ProblemKey;
import ampersheet.formula.TradeWords;
import ampersheet.formula.Values;
import ampersheet.practice.LineReader.Spoken;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Reading;
import ampersheet.quantity.TypedText;
import ampersheet.quantity.Unit;
import ampersheet.quantity.UnitFault;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A line of working typed instead of a value: {@code 6.2 V / 15.5 mA}, {@code (Vs - Vf) / If}, {@code R = 6.2 V / 15.5
 * mA = 400 Ω}. It is worked with its units; where several sides stand, they must agree.
 *
 * @param value what it comes to, to be judged as if typed; empty where it comes to nothing
 * @param said what was made of it, or what does not fit
 */
record WorkingLine(String value, String said) {
    /** How near two sides of a line must lie: as a person rounds. */
    private static final double SIDES_AGREE = 0.01;
    /** Of a value that must be exact. */
    private static final int EXACT_FIGURES = 9;

    private static final int SHOWN_FIGURES = 4;
    private static final int LONGEST = 200;

    boolean isFaulty() {
        return value.isEmpty();
    }

    /** Empty if it is a value, or nothing that could be worked. */
    static Optional<WorkingLine> read(String typed, ProblemKey key, AnswerKey answer) {
        if (answer.acceptance() instanceof Acceptance.Choice
                || !(QuantityReader.read(typed, answer.unit(), key.decimal()) instanceof Reading.Unreadable)) {
            return Optional.empty();
        }
        int figures = answer.acceptance() instanceof Acceptance.Within ? answer.figures() + 1 : EXACT_FIGURES;
        return new Worker(key.givens(), answer.unit(), figures, Spoken.of(key)).read(typed);
    }

    /** As a calculator does, with no question in mind; empty if there is nothing to work. */
    static Optional<WorkingLine> read(String typed, Course course) {
        Spoken spoken = new Spoken(course.language(), course.decimal());
        return new Worker(Values.of(Map.of(), Map.of()), Unit.ONE, SHOWN_FIGURES + 2, spoken).read(typed);
    }

    /** @param figures of what it comes to */
    private record Worker(Values known, Unit asked, int figures, Spoken spoken) {
        private LineSentences sentences() {
            return new LineSentences(spoken.language());
        }

        Optional<WorkingLine> read(String typed) {
            String text = TypedText.fold(typed);
            if (text.length() > LONGEST || !LineReader.hasOperator(text)) {
                return Optional.empty();
            }
            List<String> sides = Texts.parts(text, '=');
            if (sides.size() > 1 && LineReader.isName(sides.get(0).trim())) {
                sides = sides.subList(1, sides.size());
            }
            boolean calculated = false;
            boolean bareNumber = false;
            List<Quantity> worked = new ArrayList<>();
            for (String side : sides) {
                calculated |= LineReader.hasOperator(side);
                try {
                    LineReader.Worked read = LineReader.work(side, known, spoken);
                    worked.add(read.quantity());
                    bareNumber |= read.bareNumber();
                } catch (LineReader.Fault fault) {
                    return Optional.of(new WorkingLine("", fault.getMessage()));
                }
            }
            if (!calculated) {
                return Optional.empty();
            }
            Dimension came = worked.get(worked.size() - 1).dimension();
            boolean strange = !came.equals(asked.dimension()) && !came.equals(Dimension.ONE);
            return Optional.of(
                    strange && !asked.symbol().isEmpty() && bareNumber
                            ? new WorkingLine("", sentences().lineNeedsUnits(asked.symbol()))
                            : told(worked));
        }

        private WorkingLine told(List<Quantity> sides) {
            Quantity last = sides.get(sides.size() - 1);
            Optional<Unit> unit = unit(last.dimension());
            if (!Double.isFinite(last.value())) {
                return new WorkingLine("", sentences().lineWithoutValue());
            }
            if (unit.isEmpty()) {
                return new WorkingLine(
                        "", sentences().lineInStrangeUnit(TradeWords.symbol(last.dimension()), asked.symbol()));
            }
            String value = new QuantityWriter(spoken.decimal())
                    .plain(last.value(), unit.get(), figures)
                    .text();
            for (Quantity side : sides.subList(0, sides.size() - 1)) {
                boolean alike = side.dimension().equals(last.dimension())
                        && Math.abs(side.value() - last.value()) <= SIDES_AGREE * Math.abs(side.value());
                if (!alike) {
                    return new WorkingLine("", sentences().sidesDiffer(shown(side), value));
                }
            }
            return new WorkingLine(value, sentences().lineGives(shown(last)));
        }

        private String shown(Quantity quantity) {
            Unit unit = unit(quantity.dimension()).orElse(Unit.ONE);
            String number = new QuantityWriter(spoken.decimal())
                    .plain(quantity.value(), unit, SHOWN_FIGURES)
                    .text();
            return unit.symbol().isEmpty() && !quantity.dimension().equals(Dimension.ONE)
                    ? number + " " + TradeWords.symbol(quantity.dimension())
                    : number;
        }

        private Optional<Unit> unit(Dimension dimension) {
            if (dimension.equals(asked.dimension())) {
                return Optional.of(asked);
            }
            if (dimension.equals(Dimension.ONE)) {
                return Optional.of(Unit.ONE);
            }
            try {
                return Optional.of(Unit.parse(TradeWords.symbol(dimension)));
            } catch (UnitFault noName) {
                return Optional.empty();
            }
        }
    }
}
