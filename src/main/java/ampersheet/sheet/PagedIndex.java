package ampersheet.sheet;

import ampersheet.language.Language;
import ampersheet.problem.Tally;
import ampersheet.sheet.ClassIndex.Line;
import ampersheet.sheet.ClassIndex.SharedRows;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The instructor's pages of a large class: who has which sheet and all answers, some hundred seats on each, and a front
 * page that leads to them and tells what is about all. Pages are asked for in their order, then the front page.
 */
public final class PagedIndex {
    /** A larger class has more than one page. */
    public static final int SEATS = 500;

    /** So many seats with the same problem are named; the more a class has, the less does anybody read them all. */
    private static final int MOST_NAMED = 10;

    private final ProblemSet set;
    private final SharedProblems shared;
    private final String front;
    private final int seats;
    private final Language language;

    private final List<List<Cell>> told = new ArrayList<>();
    private final SortedSet<String> cautions = new TreeSet<>();
    private Optional<SheetId> first = Optional.empty();
    private int sharing;
    private int sharedProblems;

    /**
     * @param front name of the front page's file
     * @param seats of the class
     */
    public PagedIndex(ProblemSet set, SharedProblems shared, String front, int seats) {
        this.set = set;
        this.shared = shared;
        this.front = front;
        this.seats = seats;
        this.language = set.plan().language();
    }

    /** How many pages there are besides the front page; none of a class that fits on it. */
    public static int pages(int seats) {
        return seats <= SEATS ? 0 : (seats + SEATS - 1) / SEATS;
    }

    /** @param front {@code index.html}; @return {@code index-1.html} */
    public static String fileName(String front, int page) {
        int dot = front.lastIndexOf('.');
        return front.substring(0, dot) + "-" + page + front.substring(dot);
    }

    /** @param lines of the next page */
    public Document page(List<Line> lines) {
        int number = told.size() + 1;
        this.first = this.first.or(() -> Optional.of(lines.get(0).id()));
        String first = Integer.toString(lines.get(0).seat().number());
        String last = Integer.toString(lines.get(lines.size() - 1).seat().number());
        told.add(List.of(
                link(language.say("sheet.index.pages.link", "number", Integer.toString(number)), number),
                ClassIndex.text(first + "–" + last),
                ClassIndex.text(Integer.toString(lines.size()))));
        lines.forEach(line -> cautions.addAll(line.cautions()));
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Prose(language.say("sheet.index.about")));
        blocks.add(ways(number));
        blocks.add(ClassIndex.classTable(lines, language));
        SharedRows here = SharedRows.of(lines, shared, MOST_NAMED, language);
        if (!here.rows().isEmpty()) {
            sharing += here.learners();
            sharedProblems += here.rows().size();
            blocks.add(here.table(language.say("sheet.index.shared.heading"), language));
        }
        blocks.add(ClassIndex.answersTable(lines, language));
        return document(
                language.say(
                        "sheet.index.pages.subtitle",
                        "first",
                        first,
                        "last",
                        last,
                        "number",
                        Integer.toString(number),
                        "pages",
                        Integer.toString(pages(seats))),
                blocks);
    }

    /** Back to the front page, and to the pages beside this. */
    private Table ways(int number) {
        List<Cell> ways = new ArrayList<>(List.of(new Cell(language.say("sheet.index.pages.overview"), front)));
        if (number > 1) {
            ways.add(link(language.say("sheet.index.pages.before"), number - 1));
        }
        if (number < pages(seats)) {
            ways.add(link(language.say("sheet.index.pages.next"), number + 1));
        }
        return new Table(
                "",
                List.of(language.say("sheet.index.pages")),
                ways.stream().map(List::of).toList());
    }

    private Cell link(String text, int page) {
        return new Cell(text, fileName(front, page));
    }

    /** When all pages have been made. */
    public Document front(Map<String, Tally> tallies) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Prose(language.say("sheet.index.about")));
        blocks.add(new Table(
                language.say("sheet.index.pages"),
                List.of(
                        language.say("sheet.index.pages.page"),
                        language.say("sheet.index.pages.seats"),
                        language.say("sheet.index.pages.learners")),
                told));
        if (sharedProblems > 0) {
            blocks.add(new Heading(2, language.say("sheet.index.shared.heading")));
            blocks.add(SharedRows.about(seats, sharing, sharedProblems, shared.nearest(), language));
        }
        ClassIndex.addEnd(set, first.orElseThrow(), cautions, tallies, blocks);
        return document(language.count("sheet.head.sheets", seats), blocks);
    }

    private Document document(String subtitle, List<Block> blocks) {
        return new Document(
                Kind.INDEX,
                language,
                set.plan().title(),
                subtitle,
                "",
                set.plan().paper(),
                blocks);
    }
}
