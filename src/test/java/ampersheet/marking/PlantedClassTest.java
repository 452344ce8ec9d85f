package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.render.markdown.MarkdownPage;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetId;
import ampersheet.sheet.SheetMaker;
import ampersheet.source.SafeCsv;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A class of two hundred whose hand-ins hold everything that goes wrong around answers. What each learner meant is
 * known here: each of her answers must earn what it earns in a clean file, or be listed for the instructor.
 */
class PlantedClassTest {
    private static final long SEED = 20_261_129L;
    private static final int LEARNERS = 200;
    private static final String HEAD = "sheet,question,answer,seat,save,browser\n";
    private static final ProblemSet SET =
            ProblemSet.of(PlanReader.read("plan.yaml", """
      title: Planted
      seed: planted class
      problems:
        - {template: current-limiting/one-indicator}
        - {template: voltage-dividers/battery-sense}
        - {template: voltage-dividers/loaded-divider}
      """), new TemplateLibrary(List.of(TemplateFiles.builtIn())));

    @TempDir
    private Path folder;

    private static final SheetMaker MAKER = new SheetMaker(SET);
    private static final Map<Integer, ClassSheets.IssuedSheet> SHEETS = new TreeMap<>();
    /** The same sheets in each run, each drawn once. */
    private static final ClassSheets DRAWN_ONCE = new ClassSheets() {
        @Override
        public Plan plan() {
            return MAKER.plan();
        }

        @Override
        public String code() {
            return MAKER.code();
        }

        @Override
        public SheetId readId(String typed) {
            return MAKER.readId(typed);
        }

        @Override
        public boolean has(int seat) {
            return MAKER.has(seat);
        }

        @Override
        public IssuedSheet issued(int seat) {
            return SHEETS.computeIfAbsent(seat, MAKER::issued);
        }

        @Override
        public List<ProblemTemplate> templates() {
            return MAKER.templates();
        }
    };

    private final List<Roster.Seat> seats = new ArrayList<>();
    /** What each learner meant, by seat and question. */
    private final Map<Integer, Map<String, String>> meant = new TreeMap<>();
    /** Which kind of trouble a seat has. */
    private final Map<Integer, String> kinds = new TreeMap<>();
    /** Files that count where the instructor has to decide, by seat. */
    private final Map<Integer, String> truth = new TreeMap<>();

    private record Run(Map<String, String> files, Marking.Marked marked) {
        List<CSVRecord> rows(String table) throws IOException {
            try (CSVParser parser = CSVParser.parse(
                    files.get(table),
                    CSVFormat.DEFAULT
                            .builder()
                            .setHeader()
                            .setSkipHeaderRecord(true)
                            .get())) {
                return parser.getRecords();
            }
        }

        Map<String, String> marks() throws IOException {
            Map<String, String> marks = new TreeMap<>();
            for (CSVRecord row : rows("answers.csv")) {
                marks.put(row.get("seat") + " " + row.get("question"), row.get("mark"));
            }
            return marks;
        }

        Map<String, String> statuses() throws IOException {
            Map<String, String> statuses = new TreeMap<>();
            for (CSVRecord row : rows("marks.csv")) {
                statuses.put(row.get("seat"), row.get("status"));
            }
            return statuses;
        }
    }

    private static Run mark(Path answers, Roster roster, String decisions) {
        Map<String, String> files = new TreeMap<>();
        Marking.Task task = new Marking.Task(
                answers,
                DRAWN_ONCE,
                Optional.empty(),
                roster,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OtherSheets.NONE,
                false);
        Marking.Marked marked = Marking.mark(
                decisions.isEmpty() ? task : task.deciding(new Marking.NamedText("decisions.csv", decisions)),
                files::put);
        return new Run(files, marked);
    }

    // Planting

    private static String lines(String id, Map<String, String> answers, String behind) {
        StringBuilder out = new StringBuilder();
        answers.forEach((question, text) -> out.append(id + "," + question + ",\"" + text + "\"" + behind + "\n"));
        return out.toString();
    }

    private String id(int seat) {
        return SET.id(seat).toString();
    }

    private String saved(int seat, Map<String, String> answers, int save, String browser) {
        return HEAD + lines(id(seat), answers, "," + seat + "," + save + "," + browser);
    }

    private static Map<String, String> wrong(Map<String, String> answers) {
        Map<String, String> other = new LinkedHashMap<>();
        answers.forEach((question, text) -> other.put(question, 33 + other.size() + " F"));
        return other;
    }

    private Path came() {
        return folder.resolve("came");
    }

    private void put(String name, String text) throws IOException {
        put(name, text, StandardCharsets.UTF_8);
    }

    private void put(String name, String text, Charset charset) throws IOException {
        Files.write(came().resolve(name), text.getBytes(charset));
    }

    @BeforeEach
    void plant() throws IOException {
        Files.createDirectories(came());
        SimulatedClass learners = new SimulatedClass(MAKER, SEED);
        StringBuilder grid = new StringBuilder();
        StringBuilder together = new StringBuilder();
        for (int seat = 1; seat <= LEARNERS; seat++) {
            seats.add(
                    new Roster.Seat(seat, (seat % 9 == 0 ? "=" : "") + "Learner " + seat, List.of("s" + seat + "@x")));
            Map<String, String> answers =
                    new LinkedHashMap<>(learners.learner(seat, 2, 0.1, 0.04).typed());
            String kind = plant(seat, answers, grid, together);
            kinds.put(seat, kind);
            meant.put(seat, answers);
        }
        put("paper.csv", "sheet,seat,name," + String.join(",", meant.get(1).keySet()) + "\n" + grid);
        put("together.csv", together.toString());
    }

    private String plant(int seat, Map<String, String> answers, StringBuilder grid, StringBuilder together)
            throws IOException {
        String file = "answers-" + id(seat);
        String table = "sheet,question,answer\n" + lines(id(seat), answers, "");
        if (seat <= 20) {
            put(file + ".csv", saved(seat, wrong(answers), 1, "ABCDEF"));
            put(file + " (1).csv", saved(seat, answers, 2, "ABCDEF"));
            return "saved twice";
        } else if (seat <= 30) {
            put(file + ".csv", table);
            put(file + "-b.csv", "sheet,question,answer\n" + lines(id(seat), wrong(answers), ""));
            truth.put(seat, file + ".csv");
            return "contradicting, no order";
        } else if (seat <= 40) {
            put(file + ".csv", saved(seat, answers, 1, "ABCDEF"));
            put("from a stranger " + seat + ".csv", saved(seat, wrong(answers), 7, "HGFEDC"));
            truth.put(seat, file + ".csv");
            return "stranger, same ID";
        } else if (seat <= 45) {
            put(
                    "other seat " + seat + ".csv",
                    saved(seat, answers, 1, "ABCDEF").replace("," + seat + ",1,", ",199,1,"));
            truth.put(seat, "other seat " + seat + ".csv");
            return "page of another seat";
        } else if (seat <= 50) {
            put(file + ".csv", table, StandardCharsets.UTF_16);
            return "UTF-16";
        } else if (seat <= 55) {
            answers.replaceAll((question, text) -> {
                String plain = text.replace("Ω", "ohm");
                return StandardCharsets.ISO_8859_1.newEncoder().canEncode(plain) ? plain : "";
            });
            put(file + ".csv", "sheet,question,answer\n" + lines(id(seat), answers, ""), StandardCharsets.ISO_8859_1);
            return "Latin-1";
        } else if (seat <= 60) {
            put(file + ".csv", "sep=;\r\n" + table.replace(",", ";"));
            return "sep=;";
        } else if (seat <= 65) {
            put(file + ".csv", table.replace(",", "\t"));
            return "tabs";
        } else if (seat <= 70) {
            put(file + ".csv", lines(id(seat), answers, ""));
            return "no first line";
        }
        return plantMore(seat, answers, grid, together, file);
    }

    private String plantMore(
            int seat, Map<String, String> answers, StringBuilder grid, StringBuilder together, String file)
            throws IOException {
        if (seat <= 85) {
            boolean blank = seat > 82;
            answers.replaceAll((question, text) -> blank ? "" : text);
            List<String> row =
                    new ArrayList<>(List.of(id(seat), "", seats.get(seat - 1).name()));
            answers.values().forEach(text -> row.add(text.isEmpty() ? "-" : text));
            String line = String.join(
                    ",",
                    row.stream()
                            .map(cell -> "\"" + SafeCsv.asText(cell).replace("\"", "\"\"") + "\"")
                            .toList());
            grid.append(line).append('\n');
            return blank ? "blank on paper" : "on paper";
        } else if (seat <= 90) {
            put(
                    Roster.fileName(seat) + ".md",
                    MarkdownPage.render(Composer.sheet(DRAWN_ONCE.issued(seat).sheet(), "")));
            answers.replaceAll((question, text) -> "");
            return "blank sheet";
        } else if (seat <= 95) {
            Files.write(came().resolve(file + ".csv"), new byte[] {1, 2, (byte) 0xFF, 0, 7});
            return "unreadable file";
        } else if (seat <= 100) {
            answers.clear();
            return "nothing";
        } else if (seat <= 120) {
            return plantComma(seat, answers, file);
        } else if (seat <= 130) {
            String first = answers.keySet().iterator().next();
            answers.put(first, "about " + "half of it, I think");
            put(file + ".csv", saved(seat, answers, 1, "ABCDEF"));
            return "unreadable answer";
        } else if (seat <= 140) {
            together.append(saved(seat, answers, 1, "ABCDEF"));
            return "files put together";
        } else if (seat <= 145) {
            String slip = id(seat).substring(0, 8) + (seat % 10 == 9 ? 1 : 9) + id(seat).substring(9);
            put(
                    "slip " + seat + ".csv",
                    ("sheet,question,answer\n" + lines(id(seat), answers, "")).replace(id(seat), slip));
            truth.put(seat, "slip " + seat + ".csv");
            return "slip in the ID";
        }
        put(file + ".csv", saved(seat, answers, 1, "ABCDEF"));
        return "sound";
    }

    /** Every point is a comma; in half of the files nothing but the ambiguous answers is left. */
    private String plantComma(int seat, Map<String, String> answers, String file) throws IOException {
        Map<String, String> typed = new LinkedHashMap<>();
        answers.forEach((question, text) -> typed.put(question, text.replace('.', ',')));
        if (seat > 110) {
            typed.replaceAll((question, text) -> text.matches("[1-9]\\d{0,2},\\d{3}\\D.*") ? text : "");
            answers.replaceAll((question, text) -> typed.get(question).isEmpty() ? "" : text);
        }
        put(file + ".csv", saved(seat, typed, 1, "ABCDEF"));
        return seat > 110 ? "commas, nothing beside" : "commas, others beside";
    }

    /** What everybody meant, in a file each. */
    private Run clean() throws IOException {
        Path clean = Files.createDirectories(folder.resolve("clean"));
        for (int seat = 1; seat <= LEARNERS; seat++) {
            if (!meant.get(seat).isEmpty()) {
                Files.writeString(
                        clean.resolve(seat + ".csv"),
                        saved(seat, meant.get(seat), 1, "ABCDEF"),
                        StandardCharsets.UTF_8);
            }
        }
        return mark(clean, roster(), "");
    }

    private Roster roster() {
        return new Roster(seats, List.of("email"), List.of());
    }

    // What became of it

    @Test
    void nothingIsLostAndNothingIsWronglyFullOrZeroWithoutBeingListed() throws IOException {
        Run clean = clean();
        Run run = mark(came(), roster(), "");
        Map<String, String> should = clean.marks();
        Map<String, String> are = run.marks();
        Map<String, String> statuses = run.statuses();
        Set<String> listed = new LinkedHashSet<>();
        for (CSVRecord row : run.rows("decide.csv")) {
            listed.add(row.get("seat") + " " + row.get("question"));
            listed.add(row.get("file"));
        }
        Map<String, int[]> table = new TreeMap<>();
        List<String> wrong = new ArrayList<>();
        meant.forEach((seat, answers) -> answers.forEach((question, text) -> {
            if (text.isEmpty()) {
                return;
            }
            int[] counts = table.computeIfAbsent(kinds.get(seat), kind -> new int[4]);
            counts[0]++;
            String at = seat + " " + question;
            String status = statuses.get(Integer.toString(seat));
            boolean told = listed.contains(at)
                    || listed.contains(seat + " ")
                    || listed.contains(truth.getOrDefault(seat, "none"))
                    || status.equals("unreadable file");
            boolean same = should.get(at).equals(are.get(at));
            if (same && !told) {
                counts[1]++;
            } else if (told) {
                counts[2]++;
            } else {
                counts[3]++;
                wrong.add(at + " (" + kinds.get(seat) + "): " + are.get(at) + " for " + should.get(at));
            }
        }));
        StringBuilder told = new StringBuilder("kind | planted | found | undecided | lost\n");
        table.forEach((kind, counts) -> told.append(String.format(
                java.util.Locale.ROOT, "%s | %d | %d | %d | %d%n", kind, counts[0], counts[1], counts[2], counts[3])));
        if (Boolean.getBoolean("ampersheet.deep")) {
            System.out.println(told);
        }
        assertEquals(List.of(), wrong, told.toString());
        for (String settled : List.of(
                "saved twice",
                "UTF-16",
                "Latin-1",
                "sep=;",
                "tabs",
                "no first line",
                "on paper",
                "files put together",
                "sound")) {
            assertEquals(table.get(settled)[0], table.get(settled)[1], settled);
        }
        assertEquals(statusesWanted(), statusesOf(statuses));
        everyLineIsKept(run);
    }

    private Map<String, String> statusesWanted() {
        return Map.of(
                "blank on paper", "[blank]",
                "blank sheet", "[blank]",
                "unreadable file", "[unreadable file]",
                "nothing", "[nothing]",
                "contradicting, no order", "[undecided]",
                "stranger, same ID", "[undecided]",
                "slip in the ID", "[undecided]",
                "page of another seat", "[undecided]");
    }

    private Map<String, String> statusesOf(Map<String, String> statuses) {
        Map<String, TreeSet<String>> found = new TreeMap<>();
        kinds.forEach((seat, kind) ->
                found.computeIfAbsent(kind, k -> new TreeSet<>()).add(statuses.get(Integer.toString(seat))));
        Map<String, String> told = new TreeMap<>();
        statusesWanted().keySet().forEach(kind -> told.put(kind, found.get(kind).toString()));
        return told;
    }

    /** What was typed stands in the table of answers or among what was set aside, from whichever file. */
    private void everyLineIsKept(Run run) throws IOException {
        Set<String> kept = new TreeSet<>();
        for (CSVRecord row : run.rows("answers.csv")) {
            kept.add(row.get("question") + " " + row.get("typed"));
        }
        for (CSVRecord row : run.rows("set-aside.csv")) {
            kept.add(row.get("question") + " " + row.get("answer"));
        }
        List<String> lost = new ArrayList<>();
        for (int seat = 1; seat <= 45; seat++) {
            for (Map<String, String> answers : List.of(meant.get(seat), wrong(meant.get(seat)))) {
                if (seat > 40 && answers != meant.get(seat)) {
                    continue;
                }
                answers.forEach((question, text) -> {
                    if (!text.isEmpty() && !kept.contains(question + " " + SafeCsv.asText(text))) {
                        lost.add(question + " " + text);
                    }
                });
            }
        }
        assertEquals(List.of(), lost);
    }

    // Decisions in between

    @Test
    void markedAgainWithDecisionsOnlyWhatWasDecidedChanges() throws IOException {
        Run first = mark(came(), roster(), "");
        assertEquals(first.files(), mark(came(), roster(), "").files(), "the same files give the same bytes");
        Set<String> decided = new TreeSet<>();
        SafeCsv list = new SafeCsv(OwnFile.DECIDE.head());
        int lines = 0;
        for (CSVRecord row : first.rows("decide.csv")) {
            List<String> cells = new ArrayList<>(
                    row.toList().subList(0, OwnFile.DECIDE.head().indexOf("decision")));
            String seat = row.get("seat");
            if (row.get("question").isEmpty()) {
                Optional<Integer> owner = truth.entrySet().stream()
                        .filter(entry -> entry.getValue().equals(row.get("file")))
                        .map(Map.Entry::getKey)
                        .findFirst();
                if (owner.isEmpty()) {
                    continue;
                }
                cells.set(0, owner.get().toString());
                cells.addAll(List.of("counts", "", "asked"));
                decided.add(owner.get().toString());
            } else if (row.get("may_mean").isEmpty()) {
                cells.addAll(List.of("mark", "0.5", "half shown"));
                decided.add(seat);
            } else {
                String meaning = meant.get(Integer.parseInt(seat)).get(row.get("question"));
                cells.addAll(List.of("read as", meaning, "asked"));
                decided.add(seat);
            }
            lines++;
            list.row(cells);
        }
        assertTrue(lines > 30, lines + " decisions");
        Run again = mark(came(), roster(), list.toString());
        assertEquals(0, again.marked().toDecide(), again.files().get("decide.csv"));
        assertEquals(
                List.of(),
                again.marked().notes().stream()
                        .filter(note -> note.problem().contains("no longer fits"))
                        .toList());
        assertEquals(again.files(), mark(came(), roster(), list.toString()).files());
        onlyOf(decided, first, again);
        Map<String, String> should = clean().marks();
        Map<String, String> are = again.marks();
        List<String> other = new ArrayList<>();
        should.forEach((at, mark) -> {
            String kind = kinds.get(Integer.parseInt(at.split(" ")[0]));
            if (!mark.equals(are.get(at)) && !kind.startsWith("unreadable")) {
                other.add(at + " (" + kind + "): " + are.get(at) + " for " + mark);
            }
        });
        assertEquals(List.of(), other, "once all is decided, everybody has what she meant");
    }

    private static void onlyOf(Set<String> decided, Run first, Run again) throws IOException {
        for (String table : List.of("marks.csv", "answers.csv")) {
            List<String> before = undecidedLines(first.files().get(table), decided);
            assertEquals(before, undecidedLines(again.files().get(table), decided), table);
        }
        for (Map.Entry<String, String> page : again.files().entrySet()) {
            if (page.getKey().startsWith("feedback/")) {
                String seat = Integer.toString(Integer.parseInt(page.getKey().replaceAll("\\D", "")));
                if (!decided.contains(seat)) {
                    assertEquals(first.files().get(page.getKey()), page.getValue(), page.getKey());
                }
            }
        }
        Set<String> gone = new TreeSet<>(first.files().keySet());
        gone.removeAll(again.files().keySet());
        assertEquals(Set.of(), gone);
    }

    private static List<String> undecidedLines(String table, Set<String> decided) {
        return table.lines()
                .filter(line -> !decided.contains(line.substring(0, Math.max(0, line.indexOf(',')))))
                .toList();
    }
}
