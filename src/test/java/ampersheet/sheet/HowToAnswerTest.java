package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.Unit;
import ampersheet.sheet.Document.UnitBox;
import ampersheet.sheet.HowToAnswer.Kind;
import ampersheet.source.Languages;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class HowToAnswerTest {
    private static final DecimalMarker POINT = DecimalMarker.POINT;

    private static Kind kind(String unit, Acceptance acceptance) {
        return HowToAnswer.kind(new AnswerKey("q1", "x", 1, Unit.parse(unit), 3, false, acceptance, List.of()));
    }

    @Test
    void aUnitIsAskedOnlyOfWhatHasOne() {
        Acceptance within = new Acceptance.Within(0.02, 0);
        assertEquals(UnitBox.ASKED, kind("mA", within).unitBox());
        assertEquals(
                UnitBox.ASKED,
                kind("ohm", new Acceptance.Preferred(PreferredSeries.E24)).unitBox());
        assertEquals(UnitBox.ASKED, kind("B", new Acceptance.Count()).unitBox(), "bytes are a unit, though counted");
        assertEquals(UnitBox.SHARE, kind("%", within).unitBox());
        assertEquals(Kind.RATIO, kind("1", within));
        assertEquals(Kind.COUNT, kind("1", new Acceptance.Count()));
        assertEquals(Kind.COUNT, kind("1", new Acceptance.Designed(Optional.empty(), 1, 9)));
        assertEquals(UnitBox.NONE, Kind.RATIO.unitBox());
        assertEquals(UnitBox.NONE, Kind.COUNT.unitBox());
    }

    @Test
    void theRuleSpeaksOfWhatIsAskedAndOfNothingElse() {
        String figures =
                "Keep all digits until the end and round only what you write down: three significant figures are "
                        + "enough "
                        + "unless a question asks for more";
        assertEquals(
                "Where a box for the unit stands, write the unit. " + figures + ".",
                HowToAnswer.of(EnumSet.of(Kind.QUANTITY), false, false, POINT, Languages.ENGLISH));
        assertEquals(
                "Where a box for the unit stands, write the unit; where none stands, write the number alone. " + figures
                        + "; counts must be exact.",
                HowToAnswer.of(EnumSet.of(Kind.QUANTITY, Kind.COUNT), false, false, POINT, Languages.ENGLISH));
        assertEquals(
                "Write the number alone. Counts must be exact.",
                HowToAnswer.of(EnumSet.of(Kind.COUNT), false, false, POINT, Languages.ENGLISH));
        assertEquals(
                "Where a box for the unit stands, write the unit; a share can be written as 44,7\u00a0% or as "
                        + "0,447; every "
                        + "other number stands alone. Where options are given, one is right. " + figures
                        + "; preferred values and counts must be exact.",
                HowToAnswer.of(EnumSet.allOf(Kind.class), true, false, DecimalMarker.COMMA, Languages.ENGLISH));
        assertEquals(
                "Where a unit is printed behind the box, write the number that fits it. " + figures + ".",
                HowToAnswer.of(EnumSet.of(Kind.QUANTITY, Kind.SHARE), false, true, POINT, Languages.ENGLISH));
        assertEquals(
                "Where options are given, one is right.",
                HowToAnswer.of(EnumSet.of(Kind.CHOICE), false, false, POINT, Languages.ENGLISH));
    }
}
