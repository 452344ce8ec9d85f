package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import ampersheet.answer.Judge;
import ampersheet.answer.ProblemKey;
import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Printable;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.Unit;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.PartsReader;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SheetProblem;
import ampersheet.sheet.SmallLibrary;
import ampersheet.source.Languages;
import ampersheet.source.SafeCsv;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Whatever is fed to a reader, it reads it or refuses it in words, within a second.
 *
 * <p>A build feeds some thousands of inputs. {@code -Dampersheet.fuzz=COUNT} (or {@code -Pdeep}) feeds more, and may be
 * stopped at any time: {@code target/reader-fuzz.state} holds seed and number, from which the next run goes on; when
 * all are done, the next run begins with another seed. {@code -Dampersheet.fuzzAt=SEED:NUMBER} feeds a single one
 * again.
 */
class ReaderFuzzTest {
    private static final int IN_A_BUILD = 8_000;
    private static final int DEEP = 300_000;
    private static final int KEEP_EVERY = 2_000;
    private static final long LONGEST_NANOSECONDS = 1_000_000_000L;
    private static final int LONGEST_MESSAGE = 200_000;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final Path STATE = Path.of("target/reader-fuzz.state");

    private static final String PLAN = """
      title: Lanterns
      seed: one
      order: mixed
      problems:
        - {template: current-limiting/indicator, example: yes}
        - {template: voltage-dividers/plain-divider, support: faded, fade: forward, blank: 1, given: {Vs: 12 V}}
        - {pool: [current-limiting/indicator, voltage-dividers/plain-divider], count: 2}
      """;
    private static final ClassSheets SHEETS =
            new SheetMaker(ProblemSet.of(PlanReader.read("plan.yaml", """
      title: Lanterns
      problems:
        - {template: current-limiting/indicator}
        - {template: voltage-dividers/plain-divider, support: faded, fade: forward, blank: 1}
      """), SmallLibrary.open()));
    private static final Sheet SHEET = SHEETS.issued(1).sheet();
    private static final List<ProblemKey> KEYS =
            SHEET.problems().stream().map(SheetProblem::key).toList();
    private static final List<Unit> UNITS = List.of("V", "mA", "kΩ", "K/W", "°C", "%", "1", "m", "bit/s").stream()
            .map(Unit::parse)
            .toList();

    /** What is read, from what inputs are made, and how. */
    private enum Reader {
        ROSTER(
                text -> RosterReader.read("class.csv", text),
                "seat,name\n1,Ada\n2,\"Lovelace, Bo\"\n",
                "Name;Seat\nEve;3\n"),
        PARTS(
                text -> PartsReader.read("parts.csv", text),
                "kind,value,tolerance,rating,count\nresistor,4.7 kohm,5 %,0.25 W,40\n"
                        + "led,2 V,,,9\nmeter,10 mV,0.5 % + 2 digits,,1\n"),
        PLAN_FILE(text -> PlanReader.read("plan.yaml", text), PLAN, "title: \"a\\tb\"\nproblems: [{template: a/b}]\n"),
        TIMES(
                text -> ReceivedList.read("times.csv", text, List.of("ada.csv", "bo.csv")),
                "file,received\nada.csv,2026-03-05T17:40\nbo.csv,2026-03-05 18:00\n"),
        MARKS(text -> EarlierMarks.read("marks.csv", text), "seat,marks,of\n1,3,4\n2,0.5,4\n"),
        TABLE(
                text -> answers(AnswerTable.read("a.csv", "a.csv", text, Privacy.none(Languages.ENGLISH))),
                "sheet,question,answer\n" + SHEET.id() + ",q1a,4.7 kΩ\n" + SHEET.id() + ",q2a,\"4,7 V\"\n"),
        GRID(
                text -> answers(AnswerTable.read("grid.csv", "grid.csv", text, Privacy.none(Languages.ENGLISH))),
                "sheet,seat,name,q1a,q2a\n" + SHEET.id() + ",1,Ada,4.7 kΩ,\"4,7 V\"\n,2,'=Bo,-,\n",
                "sep=;\n" + SHEET.id() + ";q1a;4,7 kΩ\n"),
        DECISIONS(
                text -> DecisionsReader.read("decisions.csv", text),
                "seat,question,answer,file,decision,value,reason\n1,q1a,\"4,700 Ω\",,read as,4.7 kΩ,so\n"
                        + "2,,,a.csv,counts,,so\n,q2a,,,leave out,,so\n"),
        FILLED(
                text -> answers(FilledSheet.read("a.md", text, Privacy.none(Languages.ENGLISH))),
                "**Sheet " + SHEET.id() + "**\n\n    q1a  R = 4k7\n"
                        + "\n**q1b** Which?\n\n- [x] yes\n- [ ] no\n\n    q2a  U = ____12 V____\n"),
        SHEET_ID(text -> SHEETS.readId(text), SHEET.id().toString(), "A7K3M-007-R"),
        QUANTITY(
                text -> {
                    QuantityReader.read(text);
                    UNITS.forEach(unit -> QuantityReader.read(text, unit));
                },
                "4.7 kΩ",
                "4k7",
                "R = 1,234.5 ± 5 %",
                "seven pairs",
                "1.2×10^-3 A",
                "3 V per min",
                "12 bit/s",
                "№ 7th"),
        ANSWER(
                text -> KEYS.forEach(key -> Judge.judge(key, typed(key, text))),
                "4.7 kΩ",
                "yes",
                "(a)",
                "0.447",
                "no. 3",
                "470");

        private final Consumer<String> read;
        private final List<String> texts;

        Reader(Consumer<String> read, String... texts) {
            this.read = read;
            this.texts = List.of(texts);
        }

        private static Map<String, String> typed(ProblemKey key, String text) {
            return key.answers().stream()
                    .collect(Collectors.toMap(
                            answer -> answer.question(), answer -> text, (a, b) -> a, LinkedHashMap::new));
        }

        private static void answers(ReturnedFile file) {
            require(file.faults().list());
            file.answers().forEach(answer -> SafeCsv.asText(answer.text()));
        }
    }

    private static final String[] PIECES = {
        ",",
        ";",
        "\t",
        "\"",
        "\"\"",
        "'",
        "\n",
        "\r\n",
        "\r",
        " ",
        "\u00A0",
        "-",
        "−",
        "=",
        "+",
        "@",
        "|",
        "#",
        "&a",
        "*a",
        "!!x",
        "{",
        "}",
        "[",
        "]",
        "(",
        ")",
        ": ",
        "- ",
        "? ",
        "%",
        "\\",
        "\\e",
        "\\u202e",
        "\u0000",
        "\u001B[31m",
        "\u0085",
        "\u2028",
        "\u202E",
        "\u2066",
        "\uFEFF",
        "\uFFFD",
        "\uD83D\uDE00",
        "\uD83D",
        "\uDE00",
        "e\u0301",
        "İ",
        "ß",
        "٣",
        "９",
        "²",
        "⁻",
        "Ω",
        "µ",
        "°",
        "±",
        "×10^",
        "^",
        "/",
        "//",
        "**",
        "____",
        "> ",
        "- [x] ",
        "- [",
        "q1a",
        "q2s1 = ",
        "0",
        "1",
        "9",
        "000000",
        "999999",
        "1e999",
        "0x10",
        "1/0",
        "NaN",
        "9".repeat(40),
        "title:",
        "problems:",
        "template:",
        "count: 99",
        "seat",
        "name",
        "sheet,question,answer",
        "kind",
        "minus ",
        "half ",
        "Sheet ",
        "per ",
        "milli",
        "k",
        "M",
        "R",
    };

    /** Input {@code number} of a seed; each can be made by itself. */
    private record Input(long seed, long number) {
        Random random() {
            return new Random(seed * 0x9E3779B97F4A7C15L ^ number * 0xC2B2AE3D27D4EB4FL);
        }

        Reader reader() {
            return Reader.values()[(int) (number % Reader.values().length)];
        }

        String text() {
            Random random = random();
            StringBuilder text = new StringBuilder(
                    reader().texts.get(random.nextInt(reader().texts.size())));
            int changes = random.nextInt(10);
            for (int i = 0; i < changes; i++) {
                change(text, random);
            }
            if (random.nextInt(300) == 0) {
                swell(text, random);
            }
            return text.toString();
        }

        private static void change(StringBuilder text, Random random) {
            int at = random.nextInt(text.length() + 1);
            int to = Math.min(text.length(), at + 1 + random.nextInt(1 + random.nextInt(12)));
            switch (random.nextInt(6)) {
                case 0 -> text.delete(at, to);
                case 1 -> text.insert(at, text.substring(at, to));
                case 2 -> text.insert(at, (char) random.nextInt(random.nextInt(8) == 0 ? 0x10000 : 0x80));
                case 3 -> text.insert(random.nextInt(text.length() + 1), text.substring(at, to));
                default -> text.insert(at, PIECES[random.nextInt(PIECES.length)]);
            }
        }

        /** What is not linear shows itself. */
        private static void swell(StringBuilder text, Random random) {
            int from = random.nextInt(text.length() + 1);
            String part = random.nextBoolean()
                    ? PIECES[random.nextInt(PIECES.length)]
                    : text.substring(from, Math.min(text.length(), from + 1 + random.nextInt(60)));
            int times = (1 + random.nextInt(150_000)) / Math.max(1, part.length());
            text.insert(random.nextInt(text.length() + 1), part.repeat(times));
        }

        @Override
        public String toString() {
            return reader() + ", -Dampersheet.fuzzAt=" + seed + ":" + number;
        }
    }

    @Test
    void everyInputIsReadOrRefusedInWordsWithinASecond() throws IOException {
        String at = System.getProperty("ampersheet.fuzzAt", "");
        if (!at.isEmpty()) {
            String[] parts = at.split(":");
            feed(new Input(Long.parseLong(parts[0]), Long.parseLong(parts[1])));
            return;
        }
        boolean deep = Boolean.getBoolean("ampersheet.deep");
        long count = Long.getLong("ampersheet.fuzz", deep ? DEEP : IN_A_BUILD);
        boolean kept = deep || System.getProperty("ampersheet.fuzz") != null;
        Run run = kept ? Run.kept(STATE, count) : new Run(1, 0);
        for (long number = run.done(); number < count; number++) {
            feed(new Input(run.seed(), number));
            if (kept && (number + 1) % KEEP_EVERY == 0) {
                new Run(run.seed(), number + 1).keep(STATE);
            }
        }
        if (kept) {
            new Run(run.seed(), count).keep(STATE);
        }
    }

    /** How far a long run has come. */
    private record Run(long seed, long done) {
        /** Goes on where the last one stopped; after its end, with another seed. */
        static Run kept(Path state, long count) throws IOException {
            if (!Files.exists(state)) {
                return new Run(1, 0);
            }
            String[] parts =
                    Files.readString(state, StandardCharsets.UTF_8).strip().split(" ");
            Run last = new Run(Long.parseLong(parts[0]), Long.parseLong(parts[1]));
            return last.done() < count ? last : new Run(last.seed() + 1, 0);
        }

        void keep(Path state) throws IOException {
            Path whole = state.resolveSibling(state.getFileName() + ".part");
            Files.createDirectories(state.toAbsolutePath().getParent());
            Files.writeString(whole, seed + " " + done + "\n", StandardCharsets.UTF_8);
            Files.move(whole, state, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        }
    }

    @Test
    void aRunThatWasStoppedGoesOnWhereItWas(@org.junit.jupiter.api.io.TempDir Path folder) throws IOException {
        Path state = folder.resolve("state");
        assertEquals(new Run(1, 0), Run.kept(state, 100));
        new Run(1, 40).keep(state);
        assertEquals(new Run(1, 40), Run.kept(state, 100));
        new Run(1, 100).keep(state);
        assertEquals(new Run(2, 0), Run.kept(state, 100));
        assertEquals(new Run(1, 100), Run.kept(state, 200), "more of the same");
    }

    /** Found by a long run: line feeds that a fold stands for were each looked for anew. */
    @Test
    void aPlanWithManyEmptyLinesIsReadInLinearTime() {
        for (String plan : List.of("title: a%s b\nproblems: []\n", "ti%stle: a\nproblems: []\n")) {
            long begun = THREADS.getCurrentThreadCpuTime();
            assertThrows(
                    DiagnosticException.class, () -> PlanReader.read("plan.yaml", plan.formatted("\n".repeat(80_000))));
            assertTrue(THREADS.getCurrentThreadCpuTime() - begun < 2 * LONGEST_NANOSECONDS, plan);
        }
    }

    private static void feed(Input input) {
        String text = input.text();
        long fastest = Long.MAX_VALUE;
        // Of this thread's own time, for others may use the machine; and three times, for the first run may compile.
        for (int i = 0; i < 3 && fastest > LONGEST_NANOSECONDS; i++) {
            long begun = THREADS.getCurrentThreadCpuTime();
            feed(input, text);
            fastest = Math.min(fastest, THREADS.getCurrentThreadCpuTime() - begun);
        }
        assertTrue(fastest <= LONGEST_NANOSECONDS, () -> input + " takes more than a second: " + shown(text));
    }

    private static void feed(Input input, String text) {
        try {
            input.reader().read.accept(text);
        } catch (DiagnosticException refused) {
            require(refused.diagnostics());
            assertTrue(
                    refused.getMessage().length() < LONGEST_MESSAGE,
                    () -> input + " is refused at length: " + shown(text));
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError fault) {
            fail(input + " fails with " + fault + ": " + shown(text), fault);
        }
    }

    private static void require(List<Diagnostic> faults) {
        for (Diagnostic fault : faults) {
            String told = fault.print();
            assertTrue(told.codePoints().noneMatch(c -> c != '\n' && Printable.acts(c)), told);
            assertTrue(!fault.problem().isBlank() && !fault.nextAction().isBlank(), told);
        }
    }

    private static String shown(String text) {
        return text.length() + " characters, "
                + Printable.line(text.length() > 300 ? text.substring(0, 200) + "…" : text);
    }
}
