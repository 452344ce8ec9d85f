package ampersheet.marking;

import ampersheet.figure.IntervalFigure;
import ampersheet.language.Language;
import ampersheet.marking.Standing.Item;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What the report says of the questions and their variants: how hard they were, and whether a key is to be checked. */
final class QuestionReport {
    /** Usual wishes for a question: neither too hard nor too easy, and answered better by those who know more. */
    private static final double HARD = 0.3;

    private static final double EASY = 0.9;
    private static final double TELLING = 0.2;
    /** With fewer questions one of them weighs much. */
    private static final int MANY = 8;

    private final Language language;
    private final ClassResults results;
    private final Map<Item, KeyCheck> suspicious;
    private final List<Block> blocks = new ArrayList<>();

    private QuestionReport(ClassResults results) {
        this.language = results.language();
        this.results = results;
        this.suspicious = results.keysToCheck();
    }

    static List<Block> of(ClassResults results) {
        QuestionReport report = new QuestionReport(results);
        report.questions();
        report.fairness();
        return report.blocks;
    }

    private void say(String... sentences) {
        blocks.add(new Prose(Language.joined(sentences)));
    }

    private void questions() {
        blocks.add(new Heading(2, language.say("report.questions")));
        say(language.say("report.questions.legend", "learners", Integer.toString(ClassResults.LEAST_LEARNERS)));
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
                            : Amounts.percent(facility.share(), language) + " ("
                                    + Amounts.decimal(100 * facility.low(), 0, language) + "–"
                                    + Amounts.decimal(100 * facility.high(), 0, language) + ")",
                    Amounts.decimal(scores.discrimination(), 2, language),
                    Amounts.decimal(scores.pointBiserial(), 2, language),
                    verdict(item, scores)));
            if (facility.all() > 0) {
                dots.add(new IntervalFigure.Row(
                        names.get(item),
                        100 * facility.low(),
                        100 * facility.share(),
                        100 * facility.high(),
                        of(facility)));
            }
        });
        if (!dots.isEmpty()) {
            blocks.add(new FigureBlock(IntervalFigure.draw(
                    language.say("report.questions.figure"),
                    language.say("report.questions.figure.axis"),
                    language.say("report.questions.figure.rows"),
                    100,
                    dots,
                    "questions",
                    language)));
        }
        blocks.add(new Table(
                language.say("report.questions.table"),
                List.of(
                        language.say("report.head.number"),
                        language.say("report.head.question"),
                        language.say("report.head.answered"),
                        language.say("report.head.open"),
                        language.say("report.head.right"),
                        language.say("report.head.difference"),
                        language.say("report.head.correlation"),
                        language.say("report.head.verdict")),
                rows));
        say(language.say("report.questions.mind"), names.size() < MANY ? language.say("report.questions.few") : "");
    }

    private String verdict(Item item, ItemScores scores) {
        if (scores.scores().size() < ClassResults.LEAST_LEARNERS) {
            return language.say("report.questions.too-few");
        }
        if (suspicious.containsKey(item)) {
            return language.say(
                    "report.questions.check-key",
                    "reason",
                    language.say(suspicious.get(item).reason()));
        }
        double share = scores.facility().share();
        boolean little = scores.discrimination() < TELLING;
        if (share < HARD) {
            return little ? language.say("report.questions.hard-little") : language.say("report.questions.hard");
        }
        if (share > EASY) {
            return language.say("report.questions.easy");
        }
        return little ? language.say("report.questions.fits-little") : language.say("report.questions.fits");
    }

    private void fairness() {
        List<Fairness> compared = Fairness.of(results.standings());
        blocks.add(new Heading(2, language.say("report.fairness")));
        if (compared.isEmpty()) {
            say(language.say("report.fairness.too-few"));
            return;
        }
        boolean unequal = compared.stream().anyMatch(Fairness::isUnequal);
        say(
                language.say("report.fairness.grouped"),
                language.count("report.fairness.compared", compared.size()),
                unequal
                        ? language.say(
                                "report.fairness.unequal", "limit", Amounts.decimal(Fairness.UNLIKELY, 2, language))
                        : language.say("report.fairness.equal"));
        blocks.add(new Table(
                language.say("report.fairness.table"),
                List.of(
                        language.say("report.head.problem"),
                        language.say("report.head.variants-with"),
                        language.say("report.head.solved"),
                        language.say("report.head.expected"),
                        language.say("report.head.by-chance")),
                groups(compared)));
    }

    private List<List<Cell>> groups(List<Fairness> compared) {
        Map<String, Fairness.Few> few = Fairness.few(results.standings());
        List<List<Cell>> rows = new ArrayList<>();
        for (int i = 0; i < compared.size(); i++) {
            Fairness one = compared.get(i);
            String expected = Amounts.percent(one.expected(), language);
            rows.add(ClassReport.cells(
                    results.title(one.template()),
                    one.difficulty(),
                    withInterval(one.solved()),
                    expected,
                    Amounts.decimal(one.chance(), 3, language)));
            boolean last =
                    i + 1 == compared.size() || !compared.get(i + 1).template().equals(one.template());
            if (last && few.containsKey(one.template())) {
                Fairness.Few rest = few.get(one.template());
                rows.add(ClassReport.cells(
                        results.title(one.template()),
                        language.count("report.fairness.fewer", rest.groups()),
                        withInterval(rest.solved()),
                        expected,
                        "–"));
            }
        }
        return rows;
    }

    private String withInterval(Proportion proportion) {
        return of(proportion) + " (" + Amounts.decimal(100 * proportion.low(), 0, language) + "–"
                + Amounts.decimal(100 * proportion.high(), 0, language) + ")";
    }

    private String of(Proportion proportion) {
        return Amounts.of(Amounts.percent(proportion.share(), language), Integer.toString(proportion.all()), language);
    }
}
