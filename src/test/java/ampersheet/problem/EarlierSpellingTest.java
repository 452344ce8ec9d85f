package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Sheets that were handed out keep their templates; what these called things is still read and solved. */
class EarlierSpellingTest {
    private static final Path EARLIER = Path.of("src/test/resources/earlier");
    private static final int DRAWS = 100;

    @TestFactory
    Stream<DynamicTest> templatesAsTheyWereAreStillSolvedByBothRoutes() {
        return List.of("edge-mating", "edge-repair", "tile-orders", "rotated-tile").stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    Draws draws = new Draws(
                            new Workshop(TemplateReader.read(TemplateFiles.in(EARLIER), "chain-addressing/" + name)),
                            "earlier");
                    draws.draw(DRAWS - 1);
                    assertEquals(DRAWS, draws.tally().accepted());
                    assertEquals(
                            0,
                            draws.tally().refused(Refusal.ROUTES_DISAGREE),
                            draws.tally().reasons());
                }));
    }
}
