package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A plan of its own that is taken again. */
class RetakeTest {
    private static final TemplateLibrary LIBRARY = SmallLibrary.open();
    private static final Plan PLAN = PlanReader.read(
            "plan.yaml", "title: Lanterns\nseed: s\nproblems: [{template: " + SmallLibrary.DIVIDER + "}]\n");
    private static final Set<String> SKILL =
            Set.of(LIBRARY.template(SmallLibrary.DIVIDER).skill());

    private static Plan again(int lastSeat, Retake.Before before) {
        return Retake.of(PLAN, lastSeat, before, Map.of(1, SKILL, 7, SKILL), LIBRARY);
    }

    private static Set<String> draws(Plan plan, int lastSeat) {
        Set<String> draws = new TreeSet<>();
        ProblemSet set = ProblemSet.of(plan, LIBRARY);
        for (int seat = 1; seat <= lastSeat; seat++) {
            set.draws(seat).forEach(draw -> draws.add(draw.source() + " " + draw.index()));
        }
        assertFalse(draws.isEmpty());
        return draws;
    }

    private static void assertApart(Set<String> one, Set<String> other) {
        Set<String> common = new TreeSet<>(one);
        common.retainAll(other);
        assertEquals(Set.of(), common);
    }

    @Test
    void whoComesLateIntoAClassOfFiftyHasNoProblemOfTheRetake() {
        assertApart(draws(PLAN, 51), draws(again(50, Retake.Before.NONE), 50));
        assertEquals(50, again(49, Retake.Before.NONE).portion().seats());
    }

    @Test
    void whatLiesOutIsReadByTheTemplatesOfItsTime(@TempDir Path folder) throws IOException {
        Plan first = again(49, Retake.Before.NONE);
        ProblemSet set = ProblemSet.of(first, LIBRARY);
        Path archive = folder.resolve(IssuedArchive.fileName(set));
        Sheet sheet = new SheetMaker(set).sheet(7);
        try (OutputStream out = Files.newOutputStream(archive)) {
            IssuedArchive.of(set, List.of(ArchivedSheet.of(sheet, set.places(7))), Optional.empty())
                    .write(out);
        }
        TemplateLibrary others = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        IssuedPart read = IssuedPart.read(archive, "s", others).orElseThrow();
        assertEquals(IssuedPart.of(first, LIBRARY).places(), read.places());
        assertEquals(IssuedPart.of(first, LIBRARY).code(), read.code());
        assertTrue(IssuedPart.read(archive, "another seed", LIBRARY).isEmpty());
        Path damaged = Files.writeString(folder.resolve("issued-AAAAA.zip"), "no archive");
        IssuedParts both = IssuedParts.read(List.of(archive, damaged), "s", LIBRARY);
        assertEquals(List.of(damaged), both.unread());
    }

    @Test
    void aClassThatHasGrownTakesItOnceMoreByTheFirstTimesArchive() {
        Plan first = again(49, Retake.Before.NONE);
        IssuedPart issued = IssuedPart.of(PlanReader.read("issued.yaml", first.written()), LIBRARY);
        IssuedParts known = IssuedParts.NONE.and(List.of(issued));
        assertEquals(
                ProblemSet.of(first, LIBRARY).id(1),
                ProblemSet.of(again(52, new Retake.Before(List.of(), known)), LIBRARY)
                        .id(1),
                "its marks still belong to it");
        Plan second = again(52, new Retake.Before(List.of(issued), IssuedParts.NONE));
        assertApart(draws(second, 52), draws(first, 50));
        assertApart(draws(second, 52), draws(PLAN, 52));
        assertEquals("Again (2): Lanterns", second.title());
    }
}
