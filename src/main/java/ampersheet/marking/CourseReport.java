package ampersheet.marking;

import ampersheet.figure.BarFigure;
import ampersheet.figure.IntervalFigure;
import ampersheet.language.Language;
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

    private final Language language;
    private final MarkedWeeks course;
    private final List<Block> blocks = new ArrayList<>();

    private CourseReport(MarkedWeeks course) {
        this.language = course.language();
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
                            ? Amounts.fixed(ALL * inAll.get(skill).share(), 0)
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
        Language language = course.language();
        report.say(language.say("report.notice.names"), language.say("report.course.legend"));
        report.theClass();
        report.fallingBehind();
        report.skills();
        report.stayingInTheClass();
        report.blocks.add(new Heading(2, language.say("report.course.learner-list")));
        for (int i = 0; i < course.learners().size(); i++) {
            report.learner(course.learners().get(i), i);
        }
        return new Document(
                Kind.REPORT,
                language,
                language.say("report.course.title", "title", title),
                language.count("report.course.weeks", course.weeks().size()) + ", "
                        + language.count(
                                "report.course.learners", course.learners().size()),
                "",
                Paper.A4,
                report.blocks);
    }

    private void say(String... sentences) {
        blocks.add(new Prose(Language.joined(sentences)));
    }

    private void theClass() {
        blocks.add(new Heading(2, language.say("report.course.class")));
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
                        Amounts.of(
                                Amounts.fixed(percents.getPercentile(50), 0) + "\u00A0%",
                                Long.toString(percents.getN()),
                                language)));
            }
        }
        if (!rows.isEmpty()) {
            blocks.add(new FigureBlock(IntervalFigure.draw(
                    language.say("report.course.class.figure"),
                    language.say("report.course.figure.axis"),
                    language.say("report.course.figure.rows"),
                    ALL,
                    rows,
                    "class",
                    language)));
        }
    }

    private void fallingBehind() {
        blocks.add(new Heading(2, language.say("report.course.behind")));
        List<FallingBehind.Finding> findings =
                FallingBehind.of(course.learners(), course.weeks().size());
        if (course.learners().size() < FallingBehind.FEWEST) {
            say(language.say("report.course.behind.small", "learners", Integer.toString(FallingBehind.FEWEST)));
            return;
        }
        say(language.say("report.course.behind.legend"));
        if (findings.isEmpty()) {
            say(language.say("report.course.behind.nobody"));
            return;
        }
        List<List<Cell>> rows = new ArrayList<>();
        for (FallingBehind.Finding finding : findings) {
            List<String> what = new ArrayList<>();
            if (finding.all()) {
                what.add(language.say("report.course.behind.in-all"));
            }
            if (!finding.skill().isEmpty()) {
                what.add(language.say("report.course.behind.in-skill", "skill", finding.skill()));
            }
            if (finding.lately()) {
                what.add(language.say("report.course.behind.lately"));
            }
            rows.add(ClassReport.cells(
                    finding.who(),
                    String.join("; ", what),
                    Amounts.of(Integer.toString(finding.right()), Integer.toString(finding.of()), language),
                    Amounts.decimal(finding.expected(), 1, language)));
        }
        blocks.add(new Table(
                language.say("report.course.behind.table"),
                List.of(
                        language.say("report.head.learner"),
                        language.say("report.head.behind"),
                        language.say("report.head.problems-right"),
                        language.say("report.head.expected")),
                rows));
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
                row.add(
                        sum.all() == 0
                                ? "–"
                                : Amounts.of(
                                        Amounts.percent(sum.share(), language), Integer.toString(sum.all()), language));
            }
            rows.add(ClassReport.cells(row.toArray(new String[0])));
        }
        List<String> head = new ArrayList<>(List.of(language.say("report.head.skill")));
        head.addAll(course.weeks());
        blocks.add(new Table(language.say("report.course.skills"), head, rows));
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
            say(language.say("report.course.staying.none"));
        } else {
            blocks.add(new Table(
                    language.say("report.course.staying"),
                    List.of(
                            language.say("report.head.mistake"),
                            language.say("report.head.learners"),
                            language.say("report.head.who")),
                    rows));
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
                    percent == null
                            ? language.say("report.course.learner.nothing")
                            : Amounts.tenths(percent, language) + "\u00A0%"));
        }
        blocks.add(new FigureBlock(BarFigure.draw(
                language.say("report.course.learner.figure", "learner", learner.who()),
                language.say("report.course.figure.axis"),
                language.say("report.course.figure.rows"),
                ALL,
                bars,
                "learner" + number,
                language)));
        List<String> parts = new ArrayList<>();
        learner.skillsInAll()
                .forEach((skill, right) ->
                        parts.add(Statement.escape(skill) + " " + Amounts.percent(right.share(), language)));
        List<String> staying = learner.staying().stream().map(Statement::escape).toList();
        say(
                parts.isEmpty() ? "" : language.say("report.course.learner.skills", "skills", String.join("; ", parts)),
                staying.isEmpty()
                        ? ""
                        : language.say("report.course.learner.stays", "mistakes", String.join("; ", staying)));
    }
}
