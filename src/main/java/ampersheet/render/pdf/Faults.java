package ampersheet.render.pdf;

import ampersheet.sheet.Document;
import com.openhtmltopdf.util.Diagnostic;
import java.util.ArrayList;
import java.util.List;
import java.util.logging.Level;

/** What the page setter complains of: a page that it could not set as asked is not handed out. */
final class Faults {
    private final List<String> heard = new ArrayList<>();

    void hear(Diagnostic diagnostic) {
        if (diagnostic.getLevel().intValue() >= Level.WARNING.intValue()) {
            heard.add(diagnostic.getFormattedMessage());
        }
    }

    /**
     * @throws IllegalStateException if there was a complaint; the pages are made by this program, so it is its fault
     */
    void refuse(Document document) {
        if (!heard.isEmpty()) {
            throw new IllegalStateException(name(document) + " could not be set for print: "
                    + String.join("; ", heard.stream().distinct().toList()));
        }
    }

    static String name(Document document) {
        return document.sheetId().isEmpty() ? document.title() : "sheet " + document.sheetId();
    }
}
