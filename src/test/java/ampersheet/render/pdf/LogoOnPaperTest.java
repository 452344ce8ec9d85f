package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.sheet.Composer;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import ampersheet.source.Languages;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A picture among the words of a page that can be read aloud. */
class LogoOnPaperTest {
    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource({"COMPACT,school: Harbour School", "COMPACT,''", "EASY,school: Harbour School", "LARGE,''"})
    void aPageWithALogoIsAccessibleWithAndWithoutWordsForIt(Profile profile, String school) throws Exception {
        ByteArrayOutputStream picture = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(300, 100, BufferedImage.TYPE_INT_RGB), "png", picture);
        Files.write(folder.resolve("school.png"), picture.toByteArray());
        Plan plan = PlanReader.read(
                "plan.yaml",
                "title: Lanterns\nseed: one\nlogo: school.png\n" + school
                        + "\nproblems: [{template: voltage-dividers/plain-divider}]\n",
                PlanReader.Beside.in(folder));
        try (PdfBook book = new PdfBook("Lanterns", Languages.ENGLISH, profile, Optional.empty(), folder)) {
            book.add(Composer.sheet(new SheetMaker(ProblemSet.of(plan, SmallLibrary.open())).sheet(1), "Ada"));
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            book.write(out);
            assertEquals(List.of(), Accessible.faults(out.toByteArray()));
        }
    }
}
