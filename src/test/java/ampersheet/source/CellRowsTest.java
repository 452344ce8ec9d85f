package ampersheet.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Random;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

class CellRowsTest {
    private static List<List<String>> cells(String text) throws CellRows.Uneven {
        return CellRows.read(text, ',', 1).stream().map(CellRows.Row::cells).toList();
    }

    @Test
    void quotedCellsHoldSeparatorsLineEndsAndDoubledMarks() throws CellRows.Uneven {
        assertEquals(
                List.of(List.of("a", "b,\nc", "say \"d\""), List.of("", "")),
                cells("a,\"b,\nc\",\"say \"\"d\"\"\" \n,"));
    }

    @Test
    void aRowKnowsTheLineItBeginsOn() throws CellRows.Uneven {
        assertEquals(
                List.of(7, 9, 10),
                CellRows.read("\"a\nb\"\n\nc", ',', 7).stream()
                        .map(CellRows.Row::line)
                        .toList());
    }

    @Test
    void aMarkThatDoesNotFitIsToldWithItsLine() {
        assertEquals(
                3,
                assertThrows(CellRows.Uneven.class, () -> cells("a\nb\n\"c\nd")).line());
        assertEquals(
                2,
                assertThrows(CellRows.Uneven.class, () -> cells("\"a\nb\" c,d")).line());
    }

    /** The library that writes our tables reads them by the same rules. */
    @Test
    void everyTextIsTakenApartAsTheLibraryDoes() {
        long seed = 1;
        Random random = new Random(seed);
        String[] pieces = {",", ",", "\n", "\"", "\"\"", "a", "b", " ", ";", "\t", "é"};
        for (int i = 0; i < 20_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int length = random.nextInt(20); length > 0; length--) {
                text.append(pieces[random.nextInt(pieces.length)]);
            }
            String here = text.toString();
            char separator = ",;\t".charAt(random.nextInt(3));
            assertEquals(byLibrary(here, separator), byUs(here, separator), () -> "seed " + seed + ": " + here);
        }
    }

    private static String byUs(String text, char separator) {
        try {
            return CellRows.read(text, separator, 1).stream()
                    .map(CellRows.Row::cells)
                    .toList()
                    .toString();
        } catch (CellRows.Uneven broken) {
            return "uneven";
        }
    }

    private static String byLibrary(String text, char separator) {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(separator)
                .setIgnoreEmptyLines(false)
                .get();
        try (CSVParser parser = CSVParser.builder()
                .setReader(new StringReader(text))
                .setFormat(format)
                .get()) {
            return parser.getRecords().stream().map(CSVRecord::toList).toList().toString();
        } catch (IOException | UncheckedIOException broken) {
            return "uneven";
        }
    }
}
