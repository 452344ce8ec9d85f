package ampersheet.render.pdf;

import ampersheet.sheet.Document;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;

/** Bookmarks (ISO 32000-1, 12.3.3): one line for each handout, so that a learner's sheet is found on a screen. */
final class Outline {
    /** @param page the first of what the line leads to, already written */
    record Line(String title, COSBase page) {}

    private Outline() {}

    /** What the line of a handout says. */
    static String title(Document document) {
        String reader = document.subtitle();
        String sheet = document.sheetId();
        if (sheet.isEmpty()) {
            return document.title();
        }
        return document.kind() == Document.Kind.KEY
                ? document.language().say("print.outline.key", "reader", reader, "sheet", sheet)
                : document.language().say("print.outline.sheet", "reader", reader, "sheet", sheet);
    }

    /** Writes the lines in this order; what the catalogue refers to. */
    static COSDictionary written(List<Line> lines, ObjectFile file) throws IOException {
        COSDictionary root = new COSDictionary();
        file.reserve(root);
        List<COSDictionary> items = new ArrayList<>();
        for (Line line : lines) {
            COSArray destination = new COSArray();
            destination.add(line.page());
            destination.add(COSName.getPDFName("Fit"));
            COSDictionary item = new COSDictionary();
            item.setString(COSName.TITLE, line.title());
            item.setItem(COSName.PARENT, root);
            item.setItem(COSName.DEST, destination);
            file.reserve(item);
            items.add(item);
        }
        for (int i = 0; i < items.size(); i++) {
            if (i > 0) {
                items.get(i).setItem(COSName.PREV, items.get(i - 1));
            }
            if (i + 1 < items.size()) {
                items.get(i).setItem(COSName.NEXT, items.get(i + 1));
            }
            file.write(items.get(i));
        }
        root.setName(COSName.TYPE, "Outlines");
        if (!items.isEmpty()) {
            root.setItem(COSName.FIRST, items.get(0));
            root.setItem(COSName.LAST, items.get(items.size() - 1));
            root.setInt(COSName.COUNT, items.size());
        }
        file.write(root);
        return root;
    }
}
