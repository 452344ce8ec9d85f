package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.language.Language;
import ampersheet.source.Languages;
import com.vladsch.flexmark.ast.Paragraph;
import com.vladsch.flexmark.ast.Text;
import com.vladsch.flexmark.parser.Parser;
import com.vladsch.flexmark.util.ast.Node;
import com.vladsch.flexmark.util.ast.TextCollectingVisitor;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class StatementTest {
    private static final Map<String, String> NO_SYMBOLS = Map.of();

    private static String fill(String text, Map<String, String> printed) {
        return Statement.fill(text, printed, NO_SYMBOLS);
    }

    @Test
    void theStatementOfATemplateIsFilledWithPrintedValues() {
        ProblemTemplate template = TemplateReader.read(TemplateFiles.builtIn(), "current-limiting/one-indicator");
        String filled =
                Statement.render(template, Languages.ENGLISH, Map.of("Vs", "9 V", "Vf", "2.1 V", "If", "10 mA"));
        assertTrue(filled.contains("The supply gives **9 V**."), filled);
        assertTrue(filled.contains("The LED drops **2.1 V** when **10 mA** flows"), filled);
    }

    @Test
    void aLanguageWithoutWordsFallsBackToEnglish() {
        ProblemTemplate template = TemplateReader.read(TemplateFiles.builtIn(), "current-limiting/one-indicator");
        Map<String, String> printed = Map.of("Vs", "9 V", "Vf", "2 V", "If", "10 mA");
        assertEquals(
                Statement.render(template, Languages.ENGLISH, printed),
                Statement.render(template, new Language("tlh", Map.of()), printed));
    }

    @Test
    void promptsAreFilledToo() {
        ProblemTemplate template = TemplateReader.read(TemplateFiles.builtIn(), "current-limiting/one-indicator");
        ProblemTemplate.Ask ask = new ProblemTemplate.ChoiceAsk("c", "Is ${Vs} enough for ${symbol.Vf}?", List.of());
        assertEquals("Is 9 V enough for V\\_f?", Statement.prompt(template, ask, Map.of("Vs", "9 V")));
    }

    @Test
    void conditionsChooseByWords() {
        String text = "<#if order == \"serpentine\">It snakes.<#elseif order != 'x'>It starts over.<#else>Never.</#if>";
        assertEquals("It snakes.", fill(text, Map.of("order", "serpentine")));
        assertEquals("It starts over.", fill(text, Map.of("order", "progressive")));
    }

    @Test
    void aMissingValueIsAnErrorNotABlank() {
        assertThrows(IllegalArgumentException.class, () -> fill("A ${Vs} supply.", Map.of()));
    }

    @Test
    void quantitiesStayReadableInMarkdown() {
        assertEquals(
                "4.7\u00a0kΩ, 2\u00a0%, 25\u00a0°C, \u22125\u00a0V",
                MarkdownFormat.escape("4.7\u00a0kΩ, 2\u00a0%, 25\u00a0°C, \u22125\u00a0V"));
        assertEquals("0.5\u00a0K/W on-resistance", MarkdownFormat.escape("0.5\u00a0K/W on-resistance"));
        assertEquals("\\- 1\\. x\\/", MarkdownFormat.escape("- 1. x/"));
    }

    @Test
    void noValueCanBecomeMarkup() {
        Parser parser = Parser.builder().build();
        long seed = 20261125L;
        Random random = new Random(seed);
        String alphabet = "*_`~#<>[](){}!&;:/\\|\"'-+=.,%$^@?0123456789ab \t\n\r\u00a0\u2028";
        for (int i = 0; i < 20_000; i++) {
            StringBuilder value = new StringBuilder();
            int length = 1 + random.nextInt(12);
            for (int k = 0; k < length; k++) {
                value.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            String markdown = "x" + fill("${v}", Map.of("v", value.toString())) + "x";
            Node document = parser.parse(markdown);
            Node only = document.getFirstChild();
            String replay = "seed " + seed + ", round " + i + ": " + markdown;
            assertTrue(only instanceof Paragraph && only.getNext() == null, replay);
            String expected = ("x" + value + "x").replaceAll("[\\x00-\\x1f\\x7f\\u0085\\u2028\\u2029]", " ");
            assertEquals(expected.replaceAll(" +", " "), collected(only).replaceAll(" +", " "), replay);
        }
    }

    @Test
    void aValueAtTheStartOfALineCannotBecomeABlock() {
        Parser parser = Parser.builder().build();
        for (String value :
                List.of("# a", "- a", "1. a", "1) a", "> a", "    a", "```", "---", "a\n---", "+ a", "* a", "| a |")) {
            Node only =
                    parser.parse(fill("${v} end", Map.of("v", value.strip()))).getFirstChild();
            assertTrue(only instanceof Paragraph && only.getNext() == null, value);
        }
    }

    private static String collected(Node paragraph) {
        for (Node child : paragraph.getDescendants()) {
            assertTrue(child instanceof Text || child.getNodeName().equals("TextBase"), child.getNodeName());
        }
        return new TextCollectingVisitor().collectAndGetText(paragraph).strip();
    }

    @Test
    void whatIsNotInTheSmallLanguageIsRefusedBeforeItRuns() {
        for (String attack : List.of(
                "${\"freemarker.template.utility.Execute\"?new()(\"id\")}",
                "<#assign x = 1>",
                "<#list 1..999999999 as i>x</#list>",
                "<#include \"/etc/passwd\">",
                "<#import \"x\" as y>",
                "<#setting locale=\"de_DE\">",
                "<#macro a>${a()}</#macro>",
                "<#function f x><#return f(x)></#function>",
                "<@a/>",
                "</@a>",
                "<#ftl output_format=\"HTML\">",
                "<#noautoesc>x</#noautoesc>",
                "<#outputformat \"HTML\">x</#outputformat>",
                "${Vs?no_esc}",
                "${Vs?interpret}",
                "${Vs?eval}",
                "${Vs?api.class}",
                "${Vs?left_pad(999999999)}",
                "${.now}",
                "${.data_model}",
                "${.vars}",
                "${Vs.class}${Vs!}",
                "${Vs + Vs}",
                "${1..9}",
                "${(Vs)}",
                "${\"${Vs?eval}\"}",
                "${Vs?<#-- -->eval}",
                "<#if \"${Vs?eval}\" == \"a\"></#if>",
                "<#if (Vs?eval)></#if>",
                "<#if Vs == \"\\x41\"></#if>",
                "<#if true?c></#if>",
                "<#attempt>x<#recover>y</#attempt>",
                "<#visit x>",
                "<#stop \"x\">",
                "<#noparse>x</#noparse>",
                "<#switch Vs><#case 1></#switch>",
                "<#global a=1>",
                "<#local a=1>",
                "<#escape x as x?html>",
                "${Vs",
                "<#if Vs == \"a\"",
                "${Vs?cap_first(1)}",
                "${Vs[0]}",
                "${Vs?? }",
                "${Vs?cap_first?eval}")) {
            assertThrows(IllegalArgumentException.class, () -> fill(attack, Map.of("Vs", "1+1", "a", "b")), attack);
        }
    }

    @Test
    void otherTagSyntaxesArePlainText() {
        assertEquals("[#if x] [=Vs] #{Vs} 9\u00a0V", fill("[#if x] [=Vs] #{Vs} ${Vs}", Map.of("Vs", "9\u00a0V")));
    }

    @Test
    void wordsNestedWithoutEndEndInARefusal() {
        String nested = "<#if order == \"a\">".repeat(190);
        assertTrue(nested.length() < StatementReader.LONGEST);
        assertThrows(IllegalArgumentException.class, () -> fill(nested, Map.of("order", "a")));
        String parentheses = "<#if " + "(".repeat(3900) + "order == \"a\"" + ">";
        assertThrows(IllegalArgumentException.class, () -> fill(parentheses, Map.of("order", "a")));
        assertThrows(IllegalArgumentException.class, () -> fill("x".repeat(StatementReader.LONGEST + 1), Map.of()));
    }

    @Test
    void theOutputHasALimit() {
        String text = "${a}".repeat(500);
        assertThrows(IllegalArgumentException.class, () -> fill(text, Map.of("a", "x".repeat(100))));
    }

    @Test
    void theWordsDoNotDependOnTheLocale() {
        Locale before = Locale.getDefault();
        try {
            Map<String, String> printed = new TreeMap<>(Map.of("order", "inline"));
            String english = fill("${order?upper_case} ${order?cap_first}", printed);
            Locale.setDefault(Locale.forLanguageTag("tr-TR"));
            assertEquals(
                    english,
                    fill("${order?upper_case}  ${order?cap_first}", printed).replace("  ", " "));
            assertEquals("INLINE Inline", english);
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void commentsAreLeftOut() {
        String filled = fill("A<#-- ${nothing} <#list> --> B", Map.of());
        assertFalse(filled.contains("nothing"), filled);
    }
}
