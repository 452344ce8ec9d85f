package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.Place;
import ampersheet.language.Language;
import ampersheet.language.Saying;
import ampersheet.source.Languages;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the table of answers that were set aside says is understood when it comes back, in whatever language. */
class SetAsideTest {
    private static final TypedAnswer ANSWER =
            new TypedAnswer("A7K3M-007-R", "q2a", "4k7", Place.inFile("a.csv"), false);

    @Test
    void thatAnotherAnswerCountsIsReadAgainInEveryLanguage() {
        List<SetAside> because = List.of(
                SetAside.worse(ANSWER),
                SetAside.replaced(ANSWER, "b.csv", 12),
                SetAside.contradicted(ANSWER, List.of("b.csv", "c.csv")),
                SetAside.contradicted(ANSWER, List.of()),
                SetAside.ofMany(ANSWER, 41),
                SetAside.dismissed(ANSWER),
                SetAside.late(ANSWER));
        List<Saying> itself = List.of(
                SetAside.byHand(ANSWER).why(),
                Saying.of("report.aside.no-place"),
                Saying.of("report.aside.unknown-sheet"),
                Saying.of("report.aside.two-seats"),
                Saying.of("report.aside.unknown-name"),
                Saying.of("report.aside.not-in-class"),
                Saying.of("report.aside.two-names"));
        for (String code : Languages.codes()) {
            Language language = Languages.of(code).orElseThrow();
            because.forEach(one ->
                    assertTrue(SetAside.anotherCounts(language.say(one.why())), code + ": " + language.say(one.why())));
            itself.forEach(
                    why -> assertFalse(SetAside.anotherCounts(language.say(why)), code + ": " + language.say(why)));
        }
    }

    @Test
    void aCauseThatATableKeepsIsCalledAsReportsCallIt() {
        assertEquals("unit missing", Slip.label("slip: unit missing", Languages.ENGLISH));
        assertEquals("no forward voltage", Slip.label("no-forward-voltage", Languages.ENGLISH));
        // Of another version of the program.
        assertEquals("something else", Slip.label("slip: something else", Languages.ENGLISH));
    }
}
