package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.answer.AnswerKey;
import ampersheet.quantity.QuantityWriter;
import ampersheet.render.html.HtmlPage;
import ampersheet.render.markdown.MarkdownPage;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Question;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class SupportTest {
    private static final int SEATS = Boolean.getBoolean("ampersheet.deep") ? 40 : 12;

    private static Sheet sheet(String template, String keys, int seat) {
        return SmallLibrary.maker(
                        "title: T\nseed: support\nproblems:\n  - {template: " + template + ", " + keys + "}\n")
                .sheet(seat);
    }

    private static List<StepBlock> steps(Sheet sheet) {
        for (Block block : Composer.sheet(sheet, "").blocks()) {
            if (block instanceof ProblemBlock problem) {
                for (Block inner : problem.blocks()) {
                    if (inner instanceof Steps steps) {
                        return steps.steps();
                    }
                }
            }
        }
        return List.of();
    }

    private static List<StepBlock> blank(Sheet sheet) {
        return steps(sheet).stream().filter(step -> step.result().isEmpty()).toList();
    }

    @Test
    void numbersAndKeyAreTheSameAtAllThreeLevels() {
        for (int seat = 1; seat <= 5; seat++) {
            List<AnswerKey> full = sheet(SmallLibrary.DIVIDER, "support: full", seat)
                    .problems()
                    .get(0)
                    .answers();
            assertEquals(
                    full,
                    sheet(SmallLibrary.DIVIDER, "support: faded", seat)
                            .problems()
                            .get(0)
                            .answers());
            assertEquals(
                    full,
                    sheet(SmallLibrary.DIVIDER, "support: bare", seat)
                            .problems()
                            .get(0)
                            .answers());
            assertEquals(
                    sheet(SmallLibrary.DIVIDER, "support: full", seat)
                            .problems()
                            .get(0)
                            .problem()
                            .givens(),
                    sheet(SmallLibrary.DIVIDER, "support: bare", seat)
                            .problems()
                            .get(0)
                            .problem()
                            .givens());
        }
    }

    @Test
    void aWorkedExampleShowsEveryStepAndLeavesNoPlace() {
        Sheet sheet = sheet(SmallLibrary.DIVIDER, "support: full", 1);
        assertEquals(4, steps(sheet).size());
        assertEquals(List.of(), blank(sheet));
        assertEquals(List.of(), sheet.places());
    }

    @Test
    void aBareProblemShowsNoStepAndAsksEverything() {
        Sheet sheet = sheet(SmallLibrary.DIVIDER, "support: bare", 1);
        assertEquals(List.of(), steps(sheet));
        assertEquals(
                List.of("q1a", "q1b"),
                sheet.places().stream().map(AnswerKey::question).toList());
    }

    @Test
    void fadingLeavesExactlySoManyStepsBlankFromItsEnd() {
        for (int blank = 1; blank <= 3; blank++) {
            List<StepBlock> forward = blank(sheet(SmallLibrary.DIVIDER, "fade: forward, blank: " + blank, 1));
            assertEquals(blank, forward.size());
            assertEquals(1, forward.get(0).number());
            List<StepBlock> backward = blank(sheet(SmallLibrary.DIVIDER, "fade: backward, blank: " + blank, 1));
            assertEquals(blank, backward.size());
            assertEquals(4, backward.get(blank - 1).number());
        }
    }

    @Test
    void fadingByPrincipleLeavesItsStepsBlankAndNoOther() {
        assertEquals(
                List.of(2, 3),
                blank(sheet(SmallLibrary.DIVIDER, "fade: principle Ohm's law", 1)).stream()
                        .map(StepBlock::number)
                        .toList());
    }

    @Test
    void blankStepsAreNamedByTheirQuestionOrByTheirNumber() {
        Sheet sheet = sheet(SmallLibrary.DIVIDER, "fade: principle Ohm's law", 1);
        assertEquals(
                List.of("q1s2", "q1a"),
                blank(sheet).stream().map(StepBlock::blankId).toList());
        assertEquals(
                List.of("q1s2", "q1a", "q1b"),
                sheet.places().stream().map(AnswerKey::question).toList(),
                "the choice is asked after the steps");
    }

    @Test
    void aQuestionWhoseStepIsShownIsNotAsked() {
        Sheet sheet = sheet(SmallLibrary.INDICATOR, "fade: forward, blank: 1", 1);
        assertEquals(
                List.of("q1s1"),
                sheet.places().stream().map(AnswerKey::question).toList());
    }

    @Test
    void hiddenValuesAreNowhereOnTheSheet() {
        int looked = 0;
        for (String fade :
                List.of("fade: forward, blank: 2", "fade: backward, blank: 2", "fade: principle Ohm's law")) {
            for (String template : List.of(SmallLibrary.DIVIDER, SmallLibrary.INDICATOR)) {
                for (int seat = 1; seat <= SEATS; seat++) {
                    looked += lookForHiddenValues(sheet(template, fade, seat), fade);
                }
            }
        }
        assertTrue(looked > 3 * SEATS, "only " + looked + " values looked for");
    }

    /** How many were looked for: a hidden value that equals a shown one by chance cannot be told apart. */
    private static int lookForHiddenValues(Sheet sheet, String fade) {
        SheetProblem problem = sheet.problems().get(0);
        Map<String, String> shown = new TreeMap<>();
        steps(sheet).forEach(step -> step.result().ifPresent(result -> shown.put(result.number(), result.text())));
        problem.printedGivens().values().forEach(text -> shown.put(text.split("\u00A0")[0], text));
        Document document = Composer.sheet(sheet, "");
        String page = HtmlPage.render(document);
        String html = text(page);
        String markdown = MarkdownPage.render(document);
        int looked = 0;
        for (StepBlock step : blank(sheet)) {
            String id = problem.template().lines().get(step.number() - 1).id();
            double value = problem.problem().values().quantity(id).value();
            QuantityWriter.Printed printed =
                    problem.writer().plain(value, problem.template().line(id).unit(), 4);
            if (printed.number().length() >= 4 && !shown.containsKey(printed.number())) {
                looked++;
                assertFalse(
                        page.contains(printed.text()),
                        fade + ": " + printed.text() + " of " + id + " is in an attribute");
                assertFalse(
                        html.contains(printed.number()),
                        fade + ": " + printed.text() + " of " + id + " is in the HTML");
                assertFalse(
                        markdown.contains(printed.number()),
                        fade + ": " + printed.text() + " of " + id + " is in the Markdown");
            }
        }
        return looked;
    }

    /** Without the style sheet and the drawing's coordinates, in which any digits may stand. */
    private static String text(String html) {
        StringBuilder text = new StringBuilder();
        String body = html.substring(html.indexOf("</head>"));
        boolean inTag = false;
        for (char c : body.toCharArray()) {
            if (c == '<') {
                inTag = true;
            } else if (c == '>') {
                inTag = false;
            } else if (!inTag) {
                text.append(c);
            }
        }
        return text.toString();
    }

    @Test
    void anExampleStandsDirectlyBeforeItsTwinWithOtherNumbers() {
        Sheet sheet = SmallLibrary.maker("""
        title: T
        order: mixed
        problems:
          - {pool: [current-limiting/indicator, voltage-dividers/plain-divider], example: yes, count: 2}
          - {template: voltage-dividers/plain-divider, example: yes, support: faded}
        """).sheet(3);
        List<SheetProblem> problems = sheet.problems();
        assertEquals(6, problems.size());
        for (int i = 0; i < 6; i += 2) {
            assertTrue(problems.get(i).example());
            assertFalse(problems.get(i + 1).example());
            assertEquals(new Support.Full(), problems.get(i).support());
            assertEquals(
                    problems.get(i).template().name(),
                    problems.get(i + 1).template().name());
            assertNotEquals(
                    problems.get(i).problem().givens(),
                    problems.get(i + 1).problem().givens());
        }
    }

    @Test
    void aProblemTellsWhetherItFollowsItsExampleWhateverIsPrinted() {
        Document sheet = CheckLetters.addedTo(
                Composer.sheet(
                        SmallLibrary.maker("title: T\nproblems:\n  - {template: " + SmallLibrary.DIVIDER
                                        + ", example: yes}\n  - {template: " + SmallLibrary.INDICATOR + "}\n")
                                .sheet(1),
                        ""),
                SmallLibrary.maker("title: T\nproblems: [{template: " + SmallLibrary.DIVIDER + "}]\n")
                        .sheet(1));
        assertEquals(
                List.of(false, true, false),
                sheet.blocks().stream()
                        .filter(ProblemBlock.class::isInstance)
                        .map(block -> ((ProblemBlock) block).followsExample())
                        .toList());
    }

    @Test
    void sheetsOnWhichTopicsAreMixedSayWhy() {
        String two =
                "problems: [{template: " + SmallLibrary.INDICATOR + "}, {template: " + SmallLibrary.DIVIDER + "}]\n";
        String one = "problems: [{template: " + SmallLibrary.INDICATOR + ", count: 2}]\n";
        assertTrue(printed("order: mixed\n" + two).contains("mixed on purpose"));
        assertFalse(printed(two).contains("mixed on purpose"), "in the order of the plan");
        assertFalse(printed("order: mixed\n" + one).contains("mixed on purpose"), "all about one topic");
    }

    private static String printed(String plan) {
        return MarkdownPage.render(
                Composer.sheet(SmallLibrary.maker("title: T\n" + plan).sheet(1), ""));
    }

    @Test
    void unitsArePrintedBehindTheBlanksWhereThePlanSaysSo() {
        Sheet sheet = SmallLibrary.maker(
                        "title: T\nunits: printed\nproblems: [{template: voltage-dividers/plain-divider}]\n")
                .sheet(1);
        List<Question> questions = new ArrayList<>();
        for (Block block : Composer.sheet(sheet, "").blocks()) {
            if (block instanceof ProblemBlock problem) {
                problem.blocks().stream()
                        .filter(Question.class::isInstance)
                        .map(Question.class::cast)
                        .forEach(questions::add);
            }
        }
        assertEquals("V", questions.get(0).unitHint());
        assertTrue(sheet.places().get(0).unitPrinted());
    }

    @Test
    void theSheetHoldsNoKey() {
        for (int seat = 1; seat <= 10; seat++) {
            Sheet sheet = sheet(SmallLibrary.INDICATOR, "support: bare", seat);
            String html = text(HtmlPage.render(Composer.sheet(sheet, "")));
            for (AnswerKey key : sheet.places()) {
                String answer = Composer.answer(sheet.problems().get(0), key);
                assertFalse(html.contains(answer), answer + " stands on the sheet of seat " + seat);
            }
        }
    }
}
