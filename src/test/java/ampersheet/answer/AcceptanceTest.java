package ampersheet.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.Unit;
import java.util.List;
import org.junit.jupiter.api.Test;

class AcceptanceTest {
    @Test
    void computedValuesAreApartWhenTheirBandsDoNotTouch() {
        Acceptance within = new Acceptance.Within(0.02, 0);
        assertFalse(within.apart(100, 100));
        assertFalse(within.apart(100, 104));
        assertTrue(within.apart(100, 104.2));
        assertTrue(within.apart(100, -100));
        assertTrue(new Acceptance.Within(0, 1).apart(298.15, 300.2));
        assertFalse(new Acceptance.Within(0, 1).apart(298.15, 300.1));
    }

    @Test
    void noAnswerIsAcceptedForTwoValuesThatAreApart() {
        for (Acceptance acceptance : List.of(
                new Acceptance.Within(0.02, 0.1),
                new Acceptance.Count(),
                new Acceptance.Preferred(PreferredSeries.E24))) {
            for (double a = 0.5; a < 30; a += 1.7) {
                for (double b = 0.5; b < 30; b += 1.3) {
                    for (double x = 0.5; acceptance.apart(a, b) && x < 30; x += 0.05) {
                        if (acceptance.accepts(a, x) && acceptance.accepts(b, x)) {
                            fail(acceptance + ": " + a + ", " + b + ", " + x);
                        }
                    }
                }
            }
        }
    }

    @Test
    void neighboursInASeriesAreApart() {
        Acceptance preferred = new Acceptance.Preferred(PreferredSeries.E192);
        assertTrue(preferred.apart(9.09, 9.20));
        assertFalse(preferred.apart(470, 470.0000000001));
    }

    @Test
    void countsAreApartWhenTheyDiffer() {
        Acceptance count = new Acceptance.Count();
        assertTrue(count.apart(255, 256));
        assertTrue(count.apart(0, 1));
        assertFalse(count.apart(7, 7));
        assertTrue(count.apart(12, 12.5));
    }

    @Test
    void optionsAreApartWhenTheyDiffer() {
        Acceptance choice =
                new Acceptance.Choice(List.of(new Acceptance.Option("yes", ""), new Acceptance.Option("no", "")));
        assertTrue(choice.apart(0, 1));
        assertFalse(choice.apart(1, 1));
    }

    @Test
    void onlyAChoiceHasARightOption() {
        Acceptance.Choice choice =
                new Acceptance.Choice(List.of(new Acceptance.Option("yes", ""), new Acceptance.Option("no", "")));
        AnswerKey key = new AnswerKey("q1", "x", 1, Unit.ONE, 0, false, choice, List.of());
        assertEquals(1, key.rightOption());
        assertEquals("no", choice.option(key.expected()).text());
        assertEquals("q2", key.named("q2").question());
        AnswerKey count = new AnswerKey("q1", "x", 1, Unit.ONE, 3, false, new Acceptance.Count(), List.of());
        assertThrows(IllegalStateException.class, count::rightOption);
    }
}
