package ampersheet.issue;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.render.pdf.PdfBook;
import ampersheet.sheet.BenchCards;
import ampersheet.sheet.BenchCards.LeftOut;
import ampersheet.sheet.Document;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A plan and a number of learners become one PDF of bench cards, with a leaf for the host in front. */
public final class BenchCardFile {
    private BenchCardFile() {}

    /**
     * What was printed.
     *
     * @param cards how many
     * @param sides of paper, printed on one side so that each card can be cut out
     * @param left cards that were not made, each with the reason
     */
    public record Printed(int cards, int sides, Path file, int written, List<LeftOut> left) {
        public Printed {
            left = List.copyOf(left);
        }
    }

    /**
     * The file is whole or not there; the same inputs give the same bytes.
     *
     * @param set with the bins of the workshop, if the cards shall be made from them
     * @param terms with what is found in the place of the file
     * @throws DiagnosticException with all faults of plan and templates, if a name has letters that cannot be printed,
     *     if the file cannot be written, or if there is nothing to lay out
     */
    public static Printed print(ProblemSet set, Roster learners, Path out, Handouts.Wish wish, Output.Terms terms) {
        Roster roster = set.sitting(learners);
        Plan plan = set.plan();
        Handouts.requirePrintable(plan, roster, wish.extra());
        BenchCards cards = new BenchCards(set, roster);
        List<Double> widths = PdfBook.cardWidths(wish.profile(), wish.paper());
        Map<String, List<String>> tooLong = new TreeMap<>();
        int count = 0;
        try (Output output = Output.file(out, ".pdf", terms);
                PdfBook book = new PdfBook(
                        plan.language().say("sheet.card.title", "title", plan.title()),
                        plan.language(),
                        wish.profile(),
                        wish.extra(),
                        output.folder())) {
            output.require(List.of(out));
            for (Roster.Seat seat : roster.seats()) {
                List<Document> bySize = cards.of(seat, widths).stream()
                        .map(document -> document.on(wish.paper()))
                        .toList();
                List<String> without = book.addCards(bySize);
                count += bySize.get(0).blocks().size() - without.size();
                for (String number : without) {
                    tooLong.computeIfAbsent(title(bySize.get(0), number), name -> new ArrayList<>())
                            .add(plan.language().say("problem.handout.seat", "seat", Integer.toString(seat.number())));
                }
                terms.progress().made(say("folder.making.cards"), roster.seats().size());
            }
            List<LeftOut> left = new ArrayList<>(cards.leftOut());
            tooLong.forEach((title, seats) -> left.add(cards.tooLong(title, seats)));
            if (count == 0) {
                throw new DiagnosticException(nothing(plan, left));
            }
            book.addBeforeCards(cards.leaf(left).on(wish.paper()));
            int written = output.write(out, book::write) ? 1 : 0;
            output.finish();
            return new Printed(count, book.sides(), out, written, left);
        }
    }

    private static String title(Document cards, String number) {
        return cards.blocks().stream()
                .map(block -> (Document.ProblemBlock) block)
                .filter(card -> card.number().equals(number))
                .findFirst()
                .orElseThrow()
                .title();
    }

    private static List<Diagnostic> nothing(Plan plan, List<LeftOut> left) {
        List<Diagnostic> told = new ArrayList<>(List.of(Diagnostic.error(
                Place.inFile(plan.file()),
                say("folder.cards.none"),
                say("folder.cards.none.expected"),
                say("folder.cards.none.next"))));
        left.forEach(one -> told.add(Diagnostic.error(
                Place.inFile(plan.file()),
                say("folder.cards.left-out", "template", one.template(), "because", one.because()),
                "",
                "")));
        return told;
    }
}
