package ampersheet.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.language.Saying;
import ampersheet.source.Languages;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class NotLaidOutTest {
    @Test
    void aPartIsCalledAsTheFigureCallsIt() {
        PlacedPart led = new PlacedPart(
                PartKind.LED, "D", Map.of(), Map.of(PartValue.VOLTS, 1.1, PartValue.AMPS, 0.01), Map.of());
        NotLaidOut why = assertThrows(NotLaidOut.class, () -> new Drawer(Optional.empty()).fit(led, List.of()));
        assertEquals("LED D1 would be an LED of 1.1\u00a0V", why.told(Languages.ENGLISH, part -> "LED " + part + "1"));
    }

    @Test
    void whatFillsASentenceIsSaidInItsLanguageToo() {
        NotLaidOut why = new NotLaidOut(
                NotLaidOut.Reason.OUTSIDE_LIMITS,
                language -> Saying.of(
                        "problem.no-card.beyond-limit",
                        "limited",
                        language.say("common.the", "what", "surge"),
                        "value",
                        language.say("problem.limit.no-number"),
                        "usual",
                        language.say("problem.limit.at-most", "most", "2 A")));
        assertEquals("the surge is no finite number; usual is at most 2 A", why.told(Languages.ENGLISH, part -> part));
    }
}
