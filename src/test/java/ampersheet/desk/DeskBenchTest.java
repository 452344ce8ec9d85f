package ampersheet.desk;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.render.pdf.Profile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a course has besides plan and class: the parts in its bins, a font, a drawing of each figure. */
class DeskBenchTest {
    private static final Limits FOR_FONTS =
            new Limits(4_000_000, 8_000_000, 20, Duration.ofSeconds(10), Duration.ofSeconds(10));
    private static final String HEAD = "kind,value,tolerance,rating,count\n";
    private static final int PATIENCE = 60_000;

    @TempDir
    private Path root;

    private Path folder;
    private OpenDesk desk;

    @BeforeEach
    void open() throws IOException {
        folder = Files.createDirectory(root.resolve("course"));
        desk = OpenDesk.withCourse(folder, FOR_FONTS);
    }

    @AfterEach
    void nothingFailed() throws IOException {
        desk.close();
        assertEquals(List.of(), desk.failures);
    }

    /** Or whoever picks two here and two there adds only the last two. */
    @Test
    void whatWasTickedStaysTickedWhenOtherLessonsAreLookedFor() throws IOException {
        String page = desk.get("/lessons?topic=chain+addressing&lesson=current-limiting%2Fone-indicator");
        assertTrue(page.contains("name=\"lesson\" value=\"current-limiting/one-indicator\" checked"), page);
        assertTrue(page.contains("What you ticked before stands first") && page.contains("the one that is ticked"));
        assertTrue(page.contains("value=\"chain-addressing/frame-time\">"), page);
    }

    @Test
    void theListOfPartsIsShownChangedAndTakenBack() throws IOException {
        String before = Files.readString(folder.resolve("parts.csv"));
        assertTrue(desk.get("/parts").contains("<input name=\"value\" value=\"6.8 kohm\""));
        String list = HEAD + "resistor,1 kohm,5 %,0.25 W,50\n";
        assertEquals(303, OpenDesk.status(desk.post("/parts", "seen", desk.seen("/parts"), "text", list)));
        assertEquals(list, Files.readString(folder.resolve("parts.csv")));
        assertTrue(desk.get("/parts").contains("1 line</h2>"));
        desk.post("/parts/undo");
        assertEquals(before, Files.readString(folder.resolve("parts.csv")));
    }

    @Test
    void aListOfPartsIsDroppedAsASpreadsheetWroteIt() throws IOException {
        byte[] list = (HEAD + "resistor,4.7 kohm,5 %,,40\n").getBytes(StandardCharsets.UTF_16);
        String reply = desk.send("/parts", "bins.csv", list, "seen", desk.seen("/parts"));
        assertEquals(303, OpenDesk.status(reply), reply);
        assertEquals(HEAD + "resistor,4.7 kohm,5 %,,40\n", Files.readString(folder.resolve("parts.csv")));
    }

    @Test
    void aFaultOfThePartsIsToldOnceBelowItsLineAndNothingIsKept() throws IOException {
        String before = Files.readString(folder.resolve("parts.csv"));
        String list = HEAD + "resistor,1 kohm,5 %,0.25 W,50\nresistor,390 ohn,5 %,,<b>\n";
        String reply = desk.post("/parts", "seen", desk.seen("/parts"), "text", list);
        assertEquals(422, OpenDesk.status(reply));
        assertEquals(2, reply.split("390 ohn” is not|&lt;b&gt;” is not", -1).length - 1, reply);
        assertTrue(reply.contains("<li value=\"3\" class=\"wrong\">") && !reply.contains("<b>”"), reply);
        assertEquals(before, Files.readString(folder.resolve("parts.csv")));
        Files.writeString(folder.resolve("parts.csv"), list);
        String page = desk.get("/parts");
        assertTrue(page.contains("aria-describedby=\"wrong-1\"") && !page.contains("<b>”"), page);
        Files.writeString(folder.resolve("plan.yaml"), "parts: parts.csv\n" + desk.plan());
        String beside = desk.get("/set/sheet?seat=1");
        assertTrue(beside.contains("Line 3 of parts.csv: "), beside);
        assertTrue(desk.get("/set").contains("Line 3 of parts.csv: "));
    }

    @Test
    void aListOfPartsThatChangedMeanwhileIsNotWrittenOver() throws IOException {
        String seen = desk.seen("/parts");
        Files.writeString(folder.resolve("parts.csv"), HEAD + "resistor,1 kohm,5 %,0.25 W,50\n");
        String reply = desk.post("/parts", "seen", seen, "text", HEAD + "resistor,2 kohm,5 %,0.25 W,50\n");
        assertEquals(409, OpenDesk.status(reply));
        assertTrue(reply.contains("action=\"/parts\"") && reply.contains("2 kohm"), reply);
        assertTrue(Files.readString(folder.resolve("parts.csv")).contains("1 kohm"));
    }

    @Test
    void aFontIsKeptUnderItsOwnNameOnlyIfItIsOneAndTakenAway() throws IOException {
        byte[] font;
        try (InputStream in = Profile.class.getResourceAsStream("fonts/LiberationSans-Italic.ttf")) {
            font = in.readAllBytes();
        }
        assertEquals(422, OpenDesk.status(desk.send("/give-out/font", "../../x.ttf", "no font")));
        assertFalse(Files.exists(folder.resolve("font.ttf")));
        String reply = desk.send("/give-out/font", "../../x.ttf", font);
        assertEquals(303, OpenDesk.status(reply), reply);
        assertArrayEquals(font, Files.readAllBytes(folder.resolve("font.ttf")));
        assertTrue(desk.get("/give-out").contains("--font font.ttf"), "the command that does the same");
        desk.post("/give-out/font/remove");
        assertFalse(Files.exists(folder.resolve("font.ttf")));
    }

    @Test
    void aFontThatLiesInTheCourseAndIsNoneIsToldBeforeAPdfIsMade() throws IOException {
        Files.writeString(folder.resolve("font.ttf"), "no font");
        String reply = desk.post("/give-out/make", "what", "pdf", "copies", "1");
        assertEquals(422, OpenDesk.status(reply));
        assertTrue(reply.contains("This font cannot be used"), reply);
        Files.delete(folder.resolve("font.ttf"));
        Path outside = Files.writeString(root.resolve("secret.ttf"), "x");
        Files.createSymbolicLink(folder.resolve("font.ttf"), outside);
        assertTrue(desk.post("/give-out/make", "what", "pdf", "copies", "1").contains("links are not followed"));
        assertEquals(422, OpenDesk.status(desk.post("/give-out/make", "what", "pages", "pdf", "yes")));
    }

    @Test
    void eachDrawingIsGivenOutAsAFileWhereThatIsTicked() throws Exception {
        Files.writeString(folder.resolve("class.csv"), "seat,name\n1,Ayo\n");
        assertEquals(303, OpenDesk.status(desk.post("/give-out/make", "what", "pages", "drawings", "yes")));
        Path drawing = folder.resolve("made/class/sheets/seat-001-1.svg");
        until("/give-out");
        assertTrue(Files.readString(drawing).startsWith("<svg"));
    }

    @Test
    void theSheetOfASeatIsShownAsItIsPrintedAndWhatThePageLacksIsSaidBesideIt() throws Exception {
        Files.writeString(folder.resolve("class.csv"), "seat,name\n1,Ayo\n");
        String beside = desk.get("/set/sheet?seat=1");
        assertTrue(beside.contains("square code") && beside.contains("href=\"/set/print?seat=1\""), beside);
        String pdf = desk.get("/set/print?seat=1");
        assertTrue(pdf.contains("Content-Type: application/pdf") && pdf.contains("\r\n\r\n%PDF-"), pdf);
        assertFalse(Files.exists(folder.resolve("made/handout.pdf")), "nothing is made");
        Files.writeString(folder.resolve("class.csv"), "seat,name\n1,\ud808\udc00\n");
        assertEquals(422, OpenDesk.status(desk.get("/set/print?seat=1")));
    }

    @Test
    void whatIsAskedForIsSaidBeforeItIsAskedFor() throws IOException {
        String set = desk.get("/set");
        inOrder(set, "name=\"title\"", "Another title gives everybody other numbers", "name=\"school\"");
        inOrder(set, ">Keep</button>", ">The school’s logo</h2>", "action=\"/set/logo\"");
        Files.writeString(folder.resolve("plan.yaml"), "seed: x\n" + desk.plan());
        assertTrue(desk.get("/set").contains("the numbers come from the seed in the plan"));
        Files.writeString(folder.resolve("class.csv"), "seat,name\n1,Ayo\n2,Bo\n");
        String out = desk.get("/give-out");
        inOrder(out, "the 2 learners of the class list", "name=\"copies\"", "value=\"pdf\"");
        inOrder(out, "name=\"version\"", "value=\"exchange\"");
        String in = desk.get("/take-in");
        inOrder(in, "Single files:", "Take in these files", "Or a folder:", "Take in this folder");
        inOrder(in, ">Which files are late</h2>", "action=\"/take-in/times\"", ">Mark</h2>");
        assertTrue(in.contains("Course folder: course"), in);
    }

    private static void inOrder(String page, String... parts) {
        int at = 0;
        for (String part : parts) {
            at = page.indexOf(part, at);
            assertTrue(at >= 0, part + " is not where it belongs in " + page);
        }
    }

    private static byte[] picture(int wide) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(wide, 20, BufferedImage.TYPE_INT_RGB), "png", out);
        return out.toByteArray();
    }

    @Test
    void aLogoIsKeptBesideThePlanShownOverTheSheetAndTakenAway() throws IOException {
        byte[] picture = picture(60);
        String reply = desk.send("/set/logo", "../../evil.html", picture, "seen", desk.seen("/set"));
        assertEquals(303, OpenDesk.status(reply), reply);
        assertArrayEquals(picture, Files.readAllBytes(folder.resolve("logo.png")));
        assertTrue(Files.readString(folder.resolve("plan.yaml")).contains("\nlogo: logo.png\n"));
        assertTrue(desk.get("/set/sheet?seat=1").contains("<img class=\"logo\" src=\"data:image/png;base64,"));
        desk.send("/set/logo", "b.png", picture(30), "seen", desk.seen("/set"));
        assertArrayEquals(picture, Files.readAllBytes(folder.resolve("logo.png")), "nothing is written over");
        assertTrue(Files.readString(folder.resolve("plan.yaml")).contains("\nlogo: logo-2.png\n"));
        desk.post("/set/logo/remove", "seen", desk.seen("/set"));
        assertFalse(Files.readString(folder.resolve("plan.yaml")).contains("logo"));
        assertTrue(Files.exists(folder.resolve("logo-2.png")), "its file is the instructor's");
    }

    @Test
    void whatIsNoPictureIsNotKeptAndThePlanStaysAsItWas() throws IOException {
        String before = Files.readString(folder.resolve("plan.yaml"));
        for (byte[] sent : List.of("<svg/>".getBytes(StandardCharsets.UTF_8), picture(2_001))) {
            String reply = desk.send("/set/logo", "a.png", sent, "seen", desk.seen("/set"));
            assertEquals(422, OpenDesk.status(reply), reply);
            assertTrue(reply.contains("at most 200 kB and 2000 pixels a side"), reply);
        }
        assertEquals(409, OpenDesk.status(desk.send("/set/logo", "a.png", picture(60), "seen", "older")));
        assertFalse(Files.exists(folder.resolve("logo.png")));
        assertEquals(before, Files.readString(folder.resolve("plan.yaml")));
    }

    @Test
    void aLinkInPlaceOfTheLogoIsNotReadAndToldAtItsLine() throws IOException {
        Files.write(root.resolve("outside.png"), picture(60));
        Files.createSymbolicLink(folder.resolve("logo.png"), root.resolve("outside.png"));
        Files.writeString(
                folder.resolve("plan.yaml"), "logo: logo.png\n" + Files.readString(folder.resolve("plan.yaml")));
        String page = desk.get("/set");
        assertTrue(page.contains("<li value=\"1\" class=\"wrong\">") && page.contains("links are not followed"), page);
        desk.send("/set/logo", "a.png", picture(60), "seen", desk.seen("/set"));
        assertTrue(Files.isSymbolicLink(folder.resolve("logo.png")));
    }

    @Test
    void aFileThatCameInAfterTheTimeInThePlanIsCalledLateByTheInstructorsOwnList() throws Exception {
        Files.writeString(folder.resolve("class.csv"), "seat,name\n1,Ayo\n");
        accepted(desk.post("/set/heading", "seen", desk.seen("/set"), "due", "2026-03-12 18:00"));
        accepted(desk.post("/give-out/make", "what", "pages"));
        until("/give-out");
        accepted(desk.send("/take-in/files", "ayo.csv", "sheet,question,answer\n"));
        String times = "file,received\nayo.csv,2026-03-12T18:01\n";
        byte[] list = times.getBytes(StandardCharsets.UTF_8);
        assertEquals(303, OpenDesk.status(desk.send("/take-in/times", "t.csv", list, "seen", "none")));
        assertEquals(times, Files.readString(folder.resolve("received.csv")));
        accepted(desk.post("/take-in/mark"));
        String page = until("/take-in");
        assertTrue(page.contains("1 file late, by received.csv."), page);
        assertTrue(page.contains("<td>2026-03-12T18:01</td><td>late</td>"), page);
        assertTrue(page.contains("--received received.csv --due 2026-03-12T18:00"), "the command that does the same");
    }

    private static void accepted(String reply) {
        assertEquals(303, OpenDesk.status(reply), reply);
    }

    private String until(String place) throws Exception {
        String page = desk.get(place);
        for (int waited = 0; waited < PATIENCE && !page.contains("class=\"work done\""); waited += 100) {
            assertFalse(page.contains("class=\"work failed\""), page);
            Thread.sleep(100);
            page = desk.get(place);
        }
        assertTrue(page.contains("class=\"work done\""), page);
        return page;
    }
}
