package ampersheet.marking;

import ampersheet.figure.BarFigure;
import ampersheet.language.Language;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** What the report says of mistakes: which were made, how often, and who made one more than once. */
final class MistakeReport {
    private static final int MOST_BARS = 15;

    private final Language language;
    private final ClassResults results;
    private final Privacy privacy;
    private final List<Block> blocks = new ArrayList<>();

    private MistakeReport(ClassResults results, Privacy privacy) {
        this.language = results.language();
        this.results = results;
        this.privacy = privacy;
    }

    static List<Block> of(ClassResults results, Privacy privacy) {
        MistakeReport report = new MistakeReport(results, privacy);
        report.mistakes();
        report.patterns();
        return report.blocks;
    }

    private void say(String... sentences) {
        blocks.add(new Prose(Language.joined(sentences)));
    }

    private String percent(double share) {
        return Amounts.percent(share, language);
    }

    private void mistakes() {
        blocks.add(new Heading(2, language.say("report.mistakes")));
        List<MistakeCount.OfProblem> problems = MistakeCount.of(results.standings());
        if (problems.isEmpty()) {
            say(language.say("report.mistakes.none"));
            return;
        }
        say(language.say("report.mistakes.legend"));
        bars(problems);
        Map<String, String> names = results.problemNames();
        names.forEach((template, name) -> problems.stream()
                .filter(problem -> problem.template().equals(template))
                .forEach(problem -> blocks.add(table(problem, name))));
    }

    private Table table(MistakeCount.OfProblem problem, String name) {
        List<List<Cell>> rows = new ArrayList<>();
        for (MistakeCount count : problem.found()) {
            rows.add(ClassReport.cells(
                    count.cause().label(),
                    count.cause().says(),
                    Integer.toString(count.learners()),
                    Integer.toString(count.matches()),
                    percent(count.share())));
        }
        rows.add(ClassReport.cells(
                language.say("report.mistakes.unexplained"),
                "–",
                "–",
                Integer.toString(problem.unexplained()),
                percent((double) problem.unexplained() / problem.wrong())));
        return new Table(
                language.count(
                        "report.mistakes.table",
                        problem.wrong(),
                        "name",
                        name,
                        "title",
                        results.title(problem.template())),
                List.of(
                        language.say("report.head.mistake"),
                        language.say("report.head.said-to-learner"),
                        language.say("report.head.learners"),
                        language.say("report.head.answers"),
                        language.say("report.head.share")),
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
                        language.say(
                                "report.problem",
                                "name",
                                names.get(count.template()),
                                "what",
                                count.cause().label()),
                        count.learners(),
                        Integer.toString(count.learners())))
                .toList();
        if (!bars.isEmpty()) {
            blocks.add(new FigureBlock(BarFigure.draw(
                    language.say("report.mistakes.figure"),
                    language.say("report.mistakes.figure.axis"),
                    language.say("report.mistakes.figure.bars"),
                    bars,
                    "mistakes",
                    language)));
        }
    }

    private void patterns() {
        List<List<Cell>> rows = new ArrayList<>();
        int hypotheses = 0;
        for (Standing standing : results.standings()) {
            for (Diagnosis diagnosis : Diagnosis.of(standing)) {
                if (diagnosis.isPattern()) {
                    rows.add(List.of(
                            ClassReport.text(privacy.seat(standing.seat())),
                            ClassReport.text(diagnosis.cause().label()),
                            ClassReport.text(diagnosis.cause().says()),
                            new Cell(
                                    language.say(
                                            "report.patterns.problems", "problems", language.all(diagnosis.numbers())),
                                    Marking.feedback(standing.seat()))));
                } else {
                    hypotheses++;
                }
            }
        }
        blocks.add(new Heading(2, language.say("report.patterns")));
        say(
                language.say("report.patterns.match"),
                language.count("report.patterns.hypotheses", hypotheses),
                rows.isEmpty() ? language.say("report.patterns.none") : language.say("report.patterns.some"));
        if (!rows.isEmpty()) {
            blocks.add(new Table(
                    language.say("report.patterns.table"),
                    List.of(
                            language.say("report.head.learner"),
                            language.say("report.head.cause"),
                            language.say("report.head.said"),
                            language.say("report.head.where")),
                    rows));
        }
    }
}
