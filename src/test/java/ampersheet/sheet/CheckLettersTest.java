package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.KnownMistake;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.problem.Draws;
import ampersheet.problem.Problem;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class CheckLettersTest {
    private static final int DRAWS = Boolean.getBoolean("ampersheet.deep") ? 10 : 3;
    private static final long SEED = 20261126;

    private record Asked(String template, AnswerKey key, Optional<CheckLetters.Check> check) {}

    private static List<Asked> everyTemplate() {
        TemplateLibrary library = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
        List<Asked> asked = new ArrayList<>();
        for (String name : library.names()) {
            Draws draws = new Draws(new Workshop(library.template(name)), "check letters");
            for (int i = 0; i < DRAWS; i++) {
                Problem problem = draws.draw(i);
                for (AnswerKey key :
                        SheetProblem.alone(problem, DecimalMarker.POINT).answers()) {
                    if (!(key.acceptance() instanceof Acceptance.Choice
                            || key.acceptance() instanceof Acceptance.Designed)) {
                        asked.add(new Asked(name, key, CheckLetters.of("sheet " + i, key)));
                    }
                }
            }
        }
        return asked;
    }

    @Test
    void rightAnswersHaveTheLetterAndModelledMistakesNever() {
        Random random = new Random(SEED);
        Map<String, Integer> without = new TreeMap<>();
        int questions = 0;
        int byChance = 0;
        int guesses = 0;
        int several = 0;
        for (Asked asked : everyTemplate()) {
            AnswerKey key = asked.key();
            String where = asked.template() + " " + key + ", seed " + SEED;
            questions++;
            if (asked.check().isEmpty()) {
                without.merge(asked.template() + " " + key.step(), 1, Integer::sum);
                continue;
            }
            CheckCode code = asked.check().get().code();
            Set<Character> right = asked.check().get().letters();
            several += right.size() > 1 ? 1 : 0;
            boolean count = key.acceptance() instanceof Acceptance.Count;
            for (int i = 0; i < 20; i++) {
                double within = count
                        ? key.expected()
                        : key.expected() + key.acceptance().band(key.expected()) * (2 * random.nextDouble() - 1);
                assertTrue(
                        right.contains(
                                code.letter(CheckLetters.number(key, within)).orElseThrow()),
                        where);
            }
            for (KnownMistake mistake : key.mistakes()) {
                for (int i = 0; i < 20; i++) {
                    double near = CheckLetters.number(key, mistake.value())
                            * (count ? 1 : 1 + 0.01 * (2 * random.nextDouble() - 1));
                    assertTrue(code.letter(near).filter(right::contains).isEmpty(), where + " " + mistake);
                }
            }
            if (!count) {
                for (double factor : new double[] {1e-6, 1e-3, 0.1, 10, 1e3, 1e6}) {
                    assertFalse(
                            right.contains(code.letter(CheckLetters.number(key, key.expected()) * factor)
                                    .orElseThrow()),
                            where);
                }
            }
            for (int i = 0; i < 40; i++) {
                double wrong = key.expected() * Math.pow(10, 4 * random.nextDouble() - 2);
                double guess = count ? Math.rint(wrong) : wrong;
                if (right.size() == 1 && !key.acceptance().accepts(key.expected(), guess)) {
                    guesses++;
                    byChance += code.letter(CheckLetters.number(key, guess))
                                    .filter(right::contains)
                                    .isPresent()
                            ? 1
                            : 0;
                }
            }
        }
        double share = byChance / (double) guesses;
        assertTrue(share > 0.045 && share < 0.075, "a wrong guess passes " + share + " of the time; 1/16 is told");
        assertTrue(several <= questions / 20, several + " of " + questions + " questions have several letters");
        int missing = without.values().stream().mapToInt(Integer::intValue).sum();
        assertTrue(missing <= questions / 40, "questions without a letter: " + without);
    }

    @Test
    void aLetterTellsNeitherItsRowNorItsColumn() {
        for (int column = 0; column < CheckTable.COLUMNS; column++) {
            int[] times = new int[CheckTable.LETTERS.length()];
            for (int row = 0; row < CheckTable.ROWS; row++) {
                times[CheckTable.LETTERS.indexOf(CheckTable.letter(row, column))]++;
            }
            for (int time : times) {
                assertTrue(time == 2 || time == 3, "a letter stands " + time + " times in column " + column);
            }
        }
    }

    @Test
    void alongARowNoLetterComesTwiceAndRowsWidenEvenly() {
        for (int row = 0; row < CheckTable.ROWS; row++) {
            TreeSet<Character> letters = new TreeSet<>();
            for (int column = 0; column < CheckTable.COLUMNS; column++) {
                letters.add(CheckTable.letter(row, column));
            }
            assertEquals(CheckTable.COLUMNS, letters.size());
            for (int way = 0; way < CheckTable.WAYS && row > 0; way++) {
                double ratio = CheckTable.limit(way, row) / CheckTable.limit(way, row - 1);
                assertTrue(ratio > 1.060 && ratio < 1.065, ratio + " at row " + row);
            }
        }
    }

    /** By hand with the printed table: the worked example of the instructions. */
    @Test
    void theProcedureThatIsPrintedGivesTheLetter() {
        assertEquals(CheckTable.letter(23, 4), new CheckCode('N', 4).letter(137).orElseThrow());
        int row = 0;
        while (CheckTable.limit(1, row + 1) <= 1.63) {
            row++;
        }
        assertEquals(
                CheckTable.letter(row, 2), new CheckCode('B', 4).letter(0.0163).orElseThrow());
        assertEquals(
                CheckTable.letter(row, 7), new CheckCode('B', 4).letter(-0.0163).orElseThrow());
        assertEquals(
                CheckTable.letter(CheckTable.ROWS - 1, 3),
                new CheckCode('B', 4).letter(1.01).orElseThrow(),
                "below the first limit of B, 1.01 is 10.1 with the power −1");
    }

    @Test
    void theTableStaysAsItIsPrinted() {
        StringBuilder table = new StringBuilder();
        for (int row = 0; row < CheckTable.ROWS; row++) {
            for (int column = 0; column < CheckTable.COLUMNS; column++) {
                table.append(CheckTable.letter(row, column));
            }
        }
        assertEquals(
                "9fe7cbfd4647",
                Fingerprint.of(table.toString()).substring(0, 12),
                "sheets already printed use another table");
    }

    /** A letter of the key's own choice would tell a learner with another right one that it is wrong. */
    @Test
    void designsAndWhatFollowsFromThemHaveNoLetterAndSayWhy() {
        ProblemSet set = ProblemSet.of(
                PlanReader.read("plan.yaml", "title: T\nproblems: [{template: voltage-dividers/design-pair}]\n"),
                new TemplateLibrary(List.of(TemplateFiles.builtIn())));
        Map<String, Boolean> lettered = new TreeMap<>();
        for (int seat = 1; seat <= 2 * DRAWS; seat++) {
            Sheet sheet = new SheetMaker(set).sheet(seat);
            for (Document.Block block :
                    CheckLetters.addedTo(Composer.sheet(sheet, ""), sheet).blocks()) {
                if (block instanceof Document.ProblemBlock problem) {
                    problem.blocks().stream()
                            .filter(Document.Question.class::isInstance)
                            .map(Document.Question.class::cast)
                            .forEach(question -> lettered.merge(
                                    question.id(), question.check().matches(CheckLetters.PRINTED), Boolean::logicalOr));
                }
            }
        }
        assertEquals(Map.of("q1a", true, "q1b", false, "q1c", false, "q1d", false), lettered);
    }

    @Test
    void theExampleOfTheWordsIsFoundInTheTableAndNothingIsToldThatNoBoxNeeds() {
        ProblemSet set = ProblemSet.of(
                PlanReader.read(
                        "plan.yaml",
                        "title: T\ndecimal: comma\nproblems: [{template: current-limiting/one-indicator}]\n"),
                new TemplateLibrary(List.of(TemplateFiles.builtIn())));
        Sheet sheet = new SheetMaker(set).sheet(1);
        List<Document.Block> blocks =
                CheckLetters.addedTo(Composer.sheet(sheet, ""), sheet).blocks();
        String words = ((Document.Prose) blocks.get(blocks.size() - 2)).markdown();
        char letter = new CheckCode('B', 4).letter(0.0163).orElseThrow();
        assertTrue(words.contains("such as **B4\u00a0" + letter + "**"), words);
        assertTrue(words.contains("1,63\u00a0×\u00a010⁻²") && words.contains("There stands **" + letter + "**"), words);
        assertFalse(words.contains("°C") || words.contains("share") || words.contains("whole numbers"), words);
        Document.Table table = (Document.Table) blocks.get(blocks.size() - 1);
        int row = Integer.parseInt(words.replaceAll("(?s).*: row (\\d+)\\..*", "$1"));
        assertEquals(
                Character.toString(letter), table.rows().get(row).get(4 + 2).text(), "row " + row + ", column 2");
    }

    /** Those that the words work out: 358 by N and by M. */
    @Test
    void theRowsOfTheExamplesForWholeNumbersAreTheCodesOwn() {
        assertEquals(CheckTable.letter(6, 0), new CheckCode('N', 0).letter(358).orElseThrow());
        assertEquals(CheckTable.letter(24, 0), new CheckCode('M', 0).letter(358).orElseThrow());
    }

    private static Sheet lettered(String setting) {
        return new SheetMaker(ProblemSet.of(
                        PlanReader.read(
                                "plan.yaml",
                                "title: T\nseed: x\n" + setting
                                        + "problems:\n  - {template: current-limiting/one-indicator, count: 2}\n"),
                        new TemplateLibrary(List.of(TemplateFiles.builtIn()))))
                .sheet(1);
    }

    private static String printed(Sheet sheet) {
        return CheckLetters.addedTo(Composer.sheet(sheet, ""), sheet).blocks().toString();
    }

    @Test
    void aPlanGivesLettersToEverySecondBoxOrToNoneAndChangesNoSheetByThat() {
        Sheet every = lettered("");
        Sheet second = lettered("check-letters: every second\n");
        Sheet none = lettered("check-letters: none\n");
        assertEquals(printed(every), printed(lettered("check-letters: all\n")));
        assertEquals(every.id(), second.id());
        assertEquals(every.id(), none.id());
        List<String> able = List.copyOf(CheckLetters.of(every).keySet());
        List<String> expected = new ArrayList<>();
        for (int i = 0; i < able.size(); i += 2) {
            expected.add(able.get(i));
        }
        assertTrue(expected.size() >= 2, able.toString());
        assertEquals(expected, List.copyOf(CheckLetters.of(second).keySet()));
        assertTrue(printed(second).contains("Beside every second box stands a code"), printed(second));
        assertEquals(Composer.sheet(none, "").blocks().toString(), printed(none), "as without letters");
        Roster.Seat seat = new Roster.Seat(1, "");
        Map<String, String> answers = ClassAnswers.row(seat, second, true).answers();
        answers.forEach((question, answer) -> assertEquals(
                expected.contains(question), answer.contains(" · "), "the host's table has the letters: " + answer));
        assertThrows(DiagnosticException.class, () -> lettered("check-letters: every third\n"));
    }
}
