package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.PreferredSeries;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** What IDs, keys and JSON are made of: written down here once more, so that no renaming changes what was printed. */
class StoredFormsTest {
    private static final Map<Support, String> SUPPORTS = new LinkedHashMap<>();

    static {
        SUPPORTS.put(new Support.Full(), "Full[]");
        SUPPORTS.put(new Support.Bare(), "Bare[]");
        SUPPORTS.put(new Support.Faded(new Support.Fade.Forward(2)), "Faded[fade=Forward[blank=2]]");
        SUPPORTS.put(new Support.Faded(new Support.Fade.Backward(1)), "Faded[fade=Backward[blank=1]]");
        SUPPORTS.put(
                new Support.Faded(new Support.Fade.Principle("Ohm's law")), "Faded[fade=Principle[name=Ohm's law]]");
    }

    @Test
    void everyKindOfSupportAndFadeHasItsStoredForm() {
        SUPPORTS.forEach((support, stored) -> assertEquals(stored, support.stored()));
        Set<String> kinds = new TreeSet<>();
        SUPPORTS.keySet()
                .forEach(support -> kinds.add(
                        support instanceof Support.Faded faded
                                ? faded.fade().getClass().getName()
                                : support.getClass().getName()));
        assertEquals(
                Support.class.getPermittedSubclasses().length - 1 + Support.Fade.class.getPermittedSubclasses().length,
                kinds.size(),
                "a kind without its form here: only " + kinds);
    }

    @Test
    void everyKindOfSupportAndFadeKeepsTheCodeOfItsPlan() {
        Map<String, String> codes = new LinkedHashMap<>();
        codes.put("support: full", "1P");
        codes.put("support: bare", "XK");
        codes.put("support: faded, fade: forward, blank: 2", "TF");
        codes.put("support: faded, fade: backward, blank: 1", "7T");
        codes.put("support: faded, fade: \"principle Ohm's law\"", "AG");
        codes.forEach((support, code) -> assertEquals(
                code,
                ProblemSet.code(PlanReader.read(
                        "plan.yaml",
                        "title: Stored\n"
                                + "seed: forms\nlevel: [1, 2]\npaper: letter\nsymbols: ieee\ndecimal: comma\n"
                                + "units: printed\norder: mixed\n"
                                + "problems: [{template: current-limiting/indicator, " + support + "}]\n")),
                support));
    }

    @Test
    void aMeterKeepsTheFormOfWhatItMeasures() {
        assertEquals(
                "Dimension[metre=2, kilogram=1, second=-3, ampere=-1, kelvin=0]",
                PartsReader.stored(Dimension.VOLTAGE));
    }

    @Test
    void everyKindOfAcceptanceHasTheNameThatKeysAndJsonGiveIt() {
        List<Acceptance> all = List.of(
                new Acceptance.Within(0.02, 0),
                new Acceptance.Preferred(PreferredSeries.E12),
                new Acceptance.Count(),
                new Acceptance.Designed(Optional.empty(), 1, 2),
                new Acceptance.Choice(List.of()));
        assertEquals(
                List.of("within", "preferred", "count", "designed", "choice"),
                all.stream().map(Acceptance::kind).toList());
        assertTrue(Acceptance.class.getPermittedSubclasses().length == all.size(), "a kind without its name here");
    }
}
