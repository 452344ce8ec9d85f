package ampersheet.source;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.source.Unread.Why;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;

class SpreadsheetTest {
    private static final String OFFICE = "xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\" "
            + "xmlns:table=\"urn:oasis:names:tc:opendocument:xmlns:table:1.0\" "
            + "xmlns:text=\"urn:oasis:names:tc:opendocument:xmlns:text:1.0\"";

    private static String text(byte[] bytes) throws Unread {
        return ForeignText.of(bytes, Bounds.WRITTEN).text();
    }

    private static byte[] xlsx() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(out, "x", "1.0")) {
            workbook.newWorksheet("nothing");
            Worksheet sheet = workbook.newWorksheet("class");
            sheet.value(0, 0, "seat");
            sheet.value(0, 1, "name");
            sheet.value(2, 0, 7);
            sheet.value(2, 1, "Müller, \"Ada\"\nthe first");
            sheet.value(2, 3, 0.1 + 0.2);
            sheet.value(3, 0, LocalDate.of(2026, 5, 3));
            sheet.style(3, 0).format("d. mmm").set();
            sheet.value(3, 1, 0.447);
            sheet.style(3, 1).format("0.0%").set();
            sheet.value(3, 2, 4700.0);
            sheet.style(3, 2).format("#,##0").set();
            workbook.newWorksheet("other").value(0, 0, "left over");
        }
        return out.toByteArray();
    }

    private static byte[] zip(Map<String, byte[]> parts) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue());
                zip.closeEntry();
            }
        }
        return out.toByteArray();
    }

    private static byte[] ods(String rows, String before) throws IOException {
        String content = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>" + before + "<office:document-content " + OFFICE
                + "><office:body><office:spreadsheet><table:table table:name=\"empty\"><table:table-row/></table:table>"
                + "<table:table table:name=\"class\">" + rows
                + "</table:table></office:spreadsheet></office:body></office:document-content>";
        return zip(new TreeMap<>(Map.of("content.xml", content.getBytes(StandardCharsets.UTF_8))));
    }

    private static String cell(String text) {
        return "<table:table-cell office:value-type=\"string\"><text:p>" + text + "</text:p></table:table-cell>";
    }

    @Test
    void theFirstTableOfAnXlsxFileIsItsLinesWithCommas() throws IOException, Unread {
        ForeignText read = ForeignText.of(xlsx(), Bounds.WRITTEN);
        assertEquals(
                "seat,name\n\n7,\"Müller, \"\"Ada\"\" the first\",,0.3\ndate 2026-05-03,44.7 %,4700\n", read.text());
        assertTrue(read.note().orElseThrow().problem().contains("the sheet “class” is read and no other"));
    }

    @Test
    void textsThatOtherProgramsWriteIntoTheCellAreRead() throws IOException, Unread {
        Map<String, byte[]> parts = new TreeMap<>();
        Map.of(
                        "[Content_Types].xml",
                        "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Default "
                                + "Extension=\"xml\" ContentType=\"application/xml\"/><Override "
                                + "PartName=\"/xl/workbook.xml\" "
                                + "ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/>"
                                + "<Override PartName=\"/xl/worksheets/s.xml\" "
                                + "ContentType=\"application/vnd.openxmlformats-"
                                + "officedocument.spreadsheetml.worksheet+xml\"/></Types>",
                        "_rels/.rels",
                        "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship "
                                + "Id=\"r1\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/"
                                + "officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>",
                        "xl/_rels/workbook.xml.rels",
                        "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship "
                                + "Id=\"r1\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/"
                                + "worksheet\" Target=\"worksheets/s.xml\"/></Relationships>",
                        "xl/workbook.xml",
                        "<workbook xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\" "
                                + "xmlns:r=\"http://"
                                + "schemas.openxmlformats.org/officeDocument/2006/relationships\"><sheets><sheet "
                                + "name=\"a\" "
                                + "sheetId=\"1\" r:id=\"r1\"/></sheets></workbook>",
                        "xl/worksheets/s.xml",
                        "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData><row "
                                + "r=\"2\"><c r=\"A2\" t=\"inlineStr\"><is><t>4.7 kΩ</t></is></c><c "
                                + "r=\"C2\"><v>1E3</v></c>"
                                + "<c r=\"D2\"><f>1+1</f><v>2</v></c></row></sheetData></worksheet>")
                .forEach((name, part) -> parts.put(name, part.getBytes(StandardCharsets.UTF_8)));
        assertEquals("\n4.7 kΩ,,1000,2\n", text(zip(parts)));
    }

    @Test
    void theFirstTableOfAnOdsFileIsReadToo() throws IOException, Unread {
        String rows = "<table:table-row>" + cell("seat") + cell("name") + "</table:table-row>"
                + "<table:table-row table:number-rows-repeated=\"2\"><table:table-cell "
                + "table:number-columns-repeated=\"1024\"/></table:table-row>"
                + "<table:table-row><table:table-cell office:value-type=\"float\" "
                + "office:value=\"7\"><text:p>7,0</text:p>"
                + "</table:table-cell>" + cell("Ada<text:s/>L.") + "<table:table-cell/>"
                + "<table:table-cell office:value-type=\"percentage\" office:value=\"0.447\"/>"
                + "<table:table-cell office:value-type=\"date\" office:date-value=\"2026-05-03T00:00:00\"/>"
                + "<table:table-cell table:number-columns-repeated=\"16000\"/></table:table-row>"
                + "<table:table-row table:number-rows-repeated=\"1048000\"><table:table-cell/></table:table-row>";
        assertEquals("seat,name\n\n\n7,Ada L.,,44.7 %,date 2026-05-03\n", text(ods(rows, "")));
    }

    @Test
    void whatUnpacksToMoreThanAClassNeedsIsRefused() throws IOException {
        byte[] bomb = zip(new TreeMap<>(Map.of("xl/workbook.xml", new byte[60 << 20])));
        assertTrue(bomb.length < 100_000);
        assertEquals(Why.TOO_LARGE, assertThrows(Unread.class, () -> text(bomb)).why());
        String wide = "<table:table-row table:number-rows-repeated=\"90000\">"
                + "<table:table-cell office:value-type=\"string\" "
                + "table:number-columns-repeated=\"16000\"><text:p>x</text:p>"
                + "</table:table-cell></table:table-row>";
        byte[] many = ods(wide, "");
        assertEquals(Why.TOO_LARGE, assertThrows(Unread.class, () -> text(many)).why());
        Map<String, byte[]> parts = new TreeMap<>();
        for (int i = 0; i < 600; i++) {
            parts.put("p" + i, new byte[0]);
        }
        byte[] crowd = zip(parts);
        assertEquals(
                Why.TOO_LARGE, assertThrows(Unread.class, () -> text(crowd)).why());
    }

    @Test
    void noEntityIsFollowedAndNoFileOpened() throws IOException {
        byte[] file = ods(
                "<table:table-row>" + cell("&x;") + "</table:table-row>",
                "<!DOCTYPE x [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>");
        assertEquals(
                Why.UNREADABLE, assertThrows(Unread.class, () -> text(file)).why());
    }

    @Test
    void aDamagedOrForeignFileIsRefusedInWordsWhateverItIs() throws IOException {
        byte[] whole = xlsx();
        byte[] other = zip(new TreeMap<>(Map.of("word/document.xml", new byte[] {'<'})));
        assertEquals(
                "this is an archive and no spreadsheet",
                assertThrows(Unread.class, () -> text(other)).getMessage());
        long seed = 20_261_129L;
        Random random = new Random(seed);
        for (int i = 0; i < 300; i++) {
            byte[] broken = whole.clone();
            for (int j = 0; j <= random.nextInt(4); j++) {
                broken[4 + random.nextInt(broken.length - 4)] = (byte) random.nextInt(256);
            }
            byte[] cut = random.nextInt(3) == 0
                    ? java.util.Arrays.copyOf(broken, 5 + random.nextInt(broken.length - 5))
                    : broken;
            try {
                text(cut);
            } catch (Unread told) {
                assertTrue(told.getMessage().startsWith("this "), told.getMessage());
            } catch (RuntimeException escaped) {
                throw new AssertionError("seed " + seed + ", number " + i, escaped);
            }
        }
    }

    @Test
    void aHugeNumberIsNotWrittenOut() {
        assertEquals("1E999999999", SpreadsheetText.number("1E999999999", false));
        assertEquals("0.000047", SpreadsheetText.number("4.7E-5", false));
        assertEquals("-12", SpreadsheetText.number("-12.0", false));
        assertEquals("0", SpreadsheetText.number("0.000", false));
        assertEquals("#N/A", SpreadsheetText.number("#N/A", false));
    }

    @Test
    void packedAgainAFileHasTheSameBytesWheneverItWasMade() throws IOException, Unread, InterruptedException {
        byte[] once = PackedAgain.withoutTimes(xlsx());
        Thread.sleep(2_100);
        assertArrayEquals(once, PackedAgain.withoutTimes(xlsx()));
        assertEquals(text(xlsx()), text(once));
    }
}
