package ampersheet.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.render.html.HtmlPage;
import ampersheet.render.markdown.MarkdownPage;
import ampersheet.render.text.TerminalText;
import ampersheet.sheet.Document;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** In another language no renderer adds a word of English. */
class ForeignLanguageTest {
    private static final List<Document> DOCUMENTS =
            List.of(ForeignLanguage.of(SampleDocuments.sheet()), ForeignLanguage.of(SampleDocuments.key()));

    @Test
    void aPageHasNoWordOfEnglishBesidesItsDocuments() {
        for (Document document : DOCUMENTS) {
            assertEquals(Set.of(), ForeignLanguage.english(document, HtmlPage.render(document)));
        }
    }

    @Test
    void norHasMarkdown() {
        for (Document document : DOCUMENTS) {
            assertEquals(Set.of(), ForeignLanguage.english(document, MarkdownPage.render(document)));
        }
    }

    @Test
    void norHasATerminal() {
        for (Document document : DOCUMENTS) {
            String text = new TerminalText(document.language(), true)
                    .blocks(document.blocks())
                    .toString();
            assertEquals(Set.of(), ForeignLanguage.english(document, text));
        }
    }
}
