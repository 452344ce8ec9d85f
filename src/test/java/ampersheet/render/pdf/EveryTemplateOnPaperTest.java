package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.render.pdf.PrintedTag.Letter;
import ampersheet.sheet.CheckLetters;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.source.Languages;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Where everything stands on the pages of every template, on both papers, for all readers: read back from the file by
 * another reader of PDF, which knows nothing of how the pages were planned. A build looks at one kind of page of each
 * handout in turn, {@code -Pdeep} at all of them.
 */
class EveryTemplateOnPaperTest {
    private static final TemplateFiles FILES = TemplateFiles.builtIn();
    private static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(FILES));
    private static final double POINTS_PER_MILLIMETRE = 72 / 25.4;
    /** What a page holds besides letters: lines of drawings and boxes, and space that a break takes away. */
    private static final double NOT_LETTERS = 25 * POINTS_PER_MILLIMETRE;

    private static final boolean ALL = Boolean.getBoolean("ampersheet.deep");

    /** In points; wider than any letter. */
    private static final double CELL = 20;

    private final List<String> faults = new ArrayList<>();

    @Test
    void sheetsAreDividedWhereItHurtsLeast() throws IOException {
        int handouts = 0;
        int pages = 0;
        for (String template : ChosenTemplates.of(FILES)) {
            String twin = handouts % 2 == 0 ? "bare" : "faded";
            for (String entry : List.of(
                    "{template: " + template + "}",
                    "{template: " + template + ", example: yes, support: " + twin + "}")) {
                for (Profile profile : Profile.values()) {
                    for (Paper paper : Paper.values()) {
                        if (paper.isFolded() && profile != Profile.COMPACT || !inTurn(pages++)) {
                            continue;
                        }
                        Sheet sheet = sheet(entry);
                        Document document = Composer.sheet(sheet, "Ada", profile.widestDrawing(paper))
                                .on(paper);
                        boolean alone = sheet.problems().size() == 1;
                        look(
                                profile,
                                alone ? CheckLetters.addedTo(document, sheet) : document,
                                entry + " " + profile + " " + paper);
                    }
                }
            }
            handouts++;
        }
        assertEquals(List.of(), faults, faults.size() + " faults");
        assertTrue(handouts > 0, "no template was looked at");
    }

    @Test
    void keysAreDividedBetweenRowsAndSteps() throws IOException {
        int pages = 0;
        for (String template : ChosenTemplates.of(FILES)) {
            for (Profile profile : Profile.values()) {
                if (!inTurn(pages++)) {
                    continue;
                }
                Sheet sheet = sheet("{template: " + template + "}");
                Paper paper = profile == Profile.LARGE ? Paper.LETTER : Paper.A4;
                look(
                        profile,
                        Composer.key(sheet, "Ada", profile.widestDrawing(paper)).on(paper),
                        "key of " + template + " " + profile);
            }
        }
        assertEquals(List.of(), faults, faults.size() + " faults");
    }

    /**
     * One in 101: prime to the number of kinds of page, so that each template comes in another kind than the one before
     * it.
     */
    private static boolean inTurn(int page) {
        return ALL || page % 101 == 0;
    }

    private static Sheet sheet(String entry) {
        String plan = "title: On paper\nproblems:\n  - " + entry + "\n";
        return new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", plan), LIBRARY)).sheet(1);
    }

    private void look(Profile profile, Document document, String where) throws IOException {
        PrintedTag handout = PrintedTag.read(PdfBookTest.book(profile, document));
        double page = PrintStyle.textHeight(document.paper(), profile) * POINTS_PER_MILLIMETRE;
        headingsHaveSomethingBelow(handout, where);
        handout.forEach("LI|TR", part -> check(part.onOnePage(), where, "is divided", part));
        lettersStandClear(handout, profile, document.paper(), where);
        linesBeginWell(handout, where);
        pagesAreEmptyOnlyBeforeProblems(handout, where);
        List<PrintedTag> problems = handout.all("H2")
                .filter(heading -> heading.text().matches("\\d.*"))
                .map(heading -> heading.parent.parent)
                .toList();
        check(!problems.isEmpty(), where, "has no problem", handout);
        if (document.kind() == Document.Kind.SHEET && profile == Profile.COMPACT) {
            packed(handout, problems, document, where);
        } else if (document.kind() == Document.Kind.SHEET) {
            problems.forEach(problem -> problem(problem, page, where));
            for (int i = 1; i < problems.size(); i++) {
                PrintedTag example = problems.get(i - 1);
                PrintedTag twin = problems.get(i);
                check(
                        !example.onOnePage() || !twin.onOnePage() || example.firstPage() / 2 == twin.firstPage() / 2,
                        where,
                        "lies not beside its example",
                        twin);
            }
        }
    }

    private void headingsHaveSomethingBelow(PrintedTag handout, String where) {
        List<PrintedTag> all = handout.all()
                .filter(tag -> tag.type.isEmpty() && !tag.letters().isEmpty())
                .toList();
        for (int i = 0; i < all.size(); i++) {
            PrintedTag tag = all.get(i);
            if (tag.parent.type.matches("H[1-6]")) {
                check(i + 1 < all.size() && tag.lastPage() == all.get(i + 1).firstPage(), where, "stands alone", tag);
                check(
                        i + 1 == all.size()
                                || tag.lastPage() < all.get(i + 1).firstPage()
                                || tag.letters().get(0).y()
                                        <= all.get(i + 1).letters().get(0).y(),
                        where,
                        "is read after what stands below it",
                        tag);
            }
        }
    }

    private void problem(PrintedTag problem, double page, String where) {
        PrintedTag opening = problem.inside.get(0);
        check(opening.inside.get(0).type.equals("H2"), where, "does not begin with a heading", problem);
        check(
                opening.onOnePage() || opening.height() + NOT_LETTERS > page,
                where,
                "is parted from its figure in vain, " + (int) opening.height() + " points of " + (int) page,
                problem);
        check(
                opening.inSight() || opening.lastPage() - opening.firstPage() > 1,
                where,
                "turns a leaf between words and figure, pages " + opening.firstPage() + " to " + opening.lastPage(),
                problem);
        check(problem.onOnePage() || problem.height() + NOT_LETTERS > page, where, "is divided in vain", problem);
        check(
                problem.inSight() || problem.lastPage() - problem.firstPage() > 1,
                where,
                "turns a leaf in vain",
                problem);
        problem.inside.stream()
                .skip(1)
                .filter(part -> part.type.equals("Div"))
                .forEach(part -> check(part.onOnePage(), where, "is divided", part));
    }

    /** Pages end where they were meant to, and what is kept together is on one of them. */
    private void packed(PrintedTag handout, List<PrintedTag> problems, Document document, String where)
            throws IOException {
        int planned;
        try (PdfBook book =
                new PdfBook("Tonight", Languages.ENGLISH, Profile.COMPACT, Optional.empty(), Path.of("target"))) {
            planned = book.markup(document)
                    .nodes()
                    .getElementsByTagName("body")
                    .item(0)
                    .getChildNodes()
                    .getLength();
        }
        int leaf = document.paper().isFolded() ? 4 : 2;
        boolean backToWorkOn = handout.lastPage() > planned - leaf && planned % leaf == 0;
        check(handout.lastPage() == planned || backToWorkOn, where, "spills over its " + planned + " pages", handout);
        problems.forEach(problem -> problem.inside.stream()
                .skip(1)
                .filter(part -> part.type.equals("Div"))
                .forEach(part -> check(part.onOnePage(), where, "is divided", part)));
    }

    /** Within the margins, and none on top of another. */
    private void lettersStandClear(PrintedTag handout, Profile profile, Paper paper, String where) {
        double left = (PrintStyle.width(paper) - PrintStyle.textWidth(paper, profile)) / 2 * POINTS_PER_MILLIMETRE;
        double right = left + PrintStyle.textWidth(paper, profile) * POINTS_PER_MILLIMETRE;
        double foot = (PrintStyle.height(paper) - profile.bottomMargin()) * POINTS_PER_MILLIMETRE;
        List<Letter> letters = handout.letters();
        Map<Integer, List<Letter>> cells = new HashMap<>();
        letters.forEach(letter -> cells.computeIfAbsent(cell(letter, 0, 0), cell -> new ArrayList<>())
                .add(letter));
        for (Letter letter : letters) {
            if (letter.x() < left - 1 || letter.x() + letter.width() > right + 1 || letter.y() > foot) {
                fault(where, "prints into the margin", letter);
            }
            for (int i = 0; i < 9; i++) {
                for (Letter other : cells.getOrDefault(cell(letter, i / 3 - 1, i % 3 - 1), List.of())) {
                    if (other != letter && overlap(letter, other)) {
                        fault(where, "prints over " + other, letter);
                    }
                }
            }
        }
    }

    private void pagesAreEmptyOnlyBeforeProblems(PrintedTag handout, String where) {
        int last = 1;
        for (PrintedTag tag : handout.all()
                .filter(tag -> tag.type.isEmpty() && !tag.letters().isEmpty())
                .toList()) {
            check(
                    tag.firstPage() <= last + 1 || tag.firstPage() == last + 2 && tag.parent.type.equals("H2"),
                    where,
                    "follows an empty page",
                    tag);
            last = tag.lastPage();
        }
    }

    /** Not with what ends a sentence, nor within a unit. */
    private void linesBeginWell(PrintedTag handout, String where) {
        handout.forEach("P|LBody", part -> {
            List<Letter> letters = part.letters();
            for (int i = 1; i < letters.size(); i++) {
                Letter before = letters.get(i - 1);
                Letter letter = letters.get(i);
                boolean nextLine = letter.y() > before.y() + before.size() && letter.x() < before.x();
                if (nextLine
                        && (".,;:?!)".contains(letter.text())
                                || before.text().equals("°") && letter.text().equals("C"))) {
                    fault(where, "begins a line", letter);
                }
            }
        });
    }

    private static int cell(Letter letter, int right, int down) {
        return (letter.page() * 100 + (int) (letter.y() / CELL) + down) * 100 + (int) (letter.x() / CELL) + right;
    }

    /** Of the middle of small letters, so that lines set close and accents do not count. */
    private static boolean overlap(Letter a, Letter b) {
        double across = Math.min(a.x() + a.width(), b.x() + b.width()) - Math.max(a.x(), b.x());
        double down = Math.min(a.y(), b.y()) - Math.max(a.y() - 0.45 * a.size(), b.y() - 0.45 * b.size());
        return across > 0.3 * Math.min(a.width(), b.width()) && down > 0.2 * Math.min(a.size(), b.size());
    }

    private void check(boolean right, String where, String fault, PrintedTag what) {
        if (!right) {
            String text = what.text();
            fault(where, fault, text.substring(0, Math.min(40, text.length())));
        }
    }

    private void fault(String where, String fault, Object what) {
        faults.add(where + ": \"" + what + "\" " + fault);
    }
}
