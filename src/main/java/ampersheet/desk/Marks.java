package ampersheet.desk;

import ampersheet.issue.CourseFolder;
import ampersheet.marking.DecisionList;
import ampersheet.sheet.SheetId;
import ampersheet.source.CellRows;
import ampersheet.source.SafeCsv;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** The results of marking the sheets of one archive, as they lie in the course. */
record Marks(Course course, CourseFolder.Marked at) {
    private static final String MARKS = "marks.csv";
    private static final int MOST_SHOWN = 500;
    private static final String OPEN = "decide.csv";
    private static final String SET_ASIDE = "set-aside.csv";
    private static final String FEEDBACK = "feedback";

    /**
     * Where the marks of these sheets go: where the first ones of their set or week lie, or beside them if those are of
     * other sheets. Marks that do not tell whose they are belong to sheets that are there alone.
     */
    static Marks to(Course course, GivenOut.Sheets sheets, List<GivenOut.Sheets> all) {
        CourseFolder.Made made = sheets.week().isPresent()
                ? course.files().ofWeek(sheets.week().getAsInt())
                : course.files().ofPlan();
        Marks first = new Marks(course, made.marked());
        Marks beside = new Marks(course, made.marked(sheets.set()));
        boolean alone = all.stream()
                .filter(one -> one.week().equals(sheets.week()))
                .allMatch(one -> one.set().equals(sheets.set()));
        Set<String> sets = first.sets();
        boolean free = sets.isEmpty() && !beside.areThere() && (alone || first.holdNothing());
        return free || sets.contains(sheets.set()) ? first : beside;
    }

    /** Where they are; those of a week may still lie where versions before put the marks of everything. */
    static Marks of(Course course, GivenOut.Sheets sheets, List<GivenOut.Sheets> all) {
        Marks marks = to(course, sheets, all);
        Marks ofAll = new Marks(course, course.files().ofPlan().marked());
        return !marks.areThere() && ofAll.sets().contains(sheets.set()) ? ofAll : marks;
    }

    /** With what the IDs in the table of marks begin. */
    private Set<String> sets() {
        Set<String> sets = new TreeSet<>();
        allRows(MARKS, List.of("sheet")).forEach(row -> SheetId.set(row.get(0)).ifPresent(sets::add));
        return sets;
    }

    /** Whether there is nobody whose marks could be written over. */
    private boolean holdNothing() {
        Optional<String> written = table(MARKS);
        List<List<String>> rows = allRows(MARKS, List.of("marks"));
        return written.isEmpty()
                || !rows.isEmpty() && rows.stream().allMatch(row -> row.get(0).isEmpty());
    }

    Path folder() {
        return at.folder();
    }

    Path feedbackFolder() {
        return folder().resolve(FEEDBACK);
    }

    /** Where a browser finds them. */
    String address() {
        return "/" + course.shown(folder());
    }

    boolean areThere() {
        return table(MARKS).isPresent();
    }

    List<String> feedback() {
        return course.names(feedbackFolder());
    }

    /** Files for other programs, to be kept. */
    List<Map<String, Object>> tables() {
        return course.names(folder()).stream()
                .filter(name -> !name.endsWith(".html"))
                .map(name -> Pages.values("path", address() + "/" + name, "name", name))
                .toList();
    }

    Optional<String> table(String name) {
        List<String> steps = new ArrayList<>();
        course.files().made().relativize(folder().resolve(name)).forEach(step -> steps.add(step.toString()));
        return course.made(steps).map(file -> new String(course.bytes(file), StandardCharsets.UTF_8));
    }

    /** Some columns of a table that marking wrote. */
    List<List<String>> rows(String name, List<String> columns) {
        List<List<String>> rows = allRows(name, columns);
        return rows.subList(0, Math.min(MOST_SHOWN, rows.size()));
    }

    /** Names of the files of which marking has told what became of them. */
    Set<String> files() {
        Set<String> names = new TreeSet<>();
        allRows("files.csv", List.of("file")).forEach(row -> names.add(row.get(0)));
        return names;
    }

    private List<List<String>> allRows(String name, List<String> columns) {
        List<List<String>> shown = new ArrayList<>();
        List<CellRows.Row> rows = table(name).map(Marks::read).orElse(List.of());
        for (int i = 1; i < rows.size(); i++) {
            CellRows.Row row = rows.get(i);
            List<String> head = rows.get(0).names();
            shown.add(columns.stream()
                    .map(column -> head.indexOf(column))
                    .map(at -> at < 0 || at >= row.size() ? "" : SafeCsv.read(row.get(at)))
                    .toList());
        }
        return shown;
    }

    private static List<CellRows.Row> read(String table) {
        CellRows.Lines lines = CellRows.Lines.of(table);
        char separator = CellRows.separator(
                lines, row -> row.names().contains("seat") || row.names().contains("file"));
        try {
            return CellRows.read(lines.text(), separator, 1);
        } catch (CellRows.Uneven broken) {
            return List.of(); // somebody else wrote it; marking again mends it
        }
    }

    /** All lines that wait for a decision, those on sheets of other archives among them. */
    List<DecisionList.Open> allOpen() {
        return table(OPEN).map(DecisionList::open).orElse(List.of());
    }

    /** The lines that only the instructor can decide. */
    List<DecisionList.Open> open(GivenOut.Others others) {
        return allOpen().stream().filter(one -> !isElsewhere(one, others)).toList();
    }

    /** Whether a hand-in only looks ownerless here, because its sheets are known to another archive. */
    static boolean isElsewhere(DecisionList.Open one, GivenOut.Others others) {
        return one.cell("question").isEmpty() && others.of(one.cell("sheet")).isPresent();
    }

    /** How many answers came in to the sheets of other archives, by what their IDs begin with. */
    Map<String, Integer> answersElsewhere(GivenOut.Others others) {
        Map<String, Integer> answers = new TreeMap<>();
        for (List<String> row : allRows(SET_ASIDE, List.of("sheet"))) {
            others.of(row.get(0)).ifPresent(of -> answers.merge(of.set(), 1, Integer::sum));
        }
        return answers;
    }

    /** Lines as a page shows them, each with how many others can be decided with it. */
    List<Map<String, Object>> shown(List<DecisionList.Open> open, DecisionList.Decided decided) {
        return open.stream()
                .limit(MOST_SHOWN)
                .map(one -> Pages.values(
                        "asked", one.cell("asked"),
                        "right", one.cell("right_answer"),
                        "decided", decided.of(one).orElse(""),
                        "like", alike(open, one, decided).size() - 1,
                        "key", Course.version(one.key()),
                        "seat", one.cell("seat"),
                        "name", one.cell("name"),
                        "question", one.cell("question"),
                        "answer", one.cell("answer"),
                        "file", one.cell("file"),
                        "words", one.words(),
                        "why", one.cell("why"),
                        "meanings", one.cell("may_mean")))
                .toList();
    }

    /** The line itself and the others that are still open and can be decided with it. */
    static List<DecisionList.Open> alike(
            List<DecisionList.Open> open, DecisionList.Open one, DecisionList.Decided decided) {
        return open.stream()
                .filter(other ->
                        other == one || other.isLike(one) && decided.of(other).isEmpty())
                .toList();
    }
}
