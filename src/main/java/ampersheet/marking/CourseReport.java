package ampersheet.marking;

import ampersheet.figure.BarFigure;
import ampersheet.figure.IntervalFigure;
import ampersheet.marking.MarkedWeeks.Learner;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import ampersheet.sheet.MarkingPolicy;
import ampersheet.source.Languages;
import ampersheet.source.SafeCsv;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;

/** The weeks of a course on one page and in one table. */
final class CourseReport {
    private static final int ALL = 100;
    private static final String NOTHING = "nothing came in";

    private final MarkedWeeks course;
    private final List<Block> blocks = new ArrayList<>();

    private CourseReport(MarkedWeeks course) {
        this.course = course;
    }

    static String table(MarkedWeeks course) {
        TreeSet<String> skills = skills(course);
        List<String> head = new ArrayList<>(List.of("learner"));
        course.weeks().forEach(week -> head.add(week + " %"));
        skills.forEach(skill -> head.add(skill + " % right"));
        head.add("mistakes_that_stay");
        SafeCsv table = new SafeCsv(head);
        for (Learner learner : course.learners()) {
            List<String> row = new ArrayList<>(List.of(learner.who()));
            for (int week = 0; week < course.weeks().size(); week++) {
                Integer percent = learner.percents().get(week);
                row.add(percent == null ? "" : MarkingPolicy.tenths(percent));
            }
            Map<String, Proportion> inAll = learner.skillsInAll();
            skills.forEach(skill -> row.add(
                    inAll.containsKey(skill)
                            ? Amounts.decimal(ALL * inAll.get(skill).share(), 0)
                            : ""));
            row.add(String.join("; ", learner.staying()));
            table.row(row);
        }
        return table.toString();
    }

    private static TreeSet<String> skills(MarkedWeeks course) {
        TreeSet<String> skills = new TreeSet<>();
        course.learners().forEach(learner -> skills.addAll(learner.skills().keySet()));
        return skills;
    }

    static Document compose(MarkedWeeks course, String title) {
        CourseReport report = new CourseReport(course);
        report.blocks.add(new Prose("For the instructor: this page holds marks and names. Learners are told apart by "
                + "their names, and by their seats where the class list has none. A mistake *stays* that was met in "
                + "more than one week."));
        report.theClass();
        report.fallingBehind();
        report.skills();
        report.stayingInTheClass();
        report.blocks.add(new Heading(2, "The learners"));
        for (int i = 0; i < course.learners().size(); i++) {
            report.learner(course.learners().get(i), i);
        }
        return new Document(
                Kind.REPORT,
                Languages.ENGLISH,
                "Course: " + title,
                Amounts.count(course.weeks().size(), "week", "weeks") + ", "
                        + Amounts.count(course.learners().size(), "learner", "learners"),
                "",
                Paper.A4,
                report.blocks);
    }

    private void theClass() {
        blocks.add(new Heading(2, "The class"));
        List<IntervalFigure.Row> rows = new ArrayList<>();
        for (int week = 0; week < course.weeks().size(); week++) {
            int at = week;
            DescriptiveStatistics percents = new DescriptiveStatistics();
            course.learners().stream()
                    .filter(learner -> learner.percents().containsKey(at))
                    .forEach(learner -> percents.addValue(learner.percents().get(at) / 10.0));
            if (percents.getN() > 0) {
                rows.add(new IntervalFigure.Row(
                        course.weeks().get(week),
                        percents.getPercentile(25),
                        percents.getPercentile(50),
                        percents.getPercentile(75),
                        Amounts.decimal(percents.getPercentile(50), 0) + "\u00A0% of " + percents.getN()));
            }
        }
        if (!rows.isEmpty()) {
            blocks.add(new FigureBlock(IntervalFigure.draw(
                    "Share of the marks, week by week: the middle of the class, and its middle half",
                    "% of the marks",
                    "week",
                    ALL,
                    rows,
                    "class",
                    Languages.ENGLISH)));
        }
    }

    private void fallingBehind() {
        blocks.add(new Heading(2, "Who falls behind, and in what"));
        List<FallingBehind.Finding> findings =
                FallingBehind.of(course.learners(), course.weeks().size());
        if (course.learners().size() < FallingBehind.FEWEST) {
            blocks.add(new Prose(
                    "In a class of fewer than " + FallingBehind.FEWEST + " that cannot be told from chance."));
            return;
        }
        blocks.add(new Prose("Problems count, and as right where all their answers are. What is expected is what the "
                + "others had right in the same skills and weeks. *In all*: at most one class of twenty without such a "
                + "learner has one named. *In a skill* and *lately* (in the later half of the weeks) go by what the "
                + "learner does elsewhere: of fifty learners without such a gap about one is named for each."));
        if (findings.isEmpty()) {
            blocks.add(new Prose("Nobody is further behind than chance alone would have it."));
            return;
        }
        List<List<Cell>> rows = new ArrayList<>();
        for (FallingBehind.Finding finding : findings) {
            List<String> what = new ArrayList<>();
            if (finding.all()) {
                what.add("in all");
            }
            if (!finding.skill().isEmpty()) {
                what.add("in " + finding.skill());
            }
            if (finding.lately()) {
                what.add("lately");
            }
            rows.add(ClassReport.cells(
                    finding.who(),
                    String.join("; ", what),
                    finding.right() + " of " + finding.of(),
                    Amounts.decimal(finding.expected(), 1)));
        }
        blocks.add(new Table("Learners to look at", List.of("Learner", "Behind", "Problems right", "Expected"), rows));
    }

    private void skills() {
        List<List<Cell>> rows = new ArrayList<>();
        for (String skill : skills(course)) {
            List<String> row = new ArrayList<>(List.of(skill));
            for (int week = 0; week < course.weeks().size(); week++) {
                Proportion sum = new Proportion(0, 0);
                for (Learner learner : course.learners()) {
                    sum = MarkedWeeks.sum(
                            sum,
                            learner.skills().getOrDefault(skill, Map.of()).getOrDefault(week, new Proportion(0, 0)));
                }
                row.add(sum.all() == 0 ? "–" : Amounts.percent(sum.share()) + " of " + sum.all());
            }
            rows.add(ClassReport.cells(row.toArray(new String[0])));
        }
        List<String> head = new ArrayList<>(List.of("Skill"));
        head.addAll(course.weeks());
        blocks.add(new Table("Answers right, of those that could be read, by skill and week", head, rows));
    }

    private void stayingInTheClass() {
        Map<String, List<String>> staying = new TreeMap<>();
        course.learners()
                .forEach(learner -> learner.staying()
                        .forEach(cause -> staying.computeIfAbsent(cause, same -> new ArrayList<>())
                                .add(learner.who())));
        List<List<Cell>> rows = new ArrayList<>();
        staying.entrySet().stream()
                .sorted((one, other) ->
                        Integer.compare(other.getValue().size(), one.getValue().size()))
                .forEach(one -> rows.add(ClassReport.cells(
                        one.getKey(), Integer.toString(one.getValue().size()), String.join("; ", one.getValue()))));
        if (rows.isEmpty()) {
            blocks.add(new Prose("No learner met the same mistake in two weeks."));
        } else {
            blocks.add(new Table("Mistakes that stay", List.of("Mistake", "Learners", "Who"), rows));
        }
    }

    private void learner(Learner learner, int number) {
        blocks.add(new Heading(3, learner.who()));
        List<BarFigure.Bar> bars = new ArrayList<>();
        for (int week = 0; week < course.weeks().size(); week++) {
            Integer percent = learner.percents().get(week);
            bars.add(new BarFigure.Bar(
                    course.weeks().get(week),
                    percent == null ? 0 : percent / 10.0,
                    percent == null ? NOTHING : MarkingPolicy.tenths(percent) + "\u00A0%"));
        }
        blocks.add(new FigureBlock(BarFigure.draw(
                "Share of the marks of " + learner.who(),
                "% of the marks",
                "week",
                ALL,
                bars,
                "learner" + number,
                Languages.ENGLISH)));
        List<String> parts = new ArrayList<>();
        learner.skillsInAll()
                .forEach((skill, right) -> parts.add(Statement.escape(skill) + " " + Amounts.percent(right.share())));
        List<String> staying = learner.staying().stream().map(Statement::escape).toList();
        blocks.add(new Prose((parts.isEmpty() ? "" : "Right by skill: " + String.join("; ", parts) + ". ")
                + (staying.isEmpty() ? "" : "**Stays:** " + String.join("; ", staying) + ".")));
    }
}
