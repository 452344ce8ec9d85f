package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Severity;
import java.io.StringWriter;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** What a stranger's words may try to make FreeMarker do, and what becomes of it. */
class StatementSandboxTest {
    private static final String TEMPLATE = "chain-addressing/tile-orders";
    private static final Map<String, String> PRINTED =
            Map.of("columns", "8", "rows", "6", "lines", "all one way", "start", "top left", "run", "across", "n", "7");

    /** The first two are of the field: each was "proven", and then took all memory or never came back. */
    private static final List<String> ESCAPES = List.of(
            "<#if ((lines == \"all one way\") >\"\"?left_pad(2000000000)?length)>x</#if>",
            "<#if ((lines == \"all one way\") >(1..2000000000)?filter(x -> true)?size)>x</#if>",
            "<#if (lines == \"all one way\" > 1)>x</#if>",
            "<#if (lines == \"all one way\") && ((lines == \"all one way\") >\"\"?left_pad(9))>x</#if>",
            "<#if (lines == \"x\")><#elseif ((lines == \"all one way\") >\"\"?new()?length)></#if>",
            "<#if !((lines == \"all one way\") >.now?long)>x</#if>",
            "<#if (lines == '>' + \"?eval\")>x</#if>",
            "<#if lines == \"a\" >\"\"?left_pad(2000000000)>x</#if>",
            "<#if (lines == \"${lines?eval}\")>x</#if>",
            "<#if (lines == r\"x\")>x</#if>",
            "<#if lines == \"\\x3e\">x</#if>",
            "<#if lines?interpret == \"a\">x</#if>",
            "<#if lines[0] == \"a\">x</#if>",
            "<#if (lines) == \"a\">x</#if>",
            "<#if (lines == \"a\" <#-- ) --> )>x</#if>",
            "<#if .vars.lines == \"a\">x</#if>",
            "<#if lines == \"a\"/>x",
            "${lines?cap_first?left_pad(2000000000)}",
            "${(1..2000000000)?join(\"\")}",
            "${\"freemarker.template.utility.Execute\"?new()(\"id\")}",
            "${lines?api.class.protectionDomain}",
            "${lines!.template_name}",
            "${lines?cap_first ?no_esc}",
            "${symbol[\"n\"]}",
            "${.data_model?keys?join(\"\")}",
            "<#list 1..2000000000 as x></#list>",
            "<#list 1..2000000000><#items as x>x</#items></#list>",
            "<#assign a = lines>${a}",
            "<#macro a><@a/></#macro><@a/>",
            "<#function f x><#return f(x)></#function>${f(1)}",
            "<#include \"/etc/passwd\">",
            "<#import \"/etc/passwd\" as p>",
            "<#setting locale=\"tr\">${lines}",
            "<#ftl auto_esc=false>${lines}",
            "<#noautoesc>${lines}</#noautoesc>",
            "<#outputformat \"HTML\">${lines}</#outputformat>",
            "<#attempt>${x}<#recover>${.error}</#attempt>",
            "<#noparse>${</#noparse>lines}",
            "<#switch lines><#case \"a\">b</#switch>",
            "<#visit .node>",
            "<#stop \"x\">",
            "<#t><#lt><#nt>",
            "<@lines?interpret/>",
            "<#-- --><#list 1..9 as i>${i}</#list>",
            "<#if lines == \"x\"><#-- > --></#if><#include \"x\">",
            "A <<#-- -->b>tag</b>",
            "A <<#if lines == \"all one way\">b><#else>i></#if>tag",
            "A <${lines}> tag",
            "A [link]<#-- -->(http://example.org)",
            "A [link]<#if lines == \"all one way\">(http://example.org)</#if>",
            "230<#-- --> V ");

    @TestFactory
    Stream<DynamicTest> everyEscapeIsRefusedWithItsPlaceInStatementAndPrompt() {
        assertTrue(ESCAPES.size() >= 20);
        return ESCAPES.stream()
                .map(escape -> DynamicTest.dynamicTest(escape, () -> {
                    refused("statement.md.ftl", "First words.\n" + escape, 2);
                    String problem = AlteredTemplate.sound(TEMPLATE, "problem.yaml");
                    int line = (int) problem.substring(0, problem.indexOf("prompt: \""))
                                    .chars()
                                    .filter(c -> c == '\n')
                                    .count()
                            + 1;
                    String quoted = escape.replace("\\", "\\\\").replace("\"", "\\\"");
                    refused(
                            "problem.yaml",
                            problem.replaceFirst("prompt: \"", Matcher.quoteReplacement("prompt: \"" + quoted)),
                            line);
                }));
    }

    private static void refused(String file, String text, int line) {
        TemplateReader.Checked checked = assertTimeoutPreemptively(
                Duration.ofSeconds(5),
                () -> AlteredTemplate.of(TEMPLATE, file, text).check());
        List<Diagnostic> errors = checked.diagnostics().stream()
                .filter(one -> one.severity() == Severity.ERROR)
                .toList();
        assertFalse(errors.isEmpty(), text);
        for (Diagnostic error : errors) {
            assertEquals(
                    TEMPLATE + "/" + file + ":" + line,
                    error.place().file() + ":" + error.place().line(),
                    error.print());
        }
    }

    @Test
    void nothingOfTheAuthorsOwnTagsReachesFreeMarker() {
        String words = "<#if ( lines==\"a\" ||!(lines != 'b') )>A"
                + "<#elseif lines == \"c\">$ #{x} [=x] </b<#else>C</#if><#-- secret -->"
                + "${ lines ?cap_first}${symbol.n}";
        assertEquals(
                "<#if ((value[\"lines\"] == \"a\") || !(value[\"lines\"] != \"b\"))>A<#elseif (value[\"lines\"] "
                        + "== \"c\")>"
                        + "$ ${character[\"35\"]}{x} ${character[\"91\"]}=x] "
                        + "${character[\"60\"]}/b<#else>C</#if><#---->"
                        + "${value[\"lines\"]?cap_first}${symbol[\"n\"]}",
                Statement.written(words));
    }

    /** FreeMarker's own reading of the same words is the judge, where it may see them. */
    @Test
    void wordsWrittenAnewSayWhatTheAuthorWrote() throws Exception {
        long seed = Long.getLong("ampersheet.words.seed", 20261129L);
        for (int round = 0; round < (Boolean.getBoolean("ampersheet.deep") ? 40_000 : 1_000); round++) {
            Random random = new Random(seed + round);
            StringBuilder words = new StringBuilder();
            for (int i = 0; i < 1 + random.nextInt(4); i++) {
                piece(words, random, 2);
            }
            String text = words.toString().strip();
            StringWriter theirs = new StringWriter();
            Statement.parse(text)
                    .process(
                            Map.of("lines", "all one way", "run", "down", "V", "9 V", "symbol", Map.of("V", "V_f")),
                            theirs);
            assertEquals(
                    theirs.toString(),
                    Statement.fill(text, Map.of("lines", "all one way", "run", "down", "V", "9 V"), Map.of("V", "V_f")),
                    "seed " + (seed + round) + ": " + text.replace("\n", "\\n") + " written "
                            + Statement.written(text).replace("\n", "\\n"));
        }
    }

    private static void piece(StringBuilder out, Random random, int deep) {
        List<String> plain =
                List.of("x", " ", "\n", "  ", "\n\n", "a\n", "\n  b", "$", "#", "<", "[x]", "{", "}", "é", "**b**");
        List<String> conditions = List.of(
                "lines == \"all one way\"",
                "lines == 'no'",
                "(run != \"down\")",
                "!(run == \"down\")",
                "lines == \"no\" || run == \"down\" && lines != \"x\"",
                "\n(lines == \"no\" || run == \"down\")\n && !(lines != \"x\")");
        String condition = conditions.get(random.nextInt(conditions.size()));
        switch (random.nextInt(deep > 0 ? 8 : 7)) {
            case 0, 1, 2, 3 ->
                out.append(plain.get(random.nextInt(plain.size()))).append(random.nextBoolean() ? " " : "\n");
            case 4 ->
                out.append(List.of("${V}", "${symbol.V}", "${lines?cap_first}", "${ run?upper_case }")
                        .get(random.nextInt(4)));
            case 5 ->
                out.append(List.of("<#-- c -->", "<#--c\nd-->", "<#-- ${x} <#if> -->")
                        .get(random.nextInt(3)));
            case 6 -> out.append("\n");
            default -> {
                out.append("<#if ").append(condition).append('>');
                piece(out, random, deep - 1);
                if (random.nextBoolean()) {
                    out.append("<#elseif ")
                            .append(conditions.get(random.nextInt(conditions.size())))
                            .append('>');
                    piece(out, random, deep - 1);
                }
                if (random.nextBoolean()) {
                    out.append("<#else>");
                    piece(out, random, deep - 1);
                }
                piece(out, random, deep - 1);
                out.append("</#if>");
            }
        }
    }

    @Test
    void whateverStandsInTheWordsIsFilledOrRefusedAtOnce() {
        long seed = Long.getLong("ampersheet.words.seed", 20261129L);
        int rounds = Boolean.getBoolean("ampersheet.deep") ? 400_000 : 10_000;
        List<String> parts = List.of(
                "<#if ",
                "<#elseif ",
                "<#else>",
                "</#if>",
                "<#list ",
                "<@",
                "</@",
                "${",
                "}",
                ">",
                "(",
                ")",
                "\"",
                "'",
                "lines",
                " == ",
                " != ",
                "\"all one way\"",
                "&&",
                "||",
                "!",
                "?",
                "cap_first",
                "length",
                "left_pad(9)",
                "1..9",
                " ",
                "\n",
                "<#--",
                "-->",
                "#{",
                "[#if x]",
                "[=",
                "=",
                "\\",
                "symbol.n",
                ".",
                ".now",
                "<",
                "$",
                "x",
                "+",
                "->",
                "r\"");
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        Statement.fill("${lines}", PRINTED, Map.of());
        for (int round = 0; round < rounds; round++) {
            Random random = new Random(seed + round);
            StringBuilder words = new StringBuilder();
            for (int i = random.nextInt(14); i >= 0; i--) {
                words.append(parts.get(random.nextInt(parts.size())));
            }
            String text = words.toString();
            long begin = threads.getCurrentThreadCpuTime();
            try {
                Statement.fill(text, PRINTED, Map.of("n", "n"));
            } catch (IllegalArgumentException refused) {
                // A name that no template has is told when the template is read; here nobody reads one.
                boolean unknownName = refused.getMessage().contains("value[")
                        || refused.getMessage().contains("symbol[");
                assertFalse(
                        refused.getMessage().contains("cannot be filled in") && !unknownName,
                        () -> "read, but not filled: " + text + ": " + refused.getMessage());
            } catch (RuntimeException | StackOverflowError crash) {
                throw new AssertionError("seed " + (seed + round) + ": " + text, crash);
            }
            assertTrue(
                    threads.getCurrentThreadCpuTime() - begin < 1_000_000_000L,
                    "seed " + (seed + round) + " took its time: " + text);
        }
    }

    @Test
    void fillingHasABudgetOfCharactersAndOfTimeInSteps() {
        String long1 = "x".repeat(Statement.Budget.CHARACTERS / 2 + 1);
        assertThrows(IllegalArgumentException.class, () -> Statement.fill("${a}${a}", Map.of("a", long1), Map.of()));
        String long2 = "${a} <#if a == \"x\">y</#if>".repeat(100);
        assertEquals(300, Statement.fill(long2, Map.of("a", "x"), Map.of()).length());
        IllegalArgumentException late = assertThrows(
                IllegalArgumentException.class,
                () -> Statement.fill(long2, Map.of("a", "x"), Map.of(), new Statement.Budget(100)));
        assertTrue(late.getMessage().contains("more than 100 steps"), late.getMessage());
    }

    @Test
    void choicesAndParenthesesMayStandInOneAnotherTwentyDeep() {
        for (int deep : new int[] {20, 21}) {
            String choices = "<#if lines == \"a\">".repeat(deep) + "x" + "</#if>".repeat(deep);
            String parentheses = "<#if " + "(".repeat(deep - 1) + "lines == \"a\"" + ")".repeat(deep - 1) + ">x</#if>";
            for (String text : List.of(choices, parentheses)) {
                if (deep == 20) {
                    assertEquals("", Statement.fill(text, PRINTED, Map.of()));
                } else {
                    assertThrows(IllegalArgumentException.class, () -> Statement.fill(text, PRINTED, Map.of()), text);
                }
            }
        }
    }
}
