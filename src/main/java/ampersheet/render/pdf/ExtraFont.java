package ampersheet.render.pdf;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import java.io.IOException;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** A font that an instructor has, for names in letters that the shipped fonts lack. */
public final class ExtraFont {
    /** Bytes; the largest fonts for East Asian letters have some 20 million. */
    public static final int LARGEST = 40_000_000;

    private final String file;
    private final byte[] bytes;

    /**
     * @param file its name, for messages
     * @throws DiagnosticException if this is no TrueType font, or one that its maker does not let be embedded
     */
    public ExtraFont(String file, byte[] bytes) {
        this.file = file;
        this.bytes = bytes.clone();
        try (PDDocument trial = new PDDocument()) {
            PDType0Font.load(trial, parsed(), true);
        } catch (IOException | RuntimeException foreign) { // the parser meets broken tables with any exception
            throw refused(foreign);
        }
    }

    /** Of its file, as it was named. */
    public String name() {
        return file;
    }

    TrueTypeFont parsed() throws IOException {
        TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(bytes));
        font.setEnableGsub(false);
        return font;
    }

    private DiagnosticException refused(Exception reason) {
        return new DiagnosticException(Diagnostic.error(
                Place.inFile(file),
                say("folder.font.unfit", "reason", reason.getMessage()),
                say("folder.font.unfit.expected"),
                say("folder.font.unfit.next")));
    }
}
