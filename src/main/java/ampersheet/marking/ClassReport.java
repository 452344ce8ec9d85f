package ampersheet.marking;

import ampersheet.figure.BarFigure;
import ampersheet.language.Language;
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
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;

/** The instructor's page: how the class did, what went wrong and why, which questions to look at, what came in. */
final class ClassReport {
    private static final int CLASSES_OF_MARKS = 10;
    /** Single learners are compared from here on (common practice). */
    private static final double RANKED = 0.80;

    private final Language language;
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
            Plan plan,
            ClassResults results,
            Tomorrow tomorrow,
            CameIn came,
            Optional<List<MarkChange>> changes,
            List<ChangedVerdict.Of> corrected,
            Privacy privacy) {
        this.language = plan.language();
        this.policy = plan.marking();
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
        ClassReport report = new ClassReport(plan, results, tomorrow, came, changes, corrected, privacy);
        report.write();
        return new Document(
                Kind.REPORT,
                plan.language(),
                plan.language().say("report.class.title", "title", plan.title()),
                report.subtitle(),
                "",
                plan.paper(),
                report.blocks);
    }

    private String subtitle() {
        String learners =
                language.count("report.class.learners", results.standings().size());
        return came.absent() == 0 ? learners : learners + ", " + language.count("report.class.absent", came.absent());
    }

    private void say(String... sentences) {
        blocks.add(new Prose(Language.joined(sentences)));
    }

    private void heading(String text) {
        blocks.add(new Heading(2, text));
    }

    private void write() {
        say(notice(privacy, language));
        if (!results.standings().isEmpty()) {
            blocks.addAll(tomorrow.blocks());
            if (came.toDecide() > 0) {
                say(language.count("report.class.waiting", came.toDecide()));
            }
        }
        blocks.addAll(came.matters());
        if (results.standings().isEmpty()) {
            say(language.say("report.class.nothing"));
            files();
            return;
        }
        corrected();
        marks();
        blocks.addAll(MistakeReport.of(results, privacy));
        blocks.addAll(QuestionReport.of(results));
        changes.ifPresent(this::changes);
        learners();
        files();
    }

    /** Whom a page is for, at its beginning. */
    static String notice(Privacy privacy, Language language) {
        return privacy.isOn() ? language.say("report.notice.marks") : language.say("report.notice.names");
    }

    // Marks

    private void marks() {
        heading(language.say("report.marks"));
        DescriptiveStatistics shares = new DescriptiveStatistics();
        int[] classes = new int[CLASSES_OF_MARKS];
        for (Standing standing : results.standings()) {
            double share = ClassResults.share(standing);
            shares.addValue(share);
            classes[Math.min(CLASSES_OF_MARKS - 1, (int) (share * CLASSES_OF_MARKS + 1e-9))]++;
        }
        say(
                language.say(
                        "report.marks.spread",
                        "median",
                        percent(shares.getPercentile(50)),
                        "mean",
                        percent(shares.getMean()),
                        "lowest",
                        percent(shares.getMin()),
                        "highest",
                        percent(shares.getMax())),
                grades(),
                reliability());
        List<BarFigure.Bar> bars = new ArrayList<>();
        for (int i = 0; i < CLASSES_OF_MARKS; i++) {
            bars.add(new BarFigure.Bar(
                    band(i == CLASSES_OF_MARKS - 1, Integer.toString(10 * i), Integer.toString(10 * (i + 1))),
                    classes[i],
                    Integer.toString(classes[i])));
        }
        blocks.add(new FigureBlock(BarFigure.draw(
                language.say("report.marks.figure"),
                language.say("report.marks.figure.axis"),
                language.say("report.marks.figure.bars"),
                bars,
                "marks",
                language)));
    }

    private String band(boolean top, String from, String to) {
        return top
                ? language.say("report.marks.figure.top-band", "from", from, "to", to)
                : language.say("report.marks.figure.band", "from", from, "to", to);
    }

    private String percent(double share) {
        return Amounts.percent(share, language);
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
        return told.isEmpty() ? "" : language.say("report.marks.grades", "grades", String.join(", ", told));
    }

    private String reliability() {
        return results.reliability()
                .map(found -> Language.joined(
                        language.say(
                                "report.marks.reliability",
                                "problems",
                                Integer.toString(found.parts()),
                                "alpha",
                                Amounts.decimal(found.alpha(), 2, language),
                                "low",
                                Amounts.decimal(found.low(), 2, language),
                                "high",
                                Amounts.decimal(found.high(), 2, language),
                                "error",
                                percent(found.error())),
                        found.alpha() < RANKED ? language.say("report.marks.no-ranks") : "",
                        language.say("report.marks.comparing")))
                .orElseGet(() -> language.say("report.marks.no-reliability"));
    }

    // Learners and files

    private void changes(List<MarkChange> changed) {
        heading(language.say("report.changes"));
        if (changed.isEmpty()) {
            say(language.say("report.changes.none"));
            return;
        }
        List<List<Cell>> rows = new ArrayList<>();
        for (MarkChange change : changed) {
            String before = change.before().told(language);
            List<Cell> row = seat(change.seat());
            row.addAll(cells(
                    before.isEmpty() ? language.say("report.changes.no-marks") : before,
                    change.now().told(language)));
            rows.add(row);
        }
        blocks.add(new Table(
                language.say("report.changes.table"),
                head(language.say("report.head.before"), language.say("report.head.now")),
                rows));
    }

    private void corrected() {
        if (corrected.isEmpty()) {
            return;
        }
        heading(language.say("report.corrected"));
        say(language.say("report.corrected.legend"));
        List<List<Cell>> rows = new ArrayList<>();
        for (ChangedVerdict.Of of : corrected) {
            List<Cell> row = seat(of.seat());
            row.addAll(cells(
                    of.change().question(),
                    results.title(of.change().template()),
                    privacy.typed(of.change().now()),
                    of.change().toldBefore(language),
                    of.change().toldNow(language)));
            rows.add(row);
        }
        blocks.add(new Table(
                language.say("report.corrected.table"),
                head(
                        language.say("report.head.question"),
                        language.say("report.head.problem"),
                        language.say("report.head.answer"),
                        language.say("report.head.before"),
                        language.say("report.head.now")),
                rows));
    }

    private void learners() {
        heading(language.say("report.learners"));
        List<List<Cell>> rows = new ArrayList<>();
        for (Standing standing : results.standings()) {
            List<Cell> row = seat(standing.seat());
            row.addAll(cells(
                    Amounts.of(
                            Amounts.marks(standing.marks(), language),
                            Amounts.marks(standing.mostMarks(), language),
                            language),
                    percent(ClassResults.share(standing)),
                    Long.toString(standing.count(Credit.BLANK)),
                    Long.toString(standing.late())));
            row.add(new Cell(language.say("report.learners.feedback"), Marking.feedback(standing.seat())));
            rows.add(row);
        }
        blocks.add(new Table(
                "",
                head(
                        language.say("report.head.marks"),
                        language.say("report.head.share"),
                        language.say("report.head.open"),
                        language.say("report.head.late"),
                        language.say("report.head.page")),
                rows));
    }

    private List<String> head(String... columns) {
        List<String> head = new ArrayList<>(seatHead(privacy, language));
        head.addAll(List.of(columns));
        return head;
    }

    /** Without a column for names where none may be printed. */
    static List<String> seatHead(Privacy privacy, Language language) {
        return privacy.isOn()
                ? List.of(language.say("report.head.seat"))
                : List.of(language.say("report.head.seat"), language.say("report.head.name"));
    }

    private List<Cell> seat(Roster.Seat seat) {
        String number = Integer.toString(seat.number());
        return privacy.isOn() ? cells(number) : cells(number, seat.name());
    }

    private void files() {
        heading(language.say("report.came-in"));
        List<FileNote> noted = came.files().stream()
                .filter(file -> file.isLate() || !file.notes().isEmpty() || file.marked() == 0)
                .toList();
        String files = language.count("report.came-in.files", came.files().size());
        say(
                noted.isEmpty()
                        ? language.say("report.came-in.in-full", "files", files)
                        : language.count("report.came-in.to-look-at", noted.size(), "files", files),
                came.setAside() == 0 ? "" : language.count("report.came-in.set-aside", came.setAside()));
        if (!noted.isEmpty()) {
            blocks.add(new Table(
                    language.say("report.came-in.table"),
                    List.of(
                            language.say("report.head.file"),
                            language.say("report.head.marked"),
                            language.say("report.head.became"),
                            language.say("report.head.notes")),
                    noted.stream()
                            .map(file -> cells(
                                    file.shown(),
                                    Integer.toString(file.marked()),
                                    fate(file),
                                    String.join("; ", file.told(language))))
                            .toList()));
        }
    }

    private String fate(FileNote file) {
        String fate = file.fate(language);
        return file.isLate() ? language.say("report.fate.late", "fate", fate) : fate;
    }

    static List<Cell> cells(String... texts) {
        List<Cell> cells = new ArrayList<>();
        for (String text : texts) {
            cells.add(text(text));
        }
        return cells;
    }

    static Cell text(String text) {
        return new Cell(text, "");
    }
}
