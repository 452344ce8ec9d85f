package ampersheet.answer;

import ampersheet.formula.Evaluation;
import ampersheet.formula.NoValue;
import ampersheet.formula.Values;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.Reading;
import ampersheet.quantity.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Judges the blanks of one design together: each is read by itself; once all can be read, the steps are worked with the
 * learner's own values, and every criterion is looked at.
 *
 * <p>A bare number where the unit is asked for is taken in the unit asked, or in the SI unit if only that may be
 * chosen; it is told only if the design is right, so that a greater fault is heard first.
 */
final class DesignJudge {
    /** Of a value that is told. */
    private static final int FIGURES = 4;

    private final ProblemKey key;
    private final DesignKey design;
    private final EarlierAnswers earlier;
    private final List<Blank> blanks = new ArrayList<>();

    /**
     * One blank.
     *
     * @param fault why there is no value to go on with; empty if there is one
     * @param si the member of the series, or the whole number
     */
    private record Blank(
            AnswerKey key, String typed, Optional<Verdict> fault, double si, String understood, boolean unitMissing) {}

    DesignJudge(ProblemKey key, DesignKey design, Map<String, String> typed, EarlierAnswers earlier) {
        this.key = key;
        this.design = design;
        this.earlier = earlier;
        for (AnswerKey answer : key.answers()) {
            if (design.steps().contains(answer.step())) {
                blanks.add(read(answer, (Acceptance.Designed) answer.acceptance(), Judge.text(answer, typed)));
            }
        }
    }

    /** By question. */
    Map<String, Verdict> verdicts() {
        Map<String, Verdict> verdicts = new LinkedHashMap<>();
        List<String> missing = new ArrayList<>();
        for (Blank blank : blanks) {
            if (blank.fault().isPresent()) {
                missing.add(blank.key().question());
            }
        }
        if (!missing.isEmpty()) {
            for (Blank blank : blanks) {
                verdicts.put(
                        blank.key().question(),
                        blank.fault()
                                .orElseGet(() -> told(
                                        blank, Rung.INCOMPLETE, key.sentences().judgedTogether(missing))));
            }
            return verdicts;
        }
        Optional<Values> worked = worked();
        List<DesignKey.Criterion> missed = worked.map(this::missed).orElse(List.of());
        boolean right = worked.isPresent() && missed.isEmpty();
        for (Blank blank : blanks) {
            earlier.add(blank.key(), blank.si(), right);
            if (right) {
                earlier.choose(blank.key(), blank.si());
            }
            verdicts.put(
                    blank.key().question(),
                    worked.isEmpty()
                            ? told(blank, Rung.UNEXPLAINED, key.sentences().cannotBeWorked())
                            : right ? right(blank, worked.get()) : missed(blank, missed, worked.get()));
        }
        return verdicts;
    }

    private Blank read(AnswerKey answer, Acceptance.Designed acceptance, String typed) {
        if (Judge.isBlank(typed)) {
            return without(answer, typed, Judge.blank(key, answer, typed));
        }
        Reading reading = QuantityReader.read(typed, answer.unit(), key.decimal());
        if (!(reading instanceof Reading.Value value)) {
            return without(answer, typed, Judge.unread(key, answer, reading));
        }
        Unit unit = value.unit().orElse(answer.unit());
        int figures = Math.max(value.significantFigures(), 1);
        if (!unit.dimension().equals(answer.unit().dimension())) {
            String understood =
                    key.writer().plain(value.si(answer.unit()), unit, figures).text();
            return without(
                    answer,
                    typed,
                    Judge.told(
                            answer,
                            typed,
                            Rung.WRONG_DIMENSION,
                            understood,
                            key.sentences().wrongDimension(unit, answer.unit())));
        }
        boolean bare = answer.lacksUnit(value);
        double si = value.si(answer.unit());
        if (bare && !acceptance.allows(si) && acceptance.allows(value.si(Unit.ONE))) {
            si = value.si(Unit.ONE);
        }
        String understood = key.writer().plain(si, unit, figures).text();
        if (!acceptance.allows(si)) {
            return without(
                    answer,
                    typed,
                    Judge.told(
                            answer,
                            typed,
                            Rung.UNEXPLAINED,
                            understood,
                            notAllowed(answer, acceptance, si, understood)));
        }
        return new Blank(answer, typed, Optional.empty(), acceptance.member(si), understood, bare);
    }

    private String notAllowed(AnswerKey answer, Acceptance.Designed acceptance, double si, String understood) {
        if (!acceptance.isMember(si)) {
            return acceptance.series().isPresent()
                    ? key.sentences()
                            .notInSeries(understood, acceptance.series().get().name())
                    : key.sentences().notWhole(understood);
        }
        return key.sentences()
                .outOfRange(
                        understood,
                        key.writer()
                                .plain(acceptance.from(), answer.unit(), FIGURES)
                                .text(),
                        key.writer()
                                .plain(acceptance.to(), answer.unit(), FIGURES)
                                .text());
    }

    private static Blank without(AnswerKey answer, String typed, Verdict fault) {
        return new Blank(answer, typed, Optional.of(fault), 0, "", false);
    }

    /** All steps, with the learner's values in the place of the key's; empty if they lead nowhere. */
    private Optional<Values> worked() {
        Map<String, Quantity> own = new LinkedHashMap<>();
        for (Blank blank : blanks) {
            own.put(
                    blank.key().step(),
                    new Quantity(blank.si(), blank.key().unit().dimension()));
        }
        try {
            return Optional.of(key.working().work(key.givens(), own));
        } catch (NoValue noValue) {
            return Optional.empty();
        }
    }

    private List<DesignKey.Criterion> missed(Values worked) {
        List<DesignKey.Criterion> missed = new ArrayList<>();
        for (DesignKey.Criterion criterion : design.criteria()) {
            if (!Evaluation.holds(criterion.where(), worked)) {
                missed.add(criterion);
            }
        }
        return missed;
    }

    private Verdict right(Blank blank, Values worked) {
        if (blank.unitMissing()) {
            return told(blank, Rung.UNIT_MISSING, key.sentences().unitMissing());
        }
        List<String> results = new ArrayList<>();
        for (DesignKey.Criterion criterion : design.criteria()) {
            String result = result(criterion, worked);
            if (!results.contains(result)) {
                results.add(result);
            }
        }
        return told(blank, Rung.CORRECT, key.sentences().designRight(results));
    }

    private Verdict missed(Blank blank, List<DesignKey.Criterion> missed, Values worked) {
        StringBuilder message = new StringBuilder();
        for (DesignKey.Criterion criterion : missed) {
            message.append(message.length() == 0 ? "" : " ")
                    .append(key.sentences()
                            .criterionMissed(criterion.says(), result(criterion, worked), criterion.wanted()));
        }
        return new Verdict(
                blank.key().question(),
                blank.typed(),
                Rung.CRITERION_MISSED,
                blank.understood(),
                message.toString(),
                Optional.of(missed.get(0).id()));
    }

    private String result(DesignKey.Criterion criterion, Values worked) {
        double value = worked.quantity(criterion.shown()).value();
        return criterion.symbol() + " = "
                + key.writer().plain(value, criterion.unit(), FIGURES).text();
    }

    private static Verdict told(Blank blank, Rung rung, String message) {
        return Judge.told(blank.key(), blank.typed(), rung, blank.understood(), message);
    }
}
