package ampersheet.marking;

import ampersheet.figure.BarFigure;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import ampersheet.sheet.MarkingPolicy;
import ampersheet.sheet.Plan;
import ampersheet.sheet.Roster;
import ampersheet.source.Languages;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;

/** The instructor's page: how the class did, what went wrong and why, which questions to look at, what came in. */
final class ClassReport {
    private static final int CLASSES_OF_MARKS = 10;
    /** Single learners are compared from here on (common practice). */
    private static final double RANKED = 0.80;

    private static final int MOST_BARS = 15;

    private final MarkingPolicy policy;
    private final ClassResults results;
    private final Tomorrow tomorrow;
    private final CameIn came;
    private final Optional<List<MarkChange>> changes;
    private final List<ChangedVerdict.Of> corrected;
    private final Privacy privacy;
    private final List<Block> blocks = new ArrayList<>();

    /**
     * What came in.
     *
     * @param absent seats of which nothing could be marked
     * @param setAside answers that do not count
     * @param toDecide what waits for the instructor's decision
     * @param matters what is told of it and of who handed in
     */
    record CameIn(List<FileNote> files, int absent, int setAside, int toDecide, List<Block> matters) {
        CameIn {
            files = List.copyOf(files);
            matters = List.copyOf(matters);
        }
    }

    private ClassReport(
            MarkingPolicy policy,
            ClassResults results,
            Tomorrow tomorrow,
            CameIn came,
            Optional<List<MarkChange>> changes,
            List<ChangedVerdict.Of> corrected,
            Privacy privacy) {
        this.policy = policy;
        this.tomorrow = tomorrow;
        this.corrected = corrected;
        this.results = results;
        this.came = came;
        this.changes = changes;
        this.privacy = privacy;
    }

    /**
     * Composes it.
     *
     * @param changes empty if no earlier marks were given
     * @param corrected answers that a correction of a key makes worth more or less
     */
    static Document compose(
            Plan plan,
            ClassResults results,
            Tomorrow tomorrow,
            CameIn came,
            Optional<List<MarkChange>> changes,
            List<ChangedVerdict.Of> corrected,
            Privacy privacy) {
        ClassReport report = new ClassReport(plan.marking(), results, tomorrow, came, changes, corrected, privacy);
        int absent = came.absent();
        report.write();
        int learners = results.standings().size();
        return new Document(
                Kind.REPORT,
                plan.language(),
                "Class report: " + plan.title(),
                Amounts.count(learners, "learner", "learners")
                        + (absent == 0
                                ? ""
                                : ", nothing that could be marked from " + Amounts.count(absent, "seat", "seats")),
                "",
                plan.paper(),
                report.blocks);
    }

    private void write() {
        blocks.add(new Prose("For the instructor: this page holds marks" + (privacy.isOn() ? "" : " and names") + "."));
        if (!results.standings().isEmpty()) {
            blocks.addAll(tomorrow.blocks());
            toDecide();
        }
        blocks.addAll(came.matters());
        if (results.standings().isEmpty()) {
            blocks.add(new Prose("Nothing that came in could be marked."));
            files();
            return;
        }
        corrected();
        marks();
        mistakes();
        patterns();
        blocks.addAll(QuestionReport.of(results));
        changes.ifPresent(this::changes);
        learners();
        files();
    }

    private void toDecide() {
        if (came.toDecide() > 0) {
            blocks.add(new Prose("**" + Amounts.count(came.toDecide(), "matter waits", "matters wait")
                    + " for your decision** and "
                    + (came.toDecide() == 1 ? "earns" : "earn") + " nothing until then: see the next heading."));
        }
    }

    // Marks

    private void marks() {
        blocks.add(new Heading(2, "Marks"));
        DescriptiveStatistics shares = new DescriptiveStatistics();
        int[] classes = new int[CLASSES_OF_MARKS];
        for (Standing standing : results.standings()) {
            double share = ClassResults.share(standing);
            shares.addValue(share);
            classes[Math.min(CLASSES_OF_MARKS - 1, (int) (share * CLASSES_OF_MARKS + 1e-9))]++;
        }
        blocks.add(new Prose(
                "The median is **" + Amounts.percent(shares.getPercentile(50)) + "** of the marks (half of the class "
                        + "has as much or more, half as much or less), "
                        + "the mean is " + Amounts.percent(shares.getMean()) + ", the lowest "
                        + Amounts.percent(shares.getMin())
                        + ", the highest " + Amounts.percent(shares.getMax()) + ". " + grades() + reliability()));
        List<BarFigure.Bar> bars = new ArrayList<>();
        for (int i = 0; i < CLASSES_OF_MARKS; i++) {
            String name = i == CLASSES_OF_MARKS - 1 ? "90 to 100 %" : 10 * i + " % to below " + 10 * (i + 1) + " %";
            bars.add(new BarFigure.Bar(name, classes[i], Integer.toString(classes[i])));
        }
        blocks.add(new FigureBlock(BarFigure.draw(
                "How the marks are spread", "learners", "share of the marks", bars, "marks", Languages.ENGLISH)));
    }

    /** How many have each grade; nothing where the plan has none. */
    private String grades() {
        List<String> told = new ArrayList<>();
        for (MarkingPolicy.Grade grade : policy.grades()) {
            long learners = results.standings().stream()
                    .filter(standing -> policy.grade(standing.percent())
                            .filter(grade.name()::equals)
                            .isPresent())
                    .count();
            told.add(Statement.escape(grade.name()) + ": " + learners);
        }
        return told.isEmpty() ? "" : "Grades: " + String.join(", ", told) + ". ";
    }

    private String reliability() {
        return results.reliability()
                .map(found -> "Reliability over the " + found.parts() + " problems (coefficient alpha): "
                        + Amounts.decimal(found.alpha(), 2) + ", 95 % interval " + Amounts.decimal(found.low(), 2)
                        + " to "
                        + Amounts.decimal(found.high(), 2) + "; a learner's share of the marks is uncertain by about ±"
                        + Amounts.percent(found.error())
                        + " (one standard error). "
                        + (found.alpha() < RANKED ? "Do not rank learners by this sheet. " : "")
                        + "Groups are usually compared from 0.70 on, single "
                        + "learners from 0.80 on (common practice).")
                .orElse("Reliability: not defined (it needs three problems and three learners whose totals differ).");
    }

    // Mistakes

    private void mistakes() {
        blocks.add(new Heading(2, "What went wrong, and why"));
        List<MistakeCount.OfProblem> problems = MistakeCount.of(results.standings());
        if (problems.isEmpty()) {
            blocks.add(new Prose("Nothing: no answer that could be read was wrong."));
            return;
        }
        blocks.add(new Prose("A wrong answer is explained where it is what a known wrong method or slip gives with "
                + "that learner's "
                + "own numbers. What follows rightly from an earlier wrong answer counts as right. Open "
                + "places and unreadable answers are not among the wrong ones."));
        bars(problems);
        Map<String, String> names = results.problemNames();
        names.forEach((template, name) -> problems.stream()
                .filter(problem -> problem.template().equals(template))
                .forEach(problem -> blocks.add(table(problem, name))));
    }

    private Table table(MistakeCount.OfProblem problem, String name) {
        List<List<Cell>> rows = new ArrayList<>();
        for (MistakeCount count : problem.found()) {
            rows.add(cells(
                    count.cause().label(),
                    count.cause().says(),
                    Integer.toString(count.learners()),
                    Integer.toString(count.matches()),
                    Amounts.percent(count.share())));
        }
        rows.add(cells(
                "unexplained",
                "–",
                "–",
                Integer.toString(problem.unexplained()),
                Amounts.percent((double) problem.unexplained() / problem.wrong())));
        return new Table(
                "Problem " + name + ": " + results.title(problem.template()) + ", "
                        + Amounts.count(problem.wrong(), "wrong answer", "wrong answers"),
                List.of("Mistake", "What is said to the learner", "Learners", "Answers", "Share"),
                rows);
    }

    private void bars(List<MistakeCount.OfProblem> problems) {
        Map<String, String> names = results.problemNames();
        List<MistakeCount> all = new ArrayList<>();
        problems.forEach(problem -> all.addAll(problem.found()));
        all.sort(Comparator.comparingInt(MistakeCount::learners).reversed());
        List<BarFigure.Bar> bars = all.stream()
                .limit(MOST_BARS)
                .map(count -> new BarFigure.Bar(
                        "Problem " + names.get(count.template()) + ": "
                                + count.cause().label(),
                        count.learners(),
                        Integer.toString(count.learners())))
                .toList();
        if (!bars.isEmpty()) {
            blocks.add(new FigureBlock(BarFigure.draw(
                    "The most frequent mistakes",
                    "learners who met it",
                    "problem and mistake",
                    bars,
                    "mistakes",
                    Languages.ENGLISH)));
        }
    }

    private void patterns() {
        List<List<Cell>> rows = new ArrayList<>();
        int hypotheses = 0;
        for (Standing standing : results.standings()) {
            for (Diagnosis diagnosis : Diagnosis.of(standing)) {
                if (diagnosis.isPattern()) {
                    rows.add(List.of(
                            text(privacy.seat(standing.seat())),
                            text(diagnosis.cause().label()),
                            text(diagnosis.cause().says()),
                            new Cell(
                                    "problems " + FeedbackPage.joined(diagnosis.problems()),
                                    Marking.feedback(standing.seat()))));
                } else {
                    hypotheses++;
                }
            }
        }
        blocks.add(new Heading(2, "Patterns"));
        blocks.add(new Prose("One match is a hypothesis: it may be chance, and wrong ideas come and go. "
                + Amounts.count(hypotheses, "hypothesis stands", "hypotheses stand")
                + " on the feedback pages. Only the same cause in "
                + "two different problems of one learner is called a pattern; "
                + (rows.isEmpty() ? "there is none." : "a word with these learners will help.")));
        if (!rows.isEmpty()) {
            blocks.add(new Table(
                    "The same cause in two problems or more",
                    List.of("Learner", "Cause", "What is said", "Where"),
                    rows));
        }
    }

    // Learners and files

    private void changes(List<MarkChange> changed) {
        blocks.add(new Heading(2, "Marks that changed"));
        if (changed.isEmpty()) {
            blocks.add(new Prose("None, against the marks of the earlier run."));
            return;
        }
        List<List<Cell>> rows = new ArrayList<>();
        for (MarkChange change : changed) {
            List<Cell> row = seat(change.seat());
            row.addAll(cells(change.before().isEmpty() ? "none" : change.before(), change.now()));
            rows.add(row);
        }
        blocks.add(new Table("Against the earlier run", head("Before", "Now"), rows));
    }

    private void corrected() {
        if (corrected.isEmpty()) {
            return;
        }
        blocks.add(new Heading(2, "Verdicts that a correction changes"));
        blocks.add(new Prose(
                "These keys were corrected after the sheets had been issued. The marks on this page are by the "
                        + "corrected "
                        + "keys; *before* is what the issued key would have said."));
        List<List<Cell>> rows = new ArrayList<>();
        for (ChangedVerdict.Of of : corrected) {
            List<Cell> row = seat(of.seat());
            row.addAll(cells(
                    of.change().question(),
                    results.title(of.change().template()),
                    privacy.typed(of.change().now()),
                    of.change().toldBefore(),
                    of.change().toldNow()));
            rows.add(row);
        }
        blocks.add(new Table(
                "Answers that are worth more or less now",
                head("Question", "Problem", "Answer", "Before", "Now"),
                rows));
    }

    private void learners() {
        blocks.add(new Heading(2, "The learners"));
        List<List<Cell>> rows = new ArrayList<>();
        for (Standing standing : results.standings()) {
            List<Cell> row = seat(standing.seat());
            row.addAll(cells(
                    Amounts.marks(standing.marks()) + " of " + Amounts.marks(standing.mostMarks()),
                    Amounts.percent(ClassResults.share(standing)),
                    Long.toString(standing.count(Credit.BLANK)),
                    Long.toString(standing.late())));
            row.add(new Cell("feedback", Marking.feedback(standing.seat())));
            rows.add(row);
        }
        blocks.add(new Table("", head("Marks", "Share", "Open", "Late", "Page"), rows));
    }

    /** Without a column for names where none may be printed. */
    private List<String> head(String... columns) {
        List<String> head = new ArrayList<>(privacy.isOn() ? List.of("Seat") : List.of("Seat", "Name"));
        head.addAll(List.of(columns));
        return head;
    }

    private List<Cell> seat(Roster.Seat seat) {
        String number = Integer.toString(seat.number());
        return privacy.isOn() ? cells(number) : cells(number, seat.name());
    }

    private void files() {
        blocks.add(new Heading(2, "What came in"));
        List<FileNote> noted = came.files().stream()
                .filter(file -> file.isLate() || !file.notes().isEmpty() || file.marked() == 0)
                .toList();
        blocks.add(new Prose(Amounts.count(came.files().size(), "file", "files") + "; "
                + (noted.isEmpty()
                        ? "all of them are marked in full and none is late."
                        : Amounts.count(noted.size(), "needs", "need") + " a look. files.csv lists all of them.")
                + (came.setAside() == 0
                        ? ""
                        : " " + Amounts.count(came.setAside(), "answer", "answers")
                                + " did not count; set-aside.csv keeps " + (came.setAside() == 1 ? "it." : "them."))));
        if (!noted.isEmpty()) {
            blocks.add(new Table(
                    "Files to look at",
                    List.of("File", "Marked", "What became of it", "Notes"),
                    noted.stream()
                            .map(file -> cells(
                                    file.shown(),
                                    Integer.toString(file.marked()),
                                    file.fate() + (file.isLate() ? ", late" : ""),
                                    notes(file)))
                            .toList()));
        }
    }

    private static String notes(FileNote file) {
        return String.join(
                "; ",
                file.notes().stream()
                        .map(note -> (note.place().line() == 0
                                        ? ""
                                        : "line " + note.place().line() + ": ")
                                + note.problem())
                        .toList());
    }

    static List<Cell> cells(String... texts) {
        List<Cell> cells = new ArrayList<>();
        for (String text : texts) {
            cells.add(text(text));
        }
        return cells;
    }

    private static Cell text(String text) {
        return new Cell(text, "");
    }
}
