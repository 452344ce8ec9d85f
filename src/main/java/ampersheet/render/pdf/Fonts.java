package ampersheet.render.pdf;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The faces that are shipped with the program, in one PDF: embedded once for all its handouts, with the letters that
 * are used. What the text faces lack (∥, ⌈, ⚠) comes from the one for signs, and what that lacks from a font that was
 * given.
 */
final class Fonts {
    static final String SERIF = "Liberation Serif";
    static final String SANS = "Liberation Sans";
    static final String SYMBOLS = "DejaVu Sans";
    /** Of a font that was given. */
    private static final String EXTRA = "Extra";
    /** In style sheets, after the family of the text. */
    static final String FALLBACK = "'" + SYMBOLS + "', '" + EXTRA + "'";

    private static final int NORMAL = 400;
    private static final int BOLD = 700;

    private record Face(String family, int weight, FontStyle style, PDType0Font font, CmapLookup letters) {}

    private final List<Face> faces = new ArrayList<>();
    /** Characters that a face has. */
    private final BitSet found = new BitSet();

    Fonts(PDDocument document, Optional<ExtraFont> extra) throws IOException {
        load(document, SERIF, "LiberationSerif");
        load(document, SANS, "LiberationSans");
        faces.add(face(document, SYMBOLS, NORMAL, FontStyle.NORMAL, "DejaVuSans"));
        if (extra.isPresent()) {
            faces.add(
                    face(document, EXTRA, NORMAL, FontStyle.NORMAL, extra.get().parsed()));
        }
    }

    private void load(PDDocument document, String family, String file) throws IOException {
        faces.add(face(document, family, NORMAL, FontStyle.NORMAL, file + "-Regular"));
        faces.add(face(document, family, BOLD, FontStyle.NORMAL, file + "-Bold"));
        faces.add(face(document, family, NORMAL, FontStyle.ITALIC, file + "-Italic"));
    }

    private static Face face(PDDocument document, String family, int weight, FontStyle style, String file)
            throws IOException {
        try (InputStream in = Resources.open("fonts/" + file + ".ttf")) {
            TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in));
            font.setEnableGsub(false); // ligatures are not wanted, and looking for them takes longer than all the rest
            return face(document, family, weight, style, font);
        }
    }

    private static Face face(PDDocument document, String family, int weight, FontStyle style, TrueTypeFont font)
            throws IOException {
        return new Face(family, weight, style, PDType0Font.load(document, font, true), font.getUnicodeCmapLookup());
    }

    /** Which pages refer to. */
    List<COSBase> objects() {
        return faces.stream().<COSBase>map(face -> face.font().getCOSObject()).toList();
    }

    /** Writes those that pages refer to, with the letters that were used. */
    void write(ObjectFile file) throws IOException {
        for (Face face : faces) {
            if (file.isPointedAt(face.font().getCOSObject())) {
                face.font().subset();
                file.write(face.font().getCOSObject());
            }
        }
    }

    void register(PdfRendererBuilder builder) {
        faces.forEach(face ->
                builder.useFont(new PDFontSupplier(face.font()), face.family(), face.weight(), face.style(), true));
    }

    /** Characters of the text that no face has, or that would be printed wrong. */
    Set<String> missing(String text) {
        return Writing.runsRightToLeft(text) ? missingInName(text) : missingOf(text, Set.of());
    }

    /** The same for a name, which may be in any script. */
    Set<String> missingInName(String name) {
        return missingOf(ArabicJoining.join(name), Writing.notSet(name));
    }

    private Set<String> missingOf(String text, Set<String> notSet) {
        Set<String> missing = new TreeSet<>(notSet);
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int c = text.codePointAt(i);
            if (!found.get(c)) {
                if (Character.isWhitespace(c)
                        || faces.stream().anyMatch(face -> face.letters().getGlyphId(c) != 0)) {
                    found.set(c);
                } else {
                    missing.add(Character.toString(c));
                }
            }
        }
        return missing;
    }
}
