package ampersheet.marking;

import ampersheet.figure.IntervalFigure;
import ampersheet.marking.Standing.Item;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What the report says of the questions and their variants: how hard they were, and whether a key is to be checked. */
final class QuestionReport {
    /** Usual wishes for a question: neither too hard nor too easy, and answered better by those who know more. */
    private static final double HARD = 0.3;

    private static final double EASY = 0.9;
    private static final double TELLING = 0.2;

    private static final String LEGEND =
            "*Right* is the share of those who answered; its interval is Wilson's for 95 %. *Difference* is "
                    + "the share right among the upper 27 % of these learners less that among the lower 27 %. "
                    + "*Correlation* is that of the question with the rest of the marks (point-biserial). Questions "
                    + "that fewer than "
                    + ClassResults.LEAST_LEARNERS
                    + " learners answered get no verdict. *Check this key* is said where the largest group of those "
                    + "who are wrong in one way is stronger elsewhere than the others (Wilcoxon's rank sum test), "
                    + "where more than a third of the answers are unexplained, or where fewer than a quarter are right "
                    + "(binomial tests), each over all questions together (Holm's correction) and so strictly that of "
                    + "a hundred classes of 30 with right keys at most two are told so. A key that nobody can meet is "
                    + "found nearly always, one that has changed places with a known mistake seldom: look there, too, "
                    + "where more learners make one mistake than are right.";

    private final ClassResults results;
    private final Map<Item, KeyCheck> suspicious;
    private final List<Block> blocks = new ArrayList<>();

    private QuestionReport(ClassResults results) {
        this.results = results;
        this.suspicious = results.keysToCheck();
    }

    static List<Block> of(ClassResults results) {
        QuestionReport report = new QuestionReport(results);
        report.questions();
        report.fairness();
        return report.blocks;
    }

    private void questions() {
        blocks.add(new Heading(2, "The questions"));
        blocks.add(new Prose(LEGEND));
        Map<Item, String> names = results.names();
        List<List<Cell>> rows = new ArrayList<>();
        List<IntervalFigure.Row> dots = new ArrayList<>();
        results.items().forEach((item, scores) -> {
            Proportion facility = scores.facility();
            rows.add(ClassReport.cells(
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
                    verdict(item, scores)));
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
                    "% right", "question", 100, dots, "questions", Languages.ENGLISH)));
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

    private String verdict(Item item, ItemScores scores) {
        if (scores.scores().size() < ClassResults.LEAST_LEARNERS) {
            return "too few for a verdict";
        }
        if (suspicious.containsKey(item)) {
            return "CHECK THIS KEY: " + suspicious.get(item).reason();
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
                            .map(one -> ClassReport.cells(
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
}
