package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Exactly one option is right for all values, not only for those that came up. */
class OptionProofTest {
    private static OptionProof of(TemplateBuilder template) {
        return OptionProof.of(template.build()).get(0);
    }

    private static TemplateBuilder currents(double... amperes) {
        return new TemplateBuilder("a/b")
                .given("I", "A", amperes)
                .given("W", "A", 2, 4)
                .step("F", "A", "1.25 * I");
    }

    @Test
    void thresholdsThatLeaveNothingOutAreProvenForAllValues() {
        OptionProof proof = of(
                currents(1, 2).choice("fuse", "small", "F <= 2 A", "large", "F > 2 A and F <= 4 A", "none", "F > 4 A"));
        assertTrue(proof.holds());
        assertEquals(OptionProof.Way.BY_ORDERS, proof.way());
    }

    @Test
    void anOptionWithoutAnUpperBoundIsFoundOutThoughNoDrawReachesIt() {
        OptionProof proof = of(currents(1, 2, 3, 6)
                .choice("fuse", "small", "F <= 2 A and W >= 2 A", "large", "F > 2 A", "none", "F > 4 A"));
        assertFalse(proof.holds());
        assertTrue(
                proof.counterexample().orElseThrow().contains("I=6"),
                proof.counterexample().orElseThrow());
    }

    @Test
    void aTieThatBothOptionsTakeIsFoundOut() {
        assertFalse(of(currents(1.6).choice("fuse", "small", "F <= 2 A", "large", "F >= 2 A"))
                .holds());
    }

    @Test
    void whatOrdersAloneDoNotSettleIsSettledByWorkingEveryCombination() {
        OptionProof proof = of(
                currents(1, 3).choice("fuse", "low", "F < 2 A", "middle", "F >= 2 A and I <= 1 A", "high", "I > 1 A"));
        assertTrue(proof.holds(), () -> proof.toString());
        assertEquals(OptionProof.Way.BY_ENUMERATION, proof.way());
    }

    @Test
    void aRequirementRulesOrdersOut() {
        OptionProof proof = of(new TemplateBuilder("a/b")
                .given("Lo", "V", 1, 2)
                .given("Hi", "V", 2, 3)
                .given("V", "V", 1, 2, 3)
                .require("Lo < Hi")
                .choice("level", "low", "V < Lo", "between", "V >= Lo and V <= Hi", "high", "V > Hi"));
        assertEquals(OptionProof.Way.BY_ORDERS, proof.way());
        assertTrue(proof.holds());
    }

    @Test
    void wordsAreGoneThroughOneByOne() {
        TemplateBuilder template = new TemplateBuilder("a/b")
                .given("I", "A", 1, 2)
                .word("feed", "start", "middle")
                .choice(
                        "where",
                        "far",
                        "feed == \"start\"",
                        "near",
                        "feed == \"middle\" and I > 1 A",
                        "none",
                        "feed == \"middle\" and I <= 1 A");
        assertTrue(of(template).holds());
    }
}
