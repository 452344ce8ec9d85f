package ampersheet.issue;

import ampersheet.problem.Tally;
import ampersheet.render.html.HtmlPage;
import ampersheet.sheet.ClassIndex;
import ampersheet.sheet.PagedIndex;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SharedProblems;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * What is about all of a class: index, answer grid and archive. Seats are told one after another, in their order; no
 * more of them is held than stands on a page of the index.
 */
final class WholeClass implements AutoCloseable {
    private final Issue.Run run;
    private final SharedProblems shared;
    private final PagedIndex pages;
    private final int seats;
    private final Keeping.Writing archive;
    private final List<ClassIndex.Line> lines = new ArrayList<>();
    private final AnswerGrid.Columns columns = new AnswerGrid.Columns();
    private final NamesBySeat figures = new NamesBySeat();
    private int page;
    private int longest;
    private int written;

    WholeClass(Issue.Run run) {
        this.run = run;
        this.seats = run.roster().seats().size();
        this.shared = new SharedProblems(run.maker(), run.roster());
        this.pages = new PagedIndex(run.maker().set(), shared, Issue.INDEX, seats);
        this.archive = run.keeping().writing(run.output());
    }

    void add(Issue.Written seat) {
        lines.add(seat.line());
        longest = Math.max(longest, seat.line().problems().size());
        columns.add(AnswerGrid.Line.of(seat.line()));
        figures.addAll(seat.figures());
        archive.add(seat.kept().orElseThrow());
        if (PagedIndex.pages(seats) > 0 && lines.size() == PagedIndex.SEATS) {
            writePage();
        }
    }

    private void writePage() {
        page++;
        write(PagedIndex.fileName(Issue.INDEX, page), HtmlPage.render(pages.page(lines)));
        lines.clear();
    }

    private void write(String name, String text) {
        written += run.output().write(run.out().resolve(name), text) ? 1 : 0;
    }

    /** @param sheets files of seats that changed */
    Issue.Issued end(int sheets, Map<String, Tally> tallies, IssuedFolder folder) {
        if (PagedIndex.pages(seats) == 0) {
            write(Issue.INDEX, HtmlPage.render(ClassIndex.compose(run.maker().set(), lines, shared, tallies)));
        } else {
            if (!lines.isEmpty()) {
                writePage();
            }
            write(Issue.INDEX, HtmlPage.render(pages.front(tallies)));
        }
        removePagesOfALargerClass();
        Path grid = AnswerGrid.file(run.out(), Issue.code(run.maker().set()));
        written += AnswerGrid.write(columns, this::learners, grid, run.output());
        written += archive.finish();
        Issue.LeftOver left = folder.end(figures);
        run.output().finish();
        return new Issue.Issued(
                seats,
                longest,
                sheets + written,
                run.out().resolve(Issue.INDEX),
                run.keeping().file(),
                tallies,
                left);
    }

    /** They hold answers that are right no more. Pages of these names that somebody else has put there stay. */
    private void removePagesOfALargerClass() {
        for (int number = PagedIndex.pages(seats) + 1; Files.exists(page(number)); number++) {
            if (run.output().hasWritten(page(number))) {
                run.output().removeOld(page(number));
            }
        }
    }

    private Path page(int number) {
        return run.out().resolve(PagedIndex.fileName(Issue.INDEX, number));
    }

    private void learners(AnswerGrid.Learners to) throws IOException {
        for (Roster.Seat seat : run.roster().seats()) {
            to.learner(run.maker().set().id(seat.number()).toString(), seat);
        }
    }

    @Override
    public void close() {
        archive.close();
    }
}
