package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.render.ForeignLanguage;
import ampersheet.render.SampleDocuments;
import ampersheet.sheet.Document;
import java.io.IOException;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** In another language paper has no word of English besides its documents, for the eye or for the ear. */
class ForeignLanguageOnPaperTest {
    /** Shorter ones are symbols with what stands below them. */
    private static final int SHORTEST = 4;

    private static final List<Document> DOCUMENTS =
            List.of(ForeignLanguage.of(SampleDocuments.sheet()), ForeignLanguage.of(SampleDocuments.key()));

    @Test
    void asItIsMarkedUp() {
        for (Profile profile : Profile.values()) {
            for (Document document : DOCUMENTS) {
                String markup = PrintMarkup.of(document, profile).xhtml();
                assertEquals(Set.of(), ForeignLanguage.english(document, markup), profile.name());
            }
        }
    }

    @Test
    void asItIsPrinted() throws IOException {
        for (Document document : DOCUMENTS) {
            for (Profile profile : List.of(Profile.COMPACT, Profile.REGULAR)) {
                try (PDDocument pdf = Loader.loadPDF(PdfBookTest.book(profile, document))) {
                    String text = new PDFTextStripper().getText(pdf);
                    Set<String> left = ForeignLanguage.english(document, text);
                    left.removeIf(word -> word.length() < SHORTEST);
                    assertEquals(Set.of(), left, profile.name());
                }
            }
        }
    }
}
