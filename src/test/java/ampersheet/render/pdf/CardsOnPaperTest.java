package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.sheet.BenchCards;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.source.Languages;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CardsOnPaperTest {
    private static final Roster.Seat ADA = new Roster.Seat(1, "Ada");
    private static final String PLAN = """
      title: Lanterns
      seed: cards
      problems:
        - {template: current-limiting/one-indicator}
        - {template: voltage-dividers/loaded-divider}
        - {template: current-limiting/transistor-switch}
        - {template: thermal-rise/heat-sink}
      """;

    @TempDir
    private Path folder;

    private static BenchCards cards() {
        ProblemSet set = ProblemSet.of(
                PlanReader.read("plan.yaml", PLAN), new TemplateLibrary(List.of(TemplateFiles.builtIn())));
        return new BenchCards(set, new Roster(List.of(ADA)));
    }

    private byte[] book(Profile profile) throws IOException {
        BenchCards cards = cards();
        try (PdfBook book = new PdfBook("Cards", Languages.ENGLISH, profile, Optional.empty(), folder)) {
            book.addCards(cards.of(ADA, PdfBook.cardWidths(profile, Paper.A4)));
            book.addBeforeCards(cards.leaf(cards.leftOut()));
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            book.write(out);
            return out.toByteArray();
        }
    }

    @Test
    void cardsAndTheLeafForTheHostPassTheCheckerOfPdfUa() throws Exception {
        Accessible.check(book(Profile.REGULAR));
    }

    @Test
    void aCardTakesTheSmallestSizeThatHoldsItAndItsFigureStandsInsideIt() {
        List<Document> bySize = cards().of(ADA, PdfBook.cardWidths(Profile.REGULAR, Paper.A4));
        List<List<CardMarkup>> trials = CardMarkup.trials(bySize, Profile.REGULAR);
        assertEquals(CardSize.QUARTER, trials.get(0).get(0).size());
        int before = 0;
        for (List<CardMarkup> trial : trials) {
            for (CardMarkup card : trial) {
                assertTrue(card.size().ordinal() >= before, "a smaller size after a larger one");
                before = card.size().ordinal();
                double inside = card.size().inside(Paper.A4) + 0.01;
                card.block().blocks().stream()
                        .filter(Document.FigureBlock.class::isInstance)
                        .map(figure -> FigureSize.onCard(((Document.FigureBlock) figure).figure(), card, Paper.A4))
                        .forEach(size -> assertTrue(size.width() <= inside, size + " on " + card.size()));
            }
        }
    }
}
