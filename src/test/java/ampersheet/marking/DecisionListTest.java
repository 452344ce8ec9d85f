package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class DecisionListTest {
    private static final String DECIDE =
            "seat,name,sheet,question,answer,file,line,why,may_mean,decision,value,reason\n"
                    + "7,Ada,A7K3M-007-R,q2a,\"'=4,700 Ω\",ada.csv,2,It may be either,4.7 Ω or 4700 Ω,,,\n"
                    + ",,,,,who.csv,,Nobody is named,counts or does not count,,,\n"
                    + "8,Bo,A7K3M-008-T,q2a,x,bo.csv,2,It may be either,4.7 Ω or 4700 Ω,,,\n";

    @Test
    void aLineThatIsDecidedIsReadAsADecision() {
        DecisionList.Open open = DecisionList.open(DECIDE).get(0);
        assertEquals("=4,700 Ω", open.cell("answer"));
        String list = DecisionList.with("decisions.csv", "", open, "read as", "4.7 kΩ", "she said so");
        Decision read = DecisionsReader.read("decisions.csv", list).get(0);
        assertEquals(7, read.seat());
        assertEquals("=4,700 Ω", read.answer());
        assertEquals("4.7 kΩ", read.value());
    }

    @Test
    void linesOfAListOfHerOwnFormStayAndTheNewOneHasItsColumns() {
        String own = "# hers\nreason,decision,seat,question,value\nsaw it,mark,3,q1a,1";
        String plain = own.substring(own.indexOf('\n') + 1);
        DecisionList.Open open = DecisionList.open(DECIDE).get(0);
        String list = DecisionList.with("decisions.csv", plain, open, "mark", "0.5", "half, \"nearly\"");
        assertTrue(
                list.startsWith("sheet,answer,file,reason,decision,seat,question,value\n,,,saw it,mark,3,q1a,1\n"),
                list);
        List<Decision> read = DecisionsReader.read("decisions.csv", list);
        assertEquals(
                List.of("", "A7K3M-007-R"), read.stream().map(Decision::sheet).toList());
        String longer = DecisionList.with(
                "decisions.csv", list, DecisionList.open(DECIDE).get(2), "mark", "1", "whole");
        assertTrue(longer.startsWith(list), "what it has it keeps as it is");
    }

    @Test
    void whatSomeoneWroteBesideDecisionsStaysInItsColumns() {
        String own =
                "\uFEFFseat;question;decision;value;reason;seen by\n3;q1a;mark;1;\"a; b\";\"'=x\ny\"\n;;;;;;spill\n";
        DecisionList.Open open = DecisionList.open(DECIDE).get(1).of("A7K3M");
        String list = DecisionList.with("d.csv", own, open, "does not count", "", "twice");
        assertTrue(
                list.startsWith("issue,file,seat,question,decision,value,reason,seen by\n"
                        + ",,3,q1a,mark,1,a; b,\"'=x\ny\"\n,,,,,,,,spill\n"),
                list);
        Decision read = DecisionsReader.read("d.csv", list).get(1);
        assertEquals(Optional.of("A7K3M"), read.set());
        assertEquals("who.csv", read.file());
    }

    @Test
    void aListWithSemicolonsIsGoneOnWithAsOneWithCommas() {
        String own = "seat;question;decision;value;reason\n3;q1a;mark;1;\"saw it; twice\"\n";
        String list = DecisionList.with("d.csv", own, DecisionList.open(DECIDE).get(0), "mark", "0.5", "half");
        List<Decision> read = DecisionsReader.read("d.csv", list);
        assertEquals(
                List.of("saw it; twice", "half"),
                read.stream().map(Decision::reason).toList());
    }

    @Test
    void whatIsNoDecisionIsNotAdded() {
        DecisionList.Open open = DecisionList.open(DECIDE).get(0);
        assertThrows(DiagnosticException.class, () -> DecisionList.with("d.csv", "", open, "mark", "1", ""));
        assertThrows(DiagnosticException.class, () -> DecisionList.with("d.csv", "", open, "mark", "7", "why"));
        assertThrows(DiagnosticException.class, () -> DecisionList.with("d.csv", "", open, "praise", "", "why"));
        String once = DecisionList.with("d.csv", "", open, "mark", "1", "why");
        assertThrows(DiagnosticException.class, () -> DecisionList.with("d.csv", once, open, "mark", "0", "why"));
    }

    @Test
    void onlyWhatFitsALineIsOffered() {
        List<DecisionList.Open> open = DecisionList.open(DECIDE);
        assertEquals(
                List.of("accept", "read as", "mark", "leave out"), open.get(0).words());
        assertEquals(List.of("counts", "does not count"), open.get(1).words());
    }

    @Test
    void linesOfOneMatterAreThoseOfTheSameWordsToTheSameQuestion() {
        String head =
                "seat,name,sheet,question,answer,file,line,why,may_mean,template,step,asked,right_answer,decision,value,reason\n";
        List<DecisionList.Open> open = DecisionList.open(head
                + "7,,A7K3M-007-R,q2a,two,a.csv,2,no number,,f/leds,n,How many LEDs at 9 V?,2,,,\n"
                + "8,,A7K3M-008-T,q5a,two,b.csv,2,no number,,f/leds,n,How many LEDs at 12 V?,3,,,\n"
                + "9,,A7K3M-009-V,q2a,two,c.csv,2,no number,,f/leds,m,How many strings?,2,,,\n");
        assertTrue(open.get(0).isLike(open.get(1)));
        assertFalse(open.get(0).isLike(open.get(2)));
    }

    @Test
    void whatWasDecidedIsKnownUntilItIsMarkedAgain() {
        DecisionList.Open open = DecisionList.open(DECIDE).get(0);
        String list = DecisionList.with("decisions.csv", "", open, "read as", "4.7 kΩ", "she said so");
        assertEquals("read as 4.7 kΩ", DecisionList.decided(list, "").of(open).orElseThrow());
        assertTrue(DecisionList.decided(list, "")
                .of(DecisionList.open(DECIDE).get(1))
                .isEmpty());
        assertTrue(DecisionList.decided("", "").of(open).isEmpty());
    }

    @Test
    void aDecisionThatDoesNotTellItsSheetsIsOfAMatterOnlyWhereThereAreNoOthers() {
        DecisionList.Open answer = DecisionList.open(DECIDE).get(0);
        String untold = "seat,question,answer,file,decision,value,reason\n7,q2a,\"'=4,700 Ω\",ada.csv,mark,1,so\n";
        assertTrue(DecisionList.decided(untold, "").of(answer).isPresent());
        assertTrue(DecisionList.decided(untold, "A7K3M").of(answer).isEmpty());
        String told = DecisionList.with("d.csv", "", answer, "mark", "1", "so");
        assertTrue(DecisionList.decided(told, "A7K3M").of(answer).isPresent());
        DecisionList.Open file = DecisionList.open(DECIDE).get(1);
        String here = DecisionList.with("d.csv", "", file.of("A7K3M"), "does not count", "", "so");
        assertTrue(DecisionList.decided(here, "A7K3M").of(file.of("A7K3M")).isPresent());
        assertTrue(DecisionList.decided(here, "B8M4N").of(file.of("B8M4N")).isEmpty(), "that of another week");
    }
}
