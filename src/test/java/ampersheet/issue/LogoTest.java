package ampersheet.issue;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.page.HomeworkPage;
import ampersheet.render.html.HtmlPage;
import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.ArchivedSheets;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Logo;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A school's picture over its sheets. */
class LogoTest {
    private static final String BARE =
            "title: Lanterns\nseed: one\nproblems: [{template: current-limiting/indicator}]\n";
    private static final String PLAN = BARE + "school: Harbour \"School\"\nlogo: school.png\n";

    @TempDir
    private Path folder;

    private static byte[] picture(int wide, int high, String format, boolean noise) {
        BufferedImage image = new BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB);
        Random random = new Random(5);
        for (int y = 0; y < high; y++) {
            for (int x = 0; x < wide; x++) {
                image.setRGB(x, y, noise ? random.nextInt() : x * 7 / wide * 0x203040);
            }
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, format, out);
        } catch (IOException failure) {
            throw new IllegalStateException(failure);
        }
        return out.toByteArray();
    }

    /** With a chunk of text before its end. */
    private static byte[] withWords(byte[] png, String words) {
        byte[] chunk = ("tEXtComment\0" + words).getBytes(StandardCharsets.ISO_8859_1);
        CRC32 check = new CRC32();
        check.update(chunk);
        return ByteBuffer.allocate(png.length + chunk.length + 8)
                .put(png, 0, png.length - 12)
                .putInt(chunk.length - 4)
                .put(chunk)
                .putInt((int) check.getValue())
                .put(png, png.length - 12, 12)
                .array();
    }

    private Plan plan(String text) {
        return PlanReader.read("plan.yaml", text, PlanReader.Beside.in(folder));
    }

    private Plan withLogo() throws IOException {
        Files.write(folder.resolve("school.png"), picture(300, 100, "png", false));
        return plan(PLAN);
    }

    private static Sheet sheet(Plan plan) {
        return new SheetMaker(ProblemSet.of(plan, SmallLibrary.open())).sheet(1);
    }

    @Test
    void itStandsOverEverySheetAndHomeworkPageWithTheNameOfTheSchoolInWordsAndNotOverTheKey() throws IOException {
        Sheet sheet = sheet(withLogo());
        for (String page : List.of(HtmlPage.render(Composer.sheet(sheet, "Ada")), HomeworkPage.render(sheet, "Ada"))) {
            assertTrue(
                    page.matches("(?s).*<header class=\"masthead\">\\s*<img class=\"logo\" src=\"data:image/png;base64,"
                            + "[^\"]+\" alt=\"Harbour &quot;School&quot;\" width=\"181\" height=\"60\"\\s*/>.*"),
                    page.substring(0, 3_000));
            assertTrue(page.contains("img-src data:") && page.contains(".logo{float:right"), "it may be shown");
        }
        assertFalse(HtmlPage.render(Composer.key(sheet, "Ada")).contains("<img"));
        Files.write(folder.resolve("school.png"), picture(40, 90, "png", false));
        String tall = HtmlPage.render(Composer.sheet(sheet(plan(BARE + "logo: school.png\n")), "Ada"));
        assertTrue(tall.contains("alt=\"\" width=\"27\" height=\"60\""), "a school without a name");
    }

    @Test
    void itChangesNoNumberAndNoId() throws IOException {
        Sheet bare = sheet(plan(BARE));
        Sheet with = sheet(withLogo());
        assertEquals(bare.id(), with.id());
        assertEquals(
                bare.problems().get(0).problem().givens(),
                with.problems().get(0).problem().givens());
    }

    @ParameterizedTest
    @CsvSource({"png,300,100", "png,2000,2000", "jpeg,640,480", "png,1,2000", "png,2000,1"})
    void onlyItsPixelsTravelAndNoneFinerThanPaperShows(String format, int wide, int high) {
        byte[] file = picture(wide, high, format, false);
        byte[] sent = format.equals("png") ? withWords(file, "taken at 53.5 N") : file;
        Logo logo = Logo.read("a.png", Place.inFile("plan.yaml"), sent);
        String shown = new String(logo.png(), StandardCharsets.ISO_8859_1);
        assertFalse(shown.contains("53.5 N") || shown.contains("tEXt") || shown.contains("JFIF"));
        assertTrue(logo.height() <= 16 && logo.width() <= 50 && logo.height() > 0 && logo.width() > 0);
        assertArrayEquals(
                logo.png(),
                Logo.read("a.png", Place.inFile("plan.yaml"), logo.png()).png(),
                "made again");
    }

    @Test
    void aPictureThatShinesThroughStandsOnWhite() throws IOException {
        BufferedImage clear = new BufferedImage(4, 4, BufferedImage.TYPE_INT_ARGB);
        clear.setRGB(1, 1, 0x80000000);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(clear, "png", out);
        byte[] png =
                Logo.read("a.png", Place.inFile("plan.yaml"), out.toByteArray()).png();
        BufferedImage shown = ImageIO.read(new java.io.ByteArrayInputStream(png));
        assertEquals(0xffffffff, shown.getRGB(0, 0));
        assertEquals(0xff7f7f7f, shown.getRGB(1, 1));
    }

    @ParameterizedTest
    @CsvSource({
        "school.png,words,is neither a PNG nor a JPEG picture",
        "school.png,svg,is neither a PNG nor a JPEG picture",
        "school.png,large,is larger than 200000 bytes",
        "school.png,wide,has 2001 by 10 pixels",
        "school.png,cut,cannot be read: it is damaged",
        "missing.png,none,the picture missing.png cannot be read",
        "link.png,none,links are not followed",
        "../school.png,none,is not the name of a file beside the plan",
        "a/school.png,none,is not the name of a file beside the plan",
        "/etc/passwd,none,is not the name of a file beside the plan",
        ".hidden.png,none,is not the name of a file beside the plan",
    })
    void whatIsNoSuchPictureIsRefusedAtItsLineInWords(String name, String what, String told) throws IOException {
        byte[] good = picture(300, 100, "png", false);
        byte[] bytes = switch (what) {
            case "words" -> "no picture".getBytes(StandardCharsets.UTF_8);
            case "svg" -> "<svg xmlns='http://www.w3.org/2000/svg'/>".getBytes(StandardCharsets.UTF_8);
            case "large" -> picture(300, 300, "png", true);
            case "wide" -> picture(2_001, 10, "png", false);
            case "cut" -> Arrays.copyOf(good, good.length / 2);
            default -> good;
        };
        Files.write(folder.resolve("school.png"), bytes);
        Files.createSymbolicLink(folder.resolve("link.png"), folder.resolve("school.png"));
        DiagnosticException refused =
                assertThrows(DiagnosticException.class, () -> plan(BARE + "logo: " + name + "\n"));
        assertTrue(refused.getMessage().startsWith("plan.yaml:4:7: error: "), refused.getMessage());
        assertTrue(refused.getMessage().contains(told), refused.getMessage());
    }

    @Test
    void anArchiveMakesTheSheetAgainWithTheSameBytesWhenThePictureIsGone() throws IOException {
        ProblemSet set = ProblemSet.of(withLogo(), SmallLibrary.open());
        Path out = folder.resolve("out");
        Issue.Issued issued = Issue.issue(
                set, new Roster(List.of(new Roster.Seat(1, "Ada"))), out, 1, new Issue.Besides(false, false));
        Files.delete(folder.resolve("school.png"));
        ArchivedSheets archived = new ArchivedSheets(ArchivedClass.read(issued.archive()), SmallLibrary.open());
        Sheet again = archived.issued(1).sheet();
        assertEquals(
                Files.readString(out.resolve("sheets/seat-001.html")), HtmlPage.render(Composer.sheet(again, "Ada")));
    }

    @Test
    void onPaperItStandsOnEverySheetAndLiesInTheFileOnce() throws IOException {
        ProblemSet set = ProblemSet.of(withLogo(), SmallLibrary.open());
        Path out = folder.resolve("out.pdf");
        List<Roster.Seat> seats = List.of(new Roster.Seat(1, "Ada"), new Roster.Seat(2, "Bo"));
        Handouts.print(
                set,
                new Roster(seats),
                out,
                new Handouts.Wish(set.plan().paper(), ampersheet.render.pdf.Profile.COMPACT, Handouts.Keys.NONE, true));
        byte[] bytes = Files.readAllBytes(out);
        try (PDDocument pdf = Loader.loadPDF(bytes)) {
            int with = 0;
            for (PDPage page : pdf.getPages()) {
                for (COSName name : page.getResources().getXObjectNames()) {
                    with += page.getResources().isImageXObject(name) ? 1 : 0;
                }
            }
            assertEquals(2, with);
        }
        String raw = new String(bytes, StandardCharsets.ISO_8859_1);
        assertTrue(raw.split("/Subtype ?/Image", -1).length - 1 <= 1, "once, or within packed objects");
        Path again = folder.resolve("again.pdf");
        Handouts.print(
                set,
                new Roster(seats),
                again,
                new Handouts.Wish(set.plan().paper(), ampersheet.render.pdf.Profile.COMPACT, Handouts.Keys.NONE, true));
        assertArrayEquals(bytes, Files.readAllBytes(again));
    }
}
