package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.source.Faults;
import ampersheet.source.SourceText;
import ampersheet.source.Yaml;
import ampersheet.source.YamlReader;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PlanTextTest {
    private static final String PLAN = """
            # ours
            title: Lanterns   # printed
            seed: one

            # the list
            problems:
              # first of all
              - {template: a/one, example: yes}   # easy
              - template: a/two
                count: 2

              # the pool
              - {pool: [b/one, b/two]}
            # at the end
            order: mixed
            """;

    private static PlanText text(String plan) {
        return PlanText.of("plan.yaml", plan);
    }

    private static List<Plan.Entry> entries(String plan) {
        return PlanReader.read("plan.yaml", plan).entries();
    }

    private static List<String> comments(String plan) {
        return plan.lines()
                .filter(line -> line.contains("#"))
                .map(line -> line.substring(line.indexOf('#') + 1).strip())
                .sorted()
                .toList();
    }

    @Test
    void aValueIsChangedInItsLineAndItsCommentStays() {
        assertEquals(
                PLAN.replace("title: Lanterns   # printed", "title: \"Night: 2\"   # printed"),
                text(PLAN).with("title", "Night: 2").text());
    }

    @Test
    void aValueThatIsTakenAwayLeavesItsComment() {
        assertTrue(text(PLAN).with("title", "").text().contains("# printed"));
    }

    @Test
    void aNewKeyComesBeforeTheListAndWhatIsNotedAboveIt() {
        assertEquals(
                PLAN.replace("# the list", "course: Bench\n# the list"),
                text(PLAN).with("course", "Bench").text());
    }

    @Test
    void aProblemMovesWithWhatIsNotedDirectlyAboveIt() {
        String moved = text(PLAN).moved(2, 0, entries(PLAN)).text();
        assertTrue(moved.contains("problems:\n  # the pool\n  - {pool: [b/one, b/two]}\n  # first of all\n"), moved);
        assertEquals(comments(PLAN), comments(moved));
        assertEquals(List.of("a/one", "a/two"), ones(moved).subList(1, 3));
    }

    private static List<String> ones(String plan) {
        return entries(plan).stream()
                .map(entry -> entry.source() instanceof Plan.Source.One one ? one.template() : "pool")
                .toList();
    }

    @Test
    void whatIsTakenOutTellsTheCommentThatWentWithIt() {
        PlanText.Edited edited = text(PLAN).without(0, entries(PLAN));
        assertEquals(List.of("a/two", "pool"), ones(edited.text()));
        assertTrue(edited.text().contains("# first of all"), edited.text());
        assertTrue(edited.told().get(0).contains("easy"), edited.told().toString());
    }

    @Test
    void whatIsWrittenAnewKeepsTheCommentAboveIt() {
        Plan.Entry entry = entries(PLAN).get(0);
        String text = text(PLAN)
                .replaced(
                        0,
                        PlanText.written(
                                new Plan.Entry(entry.source(), 3, new Support.Bare(), false, List.of(), entry.place())),
                        entries(PLAN))
                .text();
        assertEquals(3, entries(text).get(0).count());
        assertEquals(comments(PLAN), comments(text));
    }

    @Test
    void aProblemIsAddedBehindTheOthers() {
        String text = text(PLAN).added("{template: c/one}", entries(PLAN)).text();
        assertEquals(List.of("a/one", "a/two", "pool", "c/one"), ones(text));
        assertEquals(comments(PLAN), comments(text));
    }

    @Test
    void theLastProblemTakenOutLeavesAListThatCanBeAddedTo() {
        String one = "title: T\nproblems:\n  - {template: a/one}\n";
        String none = text(one).without(0, entries(one)).text();
        assertEquals("title: T\nproblems: []\n", none);
        assertEquals(
                List.of("a/two"),
                ones(text(none).added("{template: a/two}", List.of()).text()));
    }

    @Test
    void aListInOneLineIsWrittenAnewAndThatIsTold() {
        String flow = "title: T\nproblems: [{template: a/one}, {template: a/two}]   # both\n";
        PlanText.Edited edited = text(flow).moved(0, 1, entries(flow));
        assertEquals(List.of("a/two", "a/one"), ones(edited.text()));
        assertEquals(comments(flow), comments(edited.text()));
        assertEquals(1, edited.told().size());
    }

    @Test
    void aPlanInBracesIsLeftToItsText() {
        assertThrows(DiagnosticException.class, () -> text("{title: T, problems: [{template: a/one}]}"));
    }

    @Test
    void aTextOfSeveralLinesOrWithSignsOfItsOwnIsReadAsItWasGiven() {
        for (String title : List.of("Two\nlines", "\\u000a \"it\"", "\\n", "plain")) {
            String text = text(PLAN).with("title", title).text();
            Faults faults = new Faults();
            Yaml.Mapping read = (Yaml.Mapping)
                    YamlReader.read(new SourceText("plan.yaml", text), faults).orElseThrow();
            assertFalse(faults.hasErrors(), faults.inOrder().toString());
            assertEquals(title, ((Yaml.Scalar) read.entries().get(0).value()).text(), text);
        }
        assertTrue(text(PLAN).with("title", "Two\nlines").text().contains("title: \"Two\\nlines\""));
    }

    @Test
    void anEntryIsReadAsItIsWritten() {
        for (String entry : List.of(
                "{template: a/one, example: yes, support: faded, fade: backward, blank: 2}",
                "{pool: [a/one, b/two], count: 3, given: {Vs: 12 V}}",
                "{skill: \"a, skill: of #its own\", support: full}",
                "{template: a/one, support: faded, fade: \"principle Ohm's law\"}")) {
            String plan = "title: T\nproblems:\n  - " + entry + "\n";
            assertEquals(entry, PlanText.written(entries(plan).get(0)));
        }
    }

    @Test
    void whateverIsWrittenAsAValueIsReadAsTheSame() {
        long seed = Long.getLong("ampersheet.seed", 17);
        Random random = new Random(seed);
        String letters = "ab 0:#\"'\\{}[],&*!|>%@`-?~é—\u4e2d=.";
        for (int i = 0; i < 500; i++) {
            StringBuilder value = new StringBuilder();
            for (int j = random.nextInt(12); j >= 0; j--) {
                value.append(letters.charAt(random.nextInt(letters.length())));
            }
            String title = value.toString().strip();
            if (!title.isEmpty()) {
                String plan = text(PLAN).with("title", title).text();
                assertEquals(title, PlanReader.read("plan.yaml", plan).title(), "-Dampersheet.seed=" + seed);
            }
        }
    }
}
