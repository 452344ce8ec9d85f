package ampersheet.issue;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.Handouts.Keys;
import ampersheet.issue.Handouts.Wish;
import ampersheet.render.pdf.Profile;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.PartsReader;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BenchCardFileTest {
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
    private static final Roster TWO = RosterReader.read("class.csv", "seat,name\n1,Ada\n2,Bo\n");
    private static final String INDICATOR = "  - {template: current-limiting/one-indicator, example: yes}\n";
    private static final String LONG = "  - {template: current-limiting/driver-test-point}\n";
    private static final String HOT = "  - {template: thermal-rise/heat-sink}\n";
    private static final double POINTS_PER_MILLIMETRE = 72 / 25.4;

    @TempDir
    private Path folder;

    private static ProblemSet set(String problems, Optional<String> parts) {
        return ProblemSet.of(
                PlanReader.read("plan.yaml", "title: Lanterns\nseed: cards\nproblems:\n" + problems),
                LIBRARY,
                parts.map(text -> PartsReader.read("parts.csv", text)));
    }

    private BenchCardFile.Printed print(ProblemSet set, Profile profile) {
        return print(set, TWO, profile);
    }

    private BenchCardFile.Printed print(ProblemSet set, Roster roster, Profile profile) {
        return BenchCardFile.print(
                set,
                roster,
                folder.resolve("cards.pdf"),
                new Wish(Paper.A4, profile, Keys.NONE, false),
                Output.Terms.NONE);
    }

    private String text() throws IOException {
        try (PDDocument document = Loader.loadPDF(Files.readAllBytes(folder.resolve("cards.pdf")))) {
            return new PDFTextStripper().getText(document).replace('\u00a0', ' ');
        }
    }

    private List<TextPosition> letters(int fromPage, int toPage) throws IOException {
        List<TextPosition> letters = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(Files.readAllBytes(folder.resolve("cards.pdf")))) {
            PDFTextStripper stripper = new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition letter) {
                    letters.add(letter);
                }
            };
            stripper.setStartPage(fromPage);
            stripper.setEndPage(toPage);
            stripper.getText(document);
        }
        return letters;
    }

    @Test
    void aCardHasPartsReadingsWithTheirBandsAndAPlaceForTheMeasuredOnes() throws IOException {
        BenchCardFile.Printed printed = print(set(INDICATOR, Optional.empty()), Profile.REGULAR);
        assertEquals(2, printed.cards(), "one for each learner, none for the example");
        String text = text().replaceAll("\\s+", " ");
        for (String wanted : List.of(
                "For the host",
                "no answer away",
                "For all cards of a problem together",
                "1 × resistor",
                "Ada · Seat 1 · other numbers than on the sheet",
                "bench supply",
                "± 5 %",
                "Measured",
                "red at its A, black at its K",
                "current limit",
                "Caution",
                "meter 3¾ digits")) {
            assertTrue(text.contains(wanted), wanted + " is missing in " + text);
        }
    }

    @Test
    void allLettersOfCardsAndTheirFiguresAreAtLeastNinePoint() throws IOException {
        print(
                set(INDICATOR + LONG + "  - {template: voltage-dividers/battery-sense}\n", Optional.empty()),
                Profile.REGULAR);
        for (TextPosition letter : letters(2, 99)) {
            boolean head = letter.getYDirAdj() < 40; // the line of names, a tenth smaller
            assertTrue(
                    letter.getFontSizeInPt() >= (head ? 8 : 9) - 0.06,
                    letter.getUnicode() + " is " + letter.getFontSizeInPt() + " point");
        }
    }

    @Test
    void inLargePrintEverythingOnACardIsAtLeastFourteenPointAndItsTextEighteen() throws IOException {
        print(set(INDICATOR, Optional.empty()), Profile.LARGE);
        TreeMap<Float, Integer> sizes = new TreeMap<>();
        for (TextPosition letter : letters(1, 99)) {
            sizes.merge(letter.getFontSizeInPt(), 1, Integer::sum);
        }
        assertTrue(
                sizes.tailMap(17.9f).values().stream().mapToInt(count -> count).sum() > 300, sizes.toString());
    }

    @Test
    void rowsLeaveRoomToWriteAMeasurement() throws IOException {
        print(set(INDICATOR, Optional.empty()), Profile.REGULAR);
        List<Float> bands = new ArrayList<>();
        for (TextPosition letter : letters(2, 2)) {
            if (letter.getUnicode().equals("(")
                    && letter.getXDirAdj() > 400
                    && letter.getXDirAdj() < 430
                    && letter.getYDirAdj() > 250
                    && letter.getYDirAdj() < 420) {
                bands.add(letter.getYDirAdj());
            }
        }
        Collections.sort(bands);
        assertEquals(3, bands.size(), bands.toString());
        for (int i = 1; i < bands.size(); i++) {
            double apart = (bands.get(i) - bands.get(i - 1)) / POINTS_PER_MILLIMETRE;
            assertTrue(apart >= 8, "rows " + apart + " mm apart");
        }
    }

    @Test
    void whatIsNotMadeIsNamedWithItsReasonAndTheOthersAreMade() throws IOException {
        BenchCardFile.Printed printed = print(set(INDICATOR + HOT, Optional.empty()), Profile.REGULAR);
        assertEquals(2, printed.cards());
        assertEquals(
                List.of("thermal-rise/heat-sink"),
                printed.left().stream().map(left -> left.template()).toList());
        assertTrue(
                printed.left().get(0).because().contains("heat sink"),
                printed.left().toString());
        assertTrue(text().replaceAll("\\s+", " ").contains("without a heat sink it may be 1 W"), text());
    }

    @Test
    void aCardWithMoreToSayThanItHoldsIsLeftOutByNameAndTheFileIsMade() throws IOException {
        BenchCardFile.Printed printed = print(
                set(INDICATOR + "  - {template: current-limiting/transistor-switch}\n", Optional.empty()),
                Profile.LARGE);
        assertEquals(2, printed.cards());
        assertEquals("current-limiting/transistor-switch", printed.left().get(0).template());
        assertTrue(
                printed.left().get(0).because().contains("more to say"),
                printed.left().toString());
        assertTrue(text().contains("more to say"));
    }

    @Test
    void theDemoHasCardsInEveryProfileWithAndWithoutBins() throws IOException {
        String demo = Files.readString(Path.of("problem-templates/demo/plan.yaml"));
        List<Profile> profiles = Boolean.getBoolean("ampersheet.deep")
                ? List.of(Profile.values())
                : List.of(Profile.LARGE); // as the demo once failed
        Roster one = new Roster(List.of(new Roster.Seat(1, "")));
        String bins = Files.readString(Path.of("problem-templates/demo/parts.csv"));
        for (Optional<String> parts : List.of(Optional.<String>empty(), Optional.of(bins))) {
            ProblemSet set = ProblemSet.of(
                    PlanReader.read("plan.yaml", demo),
                    LIBRARY,
                    parts.map(text -> PartsReader.read("parts.csv", text)));
            for (Profile profile : profiles) {
                assertTrue(print(set, one, profile).cards() >= 3, profile + ", bins " + parts.isPresent());
                Files.delete(folder.resolve("cards.pdf"));
            }
        }
    }

    @Test
    void fromBinsOnlyTheirPartsAreTakenAndNoMoreThanThereAre() throws IOException {
        String two = "kind,value,tolerance,rating,count\nresistor,470 ohm,1 %,0.6 W,1\nresistor,1 kohm,2 %,0.6 W,1\n"
                + "meter,10 mV,0.5 % + 2 digits,,1\n";
        String one = "  - {template: current-limiting/one-indicator, given: {Vs: 12 V}}\n";
        BenchCardFile.Printed printed = print(set(one, Optional.of(two)), Profile.REGULAR);
        String text = text();
        int resistors = text.split("R1: resistor (470 Ω ± 1 %|1 kΩ ± 2 %), 0.6 W", -1).length - 1;
        assertEquals(printed.cards(), resistors, text);
        assertTrue(printed.cards() <= 2);
        if (printed.cards() == 2) {
            assertTrue(text.contains("470 Ω") && text.contains("1 kΩ"), text);
        }
    }

    @Test
    void withoutAnythingToLayOutThereIsNoFileAndEachReasonIsTold() {
        String tile = "  - {template: chain-addressing/serpentine-tile}\n";
        DiagnosticException refused = assertThrows(
                DiagnosticException.class, () -> print(set(tile + HOT, Optional.empty()), Profile.REGULAR));
        assertTrue(refused.getMessage().contains("none of the plan's problems"), refused.getMessage());
        assertTrue(refused.getMessage().contains("serpentine-tile"), refused.getMessage());
        assertTrue(refused.getMessage().contains("heat sink"), refused.getMessage());
        assertFalse(Files.exists(folder.resolve("cards.pdf")));
    }

    @Test
    void madeAgainTheFileHasTheSameBytes() throws IOException {
        ProblemSet set = set(INDICATOR + LONG, Optional.empty());
        print(set, Profile.REGULAR);
        byte[] first = Files.readAllBytes(folder.resolve("cards.pdf"));
        assertEquals(0, print(set, Profile.REGULAR).written());
        assertArrayEquals(first, Files.readAllBytes(folder.resolve("cards.pdf")));
    }
}
