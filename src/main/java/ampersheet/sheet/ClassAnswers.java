package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.UsualAcceptance;
import ampersheet.language.Language;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** The right answers of a whole class on a few pages: a row for each learner, a column for each question. */
public final class ClassAnswers {
    /** So many learners have a document of their own, so that a large class is laid out in parts. */
    public static final int MOST_LEARNERS = 40;

    /** What a line of the page holds, in letters. */
    private static final int LINE = 104;

    private static final int MOST_COLUMNS = 7;
    private static final int BETWEEN = 2;
    private static final int EXACTLY = 4;

    private ClassAnswers() {}

    /**
     * One learner's row.
     *
     * @param answers as a right answer is written, with the letters it has, by the name of its question
     * @param exact questions whose answer must be met exactly
     */
    public record Row(Roster.Seat seat, String sheetId, Map<String, String> answers, Set<String> exact) {
        public Row {
            answers = Map.copyOf(answers);
            exact = Set.copyOf(exact);
        }

        private String learner() {
            return sheetId + (seat.name().isEmpty() ? "" : " " + seat.name());
        }
    }

    /** @param checkLetters whether the sheet has letters beside its boxes */
    public static Row row(Roster.Seat seat, Sheet sheet, boolean checkLetters) {
        Map<String, String> answers = new TreeMap<>();
        Set<String> exact = new TreeSet<>();
        Map<String, CheckLetters.Check> printed = checkLetters ? CheckLetters.of(sheet) : Map.of();
        for (SheetProblem problem : sheet.problems()) {
            for (AnswerKey key : problem.places()) {
                CheckLetters.Check check = printed.get(key.question());
                String letters = check == null
                        ? ""
                        : " · "
                                + CheckLetters.spoken(
                                        check.letters(), sheet.plan().language());
                if (!(key.acceptance() instanceof Acceptance.Within)) {
                    exact.add(key.question());
                }
                answers.put(key.question(), ProblemText.answer(key, problem.writer()) + letters);
            }
        }
        return new Row(seat, sheet.id().toString(), answers, exact);
    }

    /** @param rows of at most {@link #MOST_LEARNERS} learners of one plan */
    public static Document of(Plan plan, List<Row> rows) {
        List<Block> blocks = new ArrayList<>();
        Language language = plan.language();
        blocks.add(new Prose(language.say(
                "sheet.answers.about", "percent", UsualAcceptance.percent(), "kelvin", UsualAcceptance.kelvin())));
        List<String> columns = new ArrayList<>();
        int used = 0;
        for (String question : questions(rows)) {
            int width = BETWEEN + Math.max(question.length() + EXACTLY, widest(rows, question));
            if (!columns.isEmpty() && (used + width > LINE || columns.size() == MOST_COLUMNS)) {
                blocks.add(table(rows, columns, language));
                columns.clear();
            }
            used = (columns.isEmpty() ? learners(rows) : used) + width;
            columns.add(question);
        }
        if (!columns.isEmpty()) {
            blocks.add(table(rows, columns, language));
        }
        return new Document(
                Document.Kind.KEY,
                language,
                language.say("sheet.answers.title", "title", plan.title()),
                language.count("sheet.head.sheets", rows.size()),
                "",
                plan.paper(),
                blocks);
    }

    /** In the order in which they stand on the sheets. */
    private static List<String> questions(List<Row> rows) {
        TreeSet<String> questions =
                new TreeSet<>(Comparator.comparingInt(ClassAnswers::problem).thenComparing(Comparator.naturalOrder()));
        rows.forEach(row -> questions.addAll(row.answers().keySet()));
        return List.copyOf(questions);
    }

    /** 3 of {@code q3a}. */
    private static int problem(String question) {
        return Integer.parseInt(question.replaceAll("\\D", ""));
    }

    private static int widest(List<Row> rows, String question) {
        return rows.stream()
                .mapToInt(row -> row.answers().getOrDefault(question, "").length())
                .max()
                .orElse(0);
    }

    private static int learners(List<Row> rows) {
        return BETWEEN
                + rows.stream().mapToInt(row -> row.learner().length()).max().orElse(0);
    }

    private static Table table(List<Row> rows, List<String> columns, Language language) {
        List<String> head = new ArrayList<>(List.of(language.say("sheet.answers.sheet")));
        columns.forEach(question -> head.add(
                rows.stream().anyMatch(row -> row.exact().contains(question))
                        ? language.say("sheet.answers.exactly", "question", question)
                        : question));
        List<List<Cell>> cells = new ArrayList<>();
        for (Row row : rows) {
            List<Cell> line = new ArrayList<>(List.of(new Cell(row.learner(), "")));
            columns.forEach(question -> line.add(new Cell(row.answers().getOrDefault(question, "–"), "")));
            cells.add(line);
        }
        return new Table("", head, cells);
    }
}
