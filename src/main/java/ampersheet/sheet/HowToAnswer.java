package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.UsualAcceptance;
import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.Unit;
import ampersheet.sheet.Document.UnitBox;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The rule at the head of a sheet: it speaks of what is asked there, and of nothing else. */
final class HowToAnswer {
    private static final Unit PERCENT = Unit.parse("%");

    private HowToAnswer() {}

    /** What an answer is, as far as it matters for writing it down. */
    enum Kind {
        /** A number with a unit. */
        QUANTITY(UnitBox.ASKED),
        SHARE(UnitBox.SHARE),
        /** A measured number without a unit: a ratio. */
        RATIO(UnitBox.NONE),
        /** A whole number: how many, or in which place. */
        COUNT(UnitBox.NONE),
        CHOICE(UnitBox.NONE);

        private final UnitBox unitBox;

        Kind(UnitBox unitBox) {
            this.unitBox = unitBox;
        }

        UnitBox unitBox() {
            return unitBox;
        }
    }

    static Kind kind(AnswerKey key) {
        if (key.acceptance() instanceof Acceptance.Choice) {
            return Kind.CHOICE;
        } else if (key.unit().equals(PERCENT)) {
            return Kind.SHARE;
        } else if (!key.unit().symbol().isEmpty()) {
            return Kind.QUANTITY;
        }
        boolean whole = key.acceptance() instanceof Acceptance.Count
                || key.acceptance() instanceof Acceptance.Designed designed
                        && designed.series().isEmpty();
        return whole ? Kind.COUNT : Kind.RATIO;
    }

    /** What is written behind the number; nothing where the unit is printed. */
    static UnitBox unitBox(AnswerKey key) {
        return key.unitPrinted() ? UnitBox.NONE : kind(key).unitBox();
    }

    static String on(Sheet sheet) {
        Set<Kind> kinds = EnumSet.noneOf(Kind.class);
        boolean preferred = false;
        for (AnswerKey place : sheet.places()) {
            kinds.add(kind(place));
            preferred = preferred
                    || place.acceptance() instanceof Acceptance.Preferred
                    || place.acceptance() instanceof Acceptance.Designed designed
                            && designed.series().isPresent();
        }
        boolean examples = sheet.problems().stream().anyMatch(problem -> problem.support() instanceof Support.Full);
        Plan plan = sheet.plan();
        return (examples && !kinds.isEmpty() ? plan.language().say("sheet.how.examples") + " " : "")
                + of(kinds, preferred, plan.unitsPrinted(), plan.decimal(), plan.language());
    }

    /** @param preferred whether a preferred value is asked that must be met exactly */
    static String of(
            Set<Kind> kinds, boolean preferred, boolean unitsPrinted, DecimalMarker marker, Language language) {
        if (kinds.isEmpty()) {
            return language.say("sheet.how.nothing-asked");
        }
        List<String> sentences = new ArrayList<>();
        if (unitsPrinted) {
            besidePrintedUnits(kinds, language).ifPresent(sentences::add);
        } else {
            withUnits(kinds, marker, language).ifPresent(sentences::add);
        }
        if (kinds.contains(Kind.CHOICE)) {
            sentences.add(language.say("sheet.how.options"));
        }
        exactness(kinds, preferred, language).ifPresent(sentences::add);
        return String.join(" ", sentences);
    }

    private static boolean asksBareNumbers(Set<Kind> kinds) {
        return kinds.contains(Kind.COUNT) || kinds.contains(Kind.RATIO);
    }

    private static Optional<String> besidePrintedUnits(Set<Kind> kinds, Language language) {
        boolean bare = asksBareNumbers(kinds);
        if (kinds.contains(Kind.QUANTITY) || kinds.contains(Kind.SHARE)) {
            return Optional.of(
                    bare ? language.say("sheet.how.unit-printed-and-number") : language.say("sheet.how.unit-printed"));
        }
        return bare ? Optional.of(language.say("sheet.how.number")) : Optional.empty();
    }

    private static Optional<String> withUnits(Set<Kind> kinds, DecimalMarker marker, Language language) {
        boolean bare = asksBareNumbers(kinds);
        boolean units = kinds.contains(Kind.QUANTITY);
        if (kinds.contains(Kind.SHARE)) {
            String percent = "44" + marker.character() + "7\u00a0%";
            String fraction = "0" + marker.character() + "447";
            if (units) {
                return Optional.of(
                        bare
                                ? language.say(
                                        "sheet.how.unit-box-share-and-number", "percent", percent, "fraction", fraction)
                                : language.say(
                                        "sheet.how.unit-box-and-share", "percent", percent, "fraction", fraction));
            }
            return Optional.of(
                    bare
                            ? language.say("sheet.how.share-and-number", "percent", percent, "fraction", fraction)
                            : language.say("sheet.how.share", "percent", percent, "fraction", fraction));
        }
        if (units) {
            return Optional.of(
                    bare ? language.say("sheet.how.unit-box-and-number") : language.say("sheet.how.unit-box"));
        }
        return bare ? Optional.of(language.say("sheet.how.number")) : Optional.empty();
    }

    private static Optional<String> exactness(Set<Kind> kinds, boolean preferred, Language language) {
        boolean counts = kinds.contains(Kind.COUNT);
        if (kinds.contains(Kind.QUANTITY) || kinds.contains(Kind.SHARE) || kinds.contains(Kind.RATIO)) {
            String figures = language.number(UsualAcceptance.FIGURES);
            if (preferred) {
                return Optional.of(
                        counts
                                ? language.say("sheet.how.digits-preferred-and-counts", "figures", figures)
                                : language.say("sheet.how.digits-preferred", "figures", figures));
            }
            return Optional.of(
                    counts
                            ? language.say("sheet.how.digits-counts", "figures", figures)
                            : language.say("sheet.how.digits", "figures", figures));
        }
        if (preferred) {
            return Optional.of(
                    counts ? language.say("sheet.how.preferred-and-counts") : language.say("sheet.how.preferred"));
        }
        return counts ? Optional.of(language.say("sheet.how.counts")) : Optional.empty();
    }
}
