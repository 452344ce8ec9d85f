package ampersheet.marking;

import ampersheet.figure.BarFigure;
import ampersheet.figure.IntervalFigure;
import ampersheet.marking.Standing.Item;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import ampersheet.sheet.Plan;
import ampersheet.sheet.Roster;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;

/** The instructor's page: how the class did, what went wrong and why, which questions to look at, what came in. */
final class ClassReport {
    private static final int CLASSES_OF_MARKS = 10;
    private static final int MOST_BARS = 15;
    /** Usual wishes for a question: neither too hard nor too easy, and answered better by those who know more. */
    private static final double HARD = 0.3;

    private static final double EASY = 0.9;
    private static final double TELLING = 0.2;

    private final ClassResults results;
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
     * @param matters what comes before everything else
     */
    record CameIn(List<FileNote> files, int absent, int setAside, List<Block> matters) {
        CameIn {
            files = List.copyOf(files);
            matters = List.copyOf(matters);
        }
    }

    private ClassReport(
            ClassResults results,
            CameIn came,
            Optional<List<MarkChange>> changes,
            List<ChangedVerdict.Of> corrected,
            Privacy privacy) {
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
            CameIn came,
            Optional<List<MarkChange>> changes,
            List<ChangedVerdict.Of> corrected,
            Privacy privacy) {
        ClassReport report = new ClassReport(results, came, changes, corrected, privacy);
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
        questions();
        fairness();
        changes.ifPresent(this::changes);
        learners();
        files();
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
                "Half of the class has **" + Amounts.percent(shares.getPercentile(50)) + "** of the marks or more; "
                        + "the mean is " + Amounts.percent(shares.getMean()) + ", the lowest "
                        + Amounts.percent(shares.getMin())
                        + ", the highest " + Amounts.percent(shares.getMax()) + ". " + reliability()));
        List<BarFigure.Bar> bars = new ArrayList<>();
        for (int i = 0; i < CLASSES_OF_MARKS; i++) {
            String name = i == CLASSES_OF_MARKS - 1 ? "90 to 100 %" : 10 * i + " % to below " + 10 * (i + 1) + " %";
            bars.add(new BarFigure.Bar(name, classes[i], Integer.toString(classes[i])));
        }
        blocks.add(new FigureBlock(
                BarFigure.draw("How the marks are spread", "learners", "share of the marks", bars, "marks")));
    }

    private String reliability() {
        return results.reliability()
                .map(found -> "Reliability over the " + found.parts() + " problems (coefficient alpha): "
                        + Amounts.decimal(found.alpha(), 2) + ", 95 % interval " + Amounts.decimal(found.low(), 2)
                        + " to "
                        + Amounts.decimal(found.high(), 2) + "; a learner's share of the marks is uncertain by about ±"
                        + Amounts.percent(found.error())
                        + " (one standard error). Groups are usually compared from 0.70 on, single "
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
                + "own numbers. Problems are numbered as in the plan, examples not counted. Open "
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
                "Problem " + name + ", " + results.title(problem.template()) + ": "
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
                        names.get(count.template()) + ": " + count.cause().label(),
                        count.learners(),
                        Integer.toString(count.learners())))
                .toList();
        if (!bars.isEmpty()) {
            blocks.add(new FigureBlock(BarFigure.draw(
                    "The most frequent mistakes", "learners who met it", "problem and mistake", bars, "mistakes")));
        }
    }

    private void patterns() {
        List<List<Cell>> rows = new ArrayList<>();
        int hypotheses = 0;
        for (Standing standing : results.standings()) {
            for (Diagnosis diagnosis : Diagnosis.of(standing)) {
                if (diagnosis.isPattern()) {
                    rows.add(List.of(
                            text(learner(standing)),
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

    private String learner(Standing standing) {
        String name = privacy.name(standing.seat());
        return "Seat " + standing.seat().number() + (name.isEmpty() ? "" : ", " + name);
    }

    // Questions

    private void questions() {
        blocks.add(new Heading(2, "The questions"));
        blocks.add(new Prose(
                "*Right* is the share of those who answered; its interval is Wilson's for 95 %. *Difference* is the "
                        + "share right among the upper 27 % of these learners less that among the lower 27 %. "
                        + "*Correlation* is that of the "
                        + "question with the rest of the marks (point-biserial). Questions that fewer than "
                        + ClassResults.LEAST_LEARNERS + " learners answered get no verdict."));
        Map<Item, String> names = results.names();
        List<List<Cell>> rows = new ArrayList<>();
        List<IntervalFigure.Row> dots = new ArrayList<>();
        results.items().forEach((item, scores) -> {
            Proportion facility = scores.facility();
            rows.add(cells(
                    names.get(item),
                    results.title(item.template()) + ": " + results.meaning(item),
                    Integer.toString(facility.all()),
                    Integer.toString(scores.blank()),
                    facility.all() == 0
                            ? "–"
                            : Amounts.percent(facility.share()) + " (" + Amounts.decimal(100 * facility.low(), 0) + "–"
                                    + Amounts.decimal(100 * facility.high(), 0) + ")",
                    Amounts.decimal(scores.discrimination(), 2),
                    Amounts.decimal(scores.pointBiserial(), 2),
                    verdict(scores)));
            if (facility.all() > 0) {
                dots.add(new IntervalFigure.Row(
                        names.get(item),
                        100 * facility.low(),
                        100 * facility.share(),
                        100 * facility.high(),
                        Amounts.percent(facility.share()) + " of " + facility.all()));
            }
        });
        if (!dots.isEmpty()) {
            blocks.add(new FigureBlock(IntervalFigure.draw(
                    "Share right of each question, with 95 % interval",
                    "% right", "question", 100, dots, "questions")));
        }
        blocks.add(new Table(
                "Questions, in the order of the plan",
                List.of("No.", "Question", "Answered", "Open", "Right", "Difference", "Correlation", "Verdict"),
                rows));
        blocks.add(new Prose(
                "**Mind:** everyone has other numbers, and a pool gives different problems to different learners. "
                        + "These figures are made for tests in which all answer the same questions; here they "
                        + "compare variants of one "
                        + "template and are hints where to look, not measurements."
                        + (names.size() < 8
                                ? " With fewer than eight questions one unlucky variant moves a learner's total "
                                        + "noticeably."
                                : "")));
    }

    private static String verdict(ItemScores scores) {
        if (scores.scores().size() < ClassResults.LEAST_LEARNERS) {
            return "too few for a verdict";
        }
        if (scores.discrimination() < 0) {
            return "CHECK THIS KEY: the stronger learners do worse";
        }
        double share = scores.facility().share();
        String difficulty = share < HARD ? "hard" : share > EASY ? "easy" : "fits";
        return scores.discrimination() < TELLING && share <= EASY ? difficulty + ", tells little" : difficulty;
    }

    private void fairness() {
        List<Fairness> compared = Fairness.of(results.standings());
        blocks.add(new Heading(2, "Are the variants fair?"));
        List<Fairness> unequal = compared.stream().filter(Fairness::isUnequal).toList();
        blocks.add(new Prose(
                compared.isEmpty()
                        ? "Too few learners share a difficulty to compare any."
                        : "Variants of one problem are grouped by what makes them harder: divisions, changes of "
                                + "prefix, unending results, cases. "
                                + Amounts.count(compared.size(), "group", "groups")
                                + " of five learners or more were compared with the other "
                                + "variants of the same problem (Fisher's exact test, Holm's correction). "
                                + (unequal.isEmpty()
                                        ? "No difference is larger than chance makes it."
                                        : "These differ by more than chance:")));
        if (!unequal.isEmpty()) {
            blocks.add(new Table(
                    "Variants that were not equally hard",
                    List.of("Problem", "Variants with", "Solved", "Other variants", "By chance"),
                    unequal.stream()
                            .map(one -> cells(
                                    results.title(one.template()),
                                    one.difficulty(),
                                    of(one.solved()),
                                    of(one.others()),
                                    Amounts.decimal(one.chance(), 3)))
                            .toList()));
        }
    }

    private static String of(Proportion proportion) {
        return Amounts.percent(proportion.share()) + " of " + proportion.all();
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

    private static List<Cell> cells(String... texts) {
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
