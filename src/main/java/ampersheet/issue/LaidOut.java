package ampersheet.issue;

import ampersheet.render.pdf.PdfBook;
import ampersheet.render.pdf.Profile;
import ampersheet.sheet.ArchivedSheet;
import ampersheet.sheet.CheckLetters;
import ampersheet.sheet.ClassAnswers;
import ampersheet.sheet.ClassIndex;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.HostPage;
import ampersheet.sheet.Plan;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SharedExamples;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Sheets and keys that are on their pages, and what is known of them, before anything is written. */
final class LaidOut {
    /** Where a sheet has no name it has room for one. */
    private static final String TO_WRITE_ON = "______________________________";

    private static final String ON_HALF_A_LEAF = "__________________";

    private final SheetMaker maker;
    private final Handouts.Wish wish;
    /** What is not folded is printed on. */
    private final Document.Paper leaf;

    private final PdfBook sheets;
    private final PdfBook keys;
    private final Keeping keeping;
    private final HostPage host;
    private final List<ArchivedSheet> kept = new ArrayList<>();
    private final List<ClassAnswers.Row> rows = new ArrayList<>();
    private final List<AnswerGrid.Line> grid = new ArrayList<>();
    private Optional<Sheet> first = Optional.empty();
    private int least = Integer.MAX_VALUE;
    private int most;
    private int all;
    private int keySides;

    /** @param keys the book for keys; it may be that of the sheets */
    LaidOut(SheetMaker maker, Handouts.Wish wish, PdfBook sheets, PdfBook keys, Keeping keeping) {
        this.maker = maker;
        this.wish = wish;
        this.leaf = wish.paper().leaf();
        this.sheets = sheets;
        this.keys = keys;
        this.keeping = keeping;
        this.host = new HostPage(maker.plan());
    }

    List<ArchivedSheet> kept() {
        return List.copyOf(kept);
    }

    /** Lines of the table to type answers into. */
    List<AnswerGrid.Line> grid() {
        return List.copyOf(grid);
    }

    void add(Roster.Seat seat) {
        Sheet sheet = maker.sheet(seat.number());
        grid.add(AnswerGrid.Line.of(ClassIndex.line(seat, sheet, List.of())));
        first = first.or(() -> Optional.of(sheet));
        kept.add(keeping.keep(sheet));
        host.add(sheet);
        int sides = taken(sheets, document(sheet, seat, wish.profile()));
        least = Math.min(least, sides);
        most = Math.max(most, sides);
        all += sides;
        if (wish.keys() == Handouts.Keys.GRID) {
            rows.add(ClassAnswers.row(seat, sheet, wish.checkLetters()));
        } else if (wish.keys() != Handouts.Keys.NONE) {
            keySides += taken(
                    keys,
                    Composer.key(sheet, seat.name(), wish.profile().widestDrawing(leaf))
                            .on(leaf));
        }
    }

    private Document document(Sheet sheet, Roster.Seat seat, Profile profile) {
        String rule = wish.paper().isFolded() ? ON_HALF_A_LEAF : TO_WRITE_ON;
        String name =
                seat.name().isEmpty() ? sheet.plan().language().say("problem.handout.name", "rule", rule) : seat.name();
        Document document =
                Composer.sheet(sheet, name, profile.widestDrawing(wish.paper())).on(wish.paper());
        Document lettered = wish.checkLetters() ? CheckLetters.addedTo(document, sheet) : document;
        return wish.sharedExamples() ? SharedExamples.without(lettered) : lettered;
    }

    private static int taken(PdfBook book, Document document) {
        int before = book.sides();
        book.add(document);
        return book.sides() - before;
    }

    /** Adds what is made of all sheets together. */
    PaperCount finish(Path workingFolder) {
        Plan plan = maker.plan();
        for (int from = 0; from < rows.size(); from += ClassAnswers.MOST_LEARNERS) {
            int to = Math.min(rows.size(), from + ClassAnswers.MOST_LEARNERS);
            keySides +=
                    taken(keys, ClassAnswers.of(plan, rows.subList(from, to)).on(leaf));
        }
        int examples = examples();
        PaperCount count = new PaperCount(
                kept.size(),
                least,
                most,
                all,
                new PaperCount.Besides(keySides, 0, examples),
                compact(workingFolder),
                wish.paper().isFolded());
        if (!wish.host()) {
            return count;
        }
        PaperCount whole = count.withHost(
                sides(host.page(count.sentence(plan.language()), wish.checkLetters()), wish.profile(), workingFolder));
        PdfBook before = wish.paper().isFolded() ? keys : sheets;
        int sides = before.sides();
        before.addFirst(
                host.page(whole.sentence(plan.language()), wish.checkLetters()).on(leaf));
        return count.withHost(before.sides() - sides);
    }

    /** Sides of the examples for all, which come before the sheets. */
    private int examples() {
        if (!wish.sharedExamples() || first.isEmpty()) {
            return 0;
        }
        int before = sheets.sides();
        SharedExamples.of(Composer.sheet(first.get(), "", wish.profile().widestDrawing(wish.paper())))
                .ifPresent(examples -> sheets.addFirst(examples.on(wish.paper())));
        return sheets.sides() - before;
    }

    /** Sides of the first sheet in the compact profile. */
    private Optional<Integer> compact(Path workingFolder) {
        if (wish.profile() == Profile.COMPACT) {
            return Optional.empty();
        }
        return first.map(sheet -> {
            Roster.Seat seat = new Roster.Seat(sheet.id().seat(), "");
            return sides(document(sheet, seat, Profile.COMPACT), Profile.COMPACT, workingFolder);
        });
    }

    /** Of a document that is only measured. */
    private int sides(Document document, Profile profile, Path workingFolder) {
        try (PdfBook book = new PdfBook(document.title(), document.language(), profile, wish.extra(), workingFolder)) {
            return taken(book, document.on(leaf));
        }
    }
}
