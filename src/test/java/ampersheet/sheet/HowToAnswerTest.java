package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.Unit;
import ampersheet.sheet.Document.UnitBox;
import ampersheet.sheet.HowToAnswer.Kind;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class HowToAnswerTest {
  private static Kind kind(String unit, Acceptance acceptance) {
    return HowToAnswer.kind(new AnswerKey("q1", "x", 1, Unit.parse(unit), 3, false, acceptance, List.of()));
  }

  @Test
  void aUnitIsAskedOnlyOfWhatHasOne() {
    Acceptance within = new Acceptance.Within(0.02, 0);
    assertEquals(UnitBox.ASKED, kind("mA", within).unitBox());
    assertEquals(UnitBox.ASKED, kind("ohm", new Acceptance.Preferred(PreferredSeries.E24)).unitBox());
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
    assertEquals("Write each quantity with its unit. Three significant figures are enough unless a question asks for more.",
        HowToAnswer.of(EnumSet.of(Kind.QUANTITY), false, false));
    assertEquals("Write counts and places as bare numbers. Counts must be exact.",
        HowToAnswer.of(EnumSet.of(Kind.COUNT), false, false));
    assertEquals("Write each quantity with its unit, a share in percent or as a fraction of one, counts and places and ratios "
        + "as bare numbers. Where options are given, one is right. Three significant figures are enough unless a question "
        + "asks for more; preferred values and counts must be exact.", HowToAnswer.of(EnumSet.allOf(Kind.class), true, false));
    assertEquals("Write each number so that it fits the unit printed behind it. Three significant figures are enough unless "
        + "a question asks for more.", HowToAnswer.of(EnumSet.of(Kind.QUANTITY, Kind.SHARE), false, true));
    assertEquals("Where options are given, one is right.", HowToAnswer.of(EnumSet.of(Kind.CHOICE), false, false));
  }
}
