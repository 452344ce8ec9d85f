package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.UsualAcceptance;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.Unit;
import ampersheet.sheet.Document.UnitBox;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** The rule at the head of a sheet: it speaks of what is asked there, and of nothing else. */
final class HowToAnswer {
    private static final Unit PERCENT = Unit.parse("%");

    private static final String EXAMPLES = "A worked example is there to be read; all others are yours to answer. ";

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
        return (examples && !kinds.isEmpty() ? EXAMPLES : "")
                + of(kinds, preferred, sheet.plan().unitsPrinted(), sheet.plan().decimal());
    }

    /** @param preferred whether a preferred value is asked that must be met exactly */
    static String of(Set<Kind> kinds, boolean preferred, boolean unitsPrinted, DecimalMarker marker) {
        if (kinds.isEmpty()) {
            return "Everything on this sheet is worked: nothing is asked.";
        }
        List<String> sentences = new ArrayList<>();
        List<String> written = new ArrayList<>();
        boolean share = kinds.contains(Kind.SHARE) && !unitsPrinted;
        boolean withUnit = kinds.contains(Kind.QUANTITY) || kinds.contains(Kind.SHARE) && unitsPrinted;
        boolean bare = kinds.contains(Kind.COUNT) || kinds.contains(Kind.RATIO);
        if (withUnit) {
            written.add(
                    unitsPrinted
                            ? "where a unit is printed behind the box, write the number that fits it"
                            : "where a box for the unit stands, write the unit");
        }
        if (share) {
            written.add("a share can be written as 44" + marker.character() + "7\u00a0% or as 0" + marker.character()
                    + "447");
        }
        if (bare) {
            written.add(
                    share
                            ? "every other number stands alone"
                            : withUnit ? "where none stands, write the number alone" : "write the number alone");
        }
        if (!written.isEmpty()) {
            sentences.add(capital(String.join("; ", written)) + ".");
        }
        if (kinds.contains(Kind.CHOICE)) {
            sentences.add("Where options are given, one is right.");
        }
        sentences.add(exactness(kinds, preferred));
        return String.join(" ", sentences).strip();
    }

    private static String exactness(Set<Kind> kinds, boolean preferred) {
        List<String> exact = new ArrayList<>();
        if (preferred) {
            exact.add("preferred values");
        }
        if (kinds.contains(Kind.COUNT)) {
            exact.add("counts");
        }
        boolean measured = kinds.contains(Kind.QUANTITY) || kinds.contains(Kind.SHARE) || kinds.contains(Kind.RATIO);
        String must = exact.isEmpty() ? "" : String.join(" and ", exact) + " must be exact";
        if (!measured) {
            return must.isEmpty() ? "" : capital(must) + ".";
        }
        return "Keep all digits until the end and round only what you write down: " + UsualAcceptance.figures()
                + " are enough unless a question asks for more" + (must.isEmpty() ? "" : "; " + must) + ".";
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
