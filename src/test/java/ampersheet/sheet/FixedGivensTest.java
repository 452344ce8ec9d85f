package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** A class that builds one board has some givens in common. */
class FixedGivensTest {
    private static SheetMaker maker(String entries) {
        return SmallLibrary.maker("title: One board\nproblems:\n" + entries);
    }

    private static double given(SheetProblem problem, String name) {
        return problem.problem().givens().quantity(name).value();
    }

    @Test
    void everySeatHasTheFixedGivenAndTheRestIsDrawn() {
        SheetMaker maker =
                maker("  - {template: current-limiting/indicator, given: {Vs: 12 V}, example: yes, count: 2}\n");
        Set<String> variants = new TreeSet<>();
        for (int seat = 1; seat <= 40; seat++) {
            for (SheetProblem problem : maker.sheet(seat).problems()) {
                assertEquals(12.0, given(problem, "Vs"), "seat " + seat);
                variants.add(problem.problem().givens().quantities().toString());
            }
        }
        assertEquals(40 * 4, variants.size(), "examples, twins and seats never meet");
    }

    @Test
    void twoValuesOfOneGivenStandBesideEachOther() {
        SheetMaker maker = maker("  - {template: current-limiting/indicator, given: {Vs: 12 V}}\n"
                + "  - {template: current-limiting/indicator, given: {Vs: 5 V}}\n");
        for (int seat = 1; seat <= 20; seat++) {
            assertEquals(
                    List.of(12.0, 5.0),
                    maker.sheet(seat).problems().stream()
                            .map(problem -> given(problem, "Vs"))
                            .toList());
        }
        assertEquals(
                Set.of("current-limiting/indicator with Vs = 12V", "current-limiting/indicator with Vs = 5V"),
                maker.tallies().keySet());
    }

    @Test
    void theIdDependsOnItAndNotOnHowItIsSpaced() {
        String plain = maker("  - {template: current-limiting/indicator}\n")
                .set()
                .id(1)
                .toString();
        String fixed = maker("  - {template: current-limiting/indicator, given: {Vs: 12 V, If: 10 mA}}\n")
                .set()
                .id(1)
                .toString();
        String other = maker("  - {template: current-limiting/indicator, given: {Vs: 9 V, If: 10 mA}}\n")
                .set()
                .id(1)
                .toString();
        String spaced = maker("  - {template: current-limiting/indicator, given: {If: 10mA, Vs: 12V}}\n")
                .set()
                .id(1)
                .toString();
        assertNotEquals(plain, fixed);
        assertNotEquals(fixed, other);
        assertEquals(fixed, spaced);
    }

    @Test
    void aPoolHasTheGivenInEveryMember() {
        SheetMaker maker =
                maker("  - {pool: [current-limiting/indicator, voltage-dividers/plain-divider], given: {Vs: 12 V}}\n");
        Set<String> templates = new TreeSet<>();
        for (int seat = 1; seat <= 6; seat++) {
            SheetProblem problem = maker.sheet(seat).problems().get(0);
            templates.add(problem.template().name());
            assertEquals(12.0, given(problem, "Vs"));
        }
        assertEquals(Set.of(SmallLibrary.INDICATOR, SmallLibrary.DIVIDER), templates);
    }

    @Test
    void tooFewVariantsAreToldWithTheirNumberToWhoeverWroteThePlan() {
        SheetMaker maker = maker("  - {template: current-limiting/indicator, given: {Vs: 12 V, Vf: 2 V}}\n");
        maker.prepare(20);
        String told =
                assertThrows(DiagnosticException.class, () -> maker.prepare(40)).getMessage();
        assertTrue(
                told.startsWith(
                        "plan.yaml:3:5: error: with Vf = 2V, Vs = 12V fixed, current-limiting/indicator has only "),
                told);
        assertTrue(
                told.contains(" variants (of 37 combinations of its other givens;")
                        && told.contains("and 40 are needed"),
                told);
        assertTrue(told.contains("next: Fix fewer givens, or another value."), told);
    }

    @Test
    void aPlanWithoutItKeepsItsIds() {
        ArchivedClass issuedBefore = ArchivedClass.read(Path.of("src/test/resources/issued-before/issued-Z095E.zip"));
        assertEquals("Z0", ProblemSet.code(issuedBefore.plan()), "as a version gave it that could not fix givens");
    }
}
