package ampersheet.render.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.render.CssString;
import ampersheet.render.SampleDocuments;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class StyleSheetTest {
    private static final String CSS = StyleSheet.asWritten();
    private static final Pattern COLOUR = Pattern.compile("#[0-9a-fA-F]{3,8}\\b|\\brgba?\\(|\\bhsla?\\(");

    @Test
    void everyInkIsReadableOnEveryPaper() {
        int pairs = 0;
        for (Map<String, String> palette : palettes()) {
            for (Map.Entry<String, String> paper : palette.entrySet()) {
                for (Map.Entry<String, String> on : palette.entrySet()) {
                    if (paper.getKey().startsWith("--paper") && !on.getKey().startsWith("--paper")) {
                        double needed = on.getKey().startsWith("--ink") ? 4.5 : 3; // WCAG 2.2, 1.4.3 and 1.4.11
                        double ratio = contrast(on.getValue(), paper.getValue());
                        assertTrue(ratio >= needed, on + " on " + paper + " is " + ratio + ", needs " + needed);
                        pairs++;
                    }
                }
            }
        }
        assertEquals(3 * 4 * 8, pairs, "light, dark and print: four papers, five inks and three lines each");
    }

    @Test
    void contrastIsComputedAsTheStandardDefinesIt() {
        assertEquals(21, contrast("#000", "#fff"), 1e-9); // WCAG 2.2, definition of contrast ratio: from 1 to 21
        assertEquals(1, contrast("#123456", "#123456"), 1e-9);
        assertEquals(
                4.54, contrast("#767676", "#ffffff"), 0.005); // the lightest grey that passes on white; from memory
    }

    @Test
    void coloursAreNamedInThePalettesAndNowhereElse() {
        String rest = CSS.replaceAll("(?s):root \\{.*?\\}", "");
        Matcher stray = COLOUR.matcher(rest);
        assertFalse(stray.find(), () -> "a colour outside the palettes: " + stray.group());
        Matcher used = Pattern.compile("var\\((--[a-z-]+)\\)").matcher(rest);
        while (used.find()) {
            String name = used.group(1);
            assertTrue(
                    palettes().get(0).containsKey(name)
                            || List.of("--serif", "--sans", "--measure").contains(name),
                    name);
        }
    }

    @Test
    void nothingHasAFixedSizeAndOnlyWideThingsScroll() {
        Pattern fixed = Pattern.compile("[ {;](min-)?(width|height): *[0-9.]+(px|rem|em|pt|mm|cm|in|vw)\\b");
        for (String rule : rules()) {
            String selector = rule.substring(0, rule.indexOf('{')).strip();
            boolean unseen = rule.contains("clip-path: inset(50%)");
            Matcher size = fixed.matcher(rule.replaceAll("min-height: [^;]*;", ""));
            boolean mark = selector.equals(".box") || selector.equals(".steps > li::before");
            boolean scrolled = selector.equals(".long svg");
            assertTrue(
                    unseen || mark || scrolled || !size.find(),
                    rule + " would cut text with wider spacing or on a narrow screen");
            if (rule.contains("overflow-x")) {
                assertTrue(
                        List.of("pre", ".drawing", ".scroll", ".equation", "details")
                                .contains(selector),
                        rule);
            }
        }
    }

    @Test
    void paperKeepsTogetherWhatBelongsTogether() {
        String print = CSS.substring(CSS.indexOf("@media print"));
        for (String kept : List.of(".whole", ".figure", ".steps > li", ".question", ".caution")) {
            assertTrue(print.matches("(?s).*[ ,]" + Pattern.quote(kept) + ",[^}]*break-inside: avoid.*"), kept);
        }
        assertTrue(print.contains("orphans: 3; widows: 3;"));
        assertTrue(print.contains("font-size: 12pt"));
    }

    @Test
    void aPlaceToWriteIsAtLeastEightMillimetresHigh() {
        assertTrue(CSS.contains(".blank { min-height: 11mm; }"));
        Matcher screen =
                Pattern.compile("\\.blank \\{[^}]*min-height: ([0-9.]+)rem").matcher(CSS);
        assertTrue(screen.find());
        assertTrue(Double.parseDouble(screen.group(1)) * 16 * 25.4 / 96 >= 8);
    }

    @Test
    void theStyleSheetReadsTheSameAsHtmlAndAsXml() {
        assertFalse(CSS.contains("<") || CSS.contains("&"), "these would need escaping in one of the two");
    }

    @Test
    void aPageCarriesTheRulesForWhatStandsInItAndNoOthers() {
        String page = HtmlPage.render(SampleDocuments.sheet());
        String style = page.substring(page.indexOf("<style>"), page.indexOf("</style>"));
        for (String there : List.of(".caution{", ".drawing{", ".steps>li", "@media print{", ".masthead{")) {
            assertTrue(style.replace(" > ", ">").contains(there), there);
        }
        for (String missing : List.of(".mistakes", ".key-lines", "blockquote", "--ink-key", "/*")) {
            assertFalse(style.contains(missing), missing);
        }
    }

    @Test
    void aQuotedTextCannotEndItsString() {
        assertEquals("\"Sheet a\\22 \\7d \\3c \\2f style\\3e \"", CssString.of("Sheet a\"}</style>"));
        assertEquals("\"\\5c a\\fffd \"", CssString.of("\\a\u0000"));
    }

    private static List<String> rules() {
        List<String> rules = new ArrayList<>();
        Matcher rule = Pattern.compile("[^{}]+\\{[^{}]*\\}").matcher(CSS.replaceAll("(?s)/\\*.*?\\*/", ""));
        while (rule.find()) {
            rules.add(rule.group().strip());
        }
        assertTrue(rules.size() > 60, "only " + rules.size() + " rules seen");
        return rules;
    }

    /** Light, dark, print; each with every name (what a later one leaves out it inherits from the first). */
    private static List<Map<String, String>> palettes() {
        List<Map<String, String>> palettes = new ArrayList<>();
        Matcher root = Pattern.compile("(?s):root \\{(.*?)\\}").matcher(CSS);
        while (root.find()) {
            Map<String, String> palette = new LinkedHashMap<>(palettes.isEmpty() ? Map.of() : palettes.get(0));
            Matcher colour = Pattern.compile("(--[a-z-]+): (#[0-9a-f]+);").matcher(root.group(1));
            while (colour.find()) {
                palette.put(colour.group(1), colour.group(2));
            }
            palettes.add(palette);
        }
        assertEquals(3, palettes.size());
        return palettes;
    }

    private static double contrast(String one, String other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    /** WCAG 2.2, definition of relative luminance. */
    private static double luminance(String colour) {
        String hex = colour.substring(1);
        if (hex.length() == 3) {
            hex = hex.replaceAll("(.)", "$1$1");
        }
        double[] weights = {0.2126, 0.7152, 0.0722};
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double channel = Integer.parseInt(hex.substring(2 * i, 2 * i + 2), 16) / 255.0;
            sum += weights[i] * (channel <= 0.04045 ? channel / 12.92 : Math.pow((channel + 0.055) / 1.055, 2.4));
        }
        return sum;
    }
}
