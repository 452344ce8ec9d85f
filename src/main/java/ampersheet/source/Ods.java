package ampersheet.source;

import ampersheet.language.Saying;
import ampersheet.source.Unread.Why;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** Reads the first table of an .ods file. */
final class Ods {
    private static final String TABLE = "urn:oasis:names:tc:opendocument:xmlns:table:1.0";
    private static final String OFFICE = "urn:oasis:names:tc:opendocument:xmlns:office:1.0";
    private static final String TEXT = "urn:oasis:names:tc:opendocument:xmlns:text:1.0";

    private final XMLStreamReader xml;
    private final Bounds bounds;
    private final List<String> others = new ArrayList<>();
    private String first = "";
    private String firstName = "";

    private Ods(XMLStreamReader xml, Bounds bounds) {
        this.xml = xml;
        this.bounds = bounds;
    }

    /** @throws Unread if it is none, or beyond its bounds */
    static TableOf read(SpreadsheetArchive archive, Bounds bounds) throws Unread {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        try (InputStream content = archive.content()) {
            Ods ods = new Ods(factory.createXMLStreamReader(content), bounds);
            ods.tables();
            return new TableOf(ods.first, ods.firstName, ods.others);
        } catch (IOException | XMLStreamException | NumberFormatException broken) {
            throw new Unread(Why.UNREADABLE, Saying.of("report.unread.damaged-spreadsheet"));
        }
    }

    private boolean begins(int event, String namespace, String name) {
        return event == XMLStreamConstants.START_ELEMENT && is(namespace, name);
    }

    private boolean ends(int event, String namespace, String name) {
        return event == XMLStreamConstants.END_ELEMENT && is(namespace, name);
    }

    private boolean is(String namespace, String name) {
        return xml.getLocalName().equals(name) && namespace.equals(xml.getNamespaceURI());
    }

    private void tables() throws XMLStreamException, Unread {
        while (xml.hasNext()) {
            if (begins(xml.next(), TABLE, "table")) {
                String name = xml.getAttributeValue(TABLE, "name");
                String text = table();
                if (text.isBlank()) {
                    continue;
                }
                if (firstName.isEmpty()) {
                    firstName = name == null ? "1" : name;
                    first = text;
                } else {
                    others.add(name == null ? "?" : name);
                }
            }
        }
    }

    private String table() throws XMLStreamException, Unread {
        SpreadsheetText text = new SpreadsheetText(bounds);
        int number = 1;
        for (int event = xml.next(); !ends(event, TABLE, "table"); event = xml.next()) {
            if (!begins(event, TABLE, "table-row")) {
                continue;
            }
            int repeated = repeated("number-rows-repeated");
            List<String> cells = row();
            // Empty rows are repeated to the end of the sheet; rows with something in them as often as they stand
            // there.
            for (int i = 0; i < repeated && !cells.isEmpty(); i++) {
                text.row(number + i, cells);
            }
            number = Math.addExact(number, repeated);
        }
        return text.toString();
    }

    private int repeated(String attribute) {
        String written = xml.getAttributeValue(TABLE, attribute);
        return written == null ? 1 : Math.max(1, Math.min(Integer.parseInt(written), 1 << 24));
    }

    /** Without the empty cells at its end. */
    private List<String> row() throws XMLStreamException, Unread {
        List<String> cells = new ArrayList<>();
        int empty = 0;
        for (int event = xml.next(); !ends(event, TABLE, "table-row"); event = xml.next()) {
            if (!begins(event, TABLE, "table-cell") && !begins(event, TABLE, "covered-table-cell")) {
                continue;
            }
            int repeated = repeated("number-columns-repeated");
            String cell = cell(xml.getLocalName());
            if (cell.isEmpty()) {
                empty += repeated;
                continue;
            }
            if (cells.size() + (long) empty + repeated > bounds.cells()) {
                throw new Unread(Why.TOO_LARGE, Saying.of("report.unread.many-columns"));
            }
            for (; empty > 0; empty--) {
                cells.add("");
            }
            for (int i = 0; i < repeated; i++) {
                cells.add(cell);
            }
        }
        return cells;
    }

    private String cell(String element) throws XMLStreamException {
        String type = xml.getAttributeValue(OFFICE, "value-type");
        String value = xml.getAttributeValue(OFFICE, "value");
        String date = xml.getAttributeValue(OFFICE, "date-value");
        StringBuilder text = new StringBuilder();
        int paragraphs = 0;
        for (int event = xml.next(); !ends(event, TABLE, element); event = xml.next()) {
            if (begins(event, OFFICE, "annotation")) {
                skip("annotation");
            } else if (begins(event, TEXT, "p")) {
                text.append(paragraphs++ == 0 ? "" : " ");
            } else if (begins(event, TEXT, "s") || begins(event, TEXT, "tab")) {
                text.append(' ');
            } else if (event == XMLStreamConstants.CHARACTERS || event == XMLStreamConstants.CDATA) {
                text.append(xml.getText());
            }
        }
        if (date != null) {
            return SpreadsheetText.date(date.length() > 10 ? date.substring(0, 10) : date);
        }
        boolean number = value != null && type != null && !type.equals("string");
        return number
                ? SpreadsheetText.number(value, type.equals("percentage"))
                : text.toString().strip();
    }

    /** A remark on a cell is not in it. */
    private void skip(String element) throws XMLStreamException {
        int event = xml.next();
        while (!ends(event, OFFICE, element)) {
            event = xml.next();
        }
    }
}
