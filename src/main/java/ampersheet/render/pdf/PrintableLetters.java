package ampersheet.render.pdf;

import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.pdmodel.PDDocument;

/** Tells beforehand which names can be printed. */
public final class PrintableLetters implements Closeable {
    private final PDDocument pdf = new PDDocument();
    private final Fonts fonts;

    /** @param extra for letters that the shipped fonts lack */
    public PrintableLetters(Optional<ExtraFont> extra) {
        try {
            fonts = new Fonts(pdf, extra);
        } catch (IOException failure) {
            throw new UncheckedIOException("the fonts for print cannot be read", failure);
        }
    }

    /** Characters of a name or title that cannot be printed, or only wrong: see {@link Writing}. */
    public Set<String> missingIn(String name) {
        return fonts.missingInName(name);
    }

    @Override
    public void close() {
        try {
            pdf.close();
        } catch (IOException failure) {
            throw new UncheckedIOException("the fonts for print could not be closed", failure);
        }
    }
}
