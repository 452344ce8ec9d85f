package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.language.Language;
import ampersheet.render.html.HtmlPage;
import ampersheet.sheet.MarkingPolicy;
import ampersheet.source.CellRows.Row;
import ampersheet.source.SafeCsv;
import ampersheet.source.WithinMemory;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.function.UnaryOperator;

/** Several marked plans of one class, in the order of the weeks: how far each learner and each skill has come. */
public final class MarkedWeeks {
    private static final String FORM = say("folder.marks.week-form");

    private final Language language;
    private final List<String> weeks = new ArrayList<>();
    private final Map<String, Learner> learners = new LinkedHashMap<>();

    /** One marked plan, as its folder is called. */
    public record Week(String name, Marking.NamedText marks, Marking.NamedText answers) {}

    /**
     * Someone who takes the course, by name, or by seat where the class has no names.
     *
     * @param percents by week, in tenths; a week in which nothing came in is missing
     * @param skills by skill and week
     * @param causes weeks in which each was met, by its label
     * @param worked each problem of hers that was marked, in the order of the weeks
     */
    record Learner(
            String who,
            Map<Integer, Integer> percents,
            Map<String, Map<Integer, Proportion>> skills,
            Map<String, TreeSet<Integer>> causes,
            List<Worked> worked) {
        Learner(String who) {
            this(who, new LinkedHashMap<>(), new LinkedHashMap<>(), new LinkedHashMap<>(), new ArrayList<>());
        }

        /** Met in more than one week. */
        List<String> staying() {
            return causes.entrySet().stream()
                    .filter(cause -> cause.getValue().size() > 1)
                    .map(Map.Entry::getKey)
                    .sorted()
                    .toList();
        }

        /** Over all weeks. */
        Map<String, Proportion> skillsInAll() {
            Map<String, Proportion> all = new LinkedHashMap<>();
            skills.forEach((skill, weeks) ->
                    all.put(skill, weeks.values().stream().reduce(new Proportion(0, 0), MarkedWeeks::sum)));
            return all;
        }
    }

    /** A problem on a sheet, and whether all answers to it are right; open ones are not. */
    record Worked(int week, String skill, boolean right) {}

    private MarkedWeeks(Language language) {
        this.language = language;
    }

    /**
     * Reads them.
     *
     * @param skillOf a template's skill, by its name
     * @param language in which is told of them, since marks know none
     * @throws DiagnosticException if a table is not one that mark has written
     */
    public static MarkedWeeks read(List<Week> weeks, UnaryOperator<String> skillOf, Language language) {
        MarkedWeeks course = new MarkedWeeks(language);
        for (Week week : weeks) {
            WithinMemory.of(week.name(), () -> {
                course.read(week, skillOf);
                return course;
            });
        }
        return course;
    }

    private void read(Week week, UnaryOperator<String> skillOf) {
        int at = weeks.size();
        weeks.add(week.name());
        Map<String, String> whoSits = new LinkedHashMap<>();
        CsvRows marks = table(week.marks(), List.of("seat", "name", "marks", "of"));
        for (Row row : marks.body()) {
            String seat = marks.cell(row, "seat");
            String name = SafeCsv.read(marks.cell(row, "name"));
            String who = name.isBlank() ? language.say("report.seat", "seat", seat) : name;
            // Two of one name are two learners.
            who = whoSits.containsValue(who) ? language.say("report.seat.same-name", "name", who, "seat", seat) : who;
            whoSits.put(seat, who);
            OptionalInt percent = percent(marks.cell(row, "marks"), marks.cell(row, "of"));
            Learner learner = learners.computeIfAbsent(who, Learner::new);
            percent.ifPresent(of -> learner.percents().put(at, of));
        }
        Map<String, Map<String, Worked>> problems = new LinkedHashMap<>();
        CsvRows answers = table(week.answers(), List.of("seat", "question", "template", "verdict", "cause"));
        for (Row row : answers.body()) {
            Learner learner = learners.get(whoSits.getOrDefault(answers.cell(row, "seat"), ""));
            if (learner == null) {
                continue;
            }
            String verdict = answers.cell(row, "verdict");
            boolean right = verdict.equals("correct") || verdict.equals("consistent-with-earlier");
            if (!verdict.equals("undecided") && !verdict.equals("ambiguous")) {
                problems.computeIfAbsent(learner.who(), first -> new LinkedHashMap<>())
                        .merge(
                                answers.cell(row, "question").replaceFirst("[a-z]+$", ""),
                                new Worked(at, skillOf.apply(answers.cell(row, "template")), right),
                                (one, other) -> new Worked(at, one.skill(), one.right() && other.right()));
            }
            if (!List.of("blank", "unreadable", "undecided", "ambiguous", "incomplete")
                    .contains(verdict)) {
                learner.skills()
                        .computeIfAbsent(skillOf.apply(answers.cell(row, "template")), skill -> new LinkedHashMap<>())
                        .merge(at, new Proportion(right ? 1 : 0, 1), MarkedWeeks::sum);
            }
            String cause = answers.cell(row, "cause");
            if (!cause.isEmpty()) {
                learner.causes()
                        .computeIfAbsent(Slip.label(cause, language), label -> new TreeSet<>())
                        .add(at);
            }
        }
        problems.forEach((who, worked) -> learners.get(who).worked().addAll(worked.values()));
    }

    private static CsvRows table(Marking.NamedText text, List<String> columns) {
        TextLines lines = TextLines.ofOwn(text.file(), text.text());
        CsvRows table = CsvRows.read(lines, FORM);
        table.has(columns);
        if (lines.hasFaults()) {
            throw new DiagnosticException(lines.faults().list());
        }
        return table;
    }

    private static OptionalInt percent(String marks, String of) {
        boolean numbers = marks.matches("[0-9]{1,7}(\\.[0-9]{1,2})?") && of.matches("[0-9]{1,7}(\\.[0-9]{1,2})?");
        return numbers ? OptionalInt.of(MarkingPolicy.percent(hundredths(marks), hundredths(of))) : OptionalInt.empty();
    }

    private static int hundredths(String decimal) {
        return (int) Math.floor(Double.parseDouble(decimal) * MarkingPolicy.MARK + 0.5);
    }

    static Proportion sum(Proportion one, Proportion other) {
        return new Proportion(one.of() + other.of(), one.all() + other.all());
    }

    Language language() {
        return language;
    }

    List<String> weeks() {
        return List.copyOf(weeks);
    }

    /** In the order of the class lists. */
    List<Learner> learners() {
        return List.copyOf(learners.values());
    }

    public int learnerCount() {
        return learners.size();
    }

    /** A table with a line for each learner: percent of each week, share right of each skill, mistakes that stay. */
    public String table() {
        return CourseReport.table(this);
    }

    /** A page with a figure for the class and one for each learner. */
    public String page(String title) {
        return HtmlPage.render(CourseReport.compose(this, title));
    }
}
