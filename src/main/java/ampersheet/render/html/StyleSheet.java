package ampersheet.render.html;

import ampersheet.figure.Picture;
import ampersheet.language.Language;
import ampersheet.render.CssString;
import ampersheet.sheet.Document;
import ampersheet.source.Remembered;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The look of every page, and the rules for paper that depend on the document. */
final class StyleSheet {
    private static final String COMMON = closeSet(asWritten()) + Picture.style();

    /** The pages of a class are made of the same few things. */
    private static final Remembered<Names, String> KNOWN = new Remembered<>(200);

    /** What stands in a page: elements, and classes with a full stop before them. */
    private record Names(Document.Kind kind, String language, Set<String> all) {}

    private static final String CLASS = " class=\"";
    private static final Pattern VARIABLE = Pattern.compile("--[a-z-]+(?=:)");
    private static final Pattern NAME = Pattern.compile("\\.?[a-z][a-z0-9-]*");

    /** Tables with many columns of numbers. */
    private static final String WIDE = ".report { max-width: 64rem; }\n.report h2 { margin-top: 2.8rem; }\n"
            + ".report main > table { margin-top: 1.4rem; }\n";

    /** A table of all answers: it scrolls by itself under its head, beside the names of its rows. */
    private static final String ANSWERS =
            ".index { max-width: 64rem; }\n.cards td:nth-child(3) { white-space: nowrap; }\n"
                    + ".wide { overflow: auto; max-height: 85vh; margin-bottom: .8rem; }\n"
                    + ".wide table { max-width: none; border-collapse: separate; border-spacing: 0; }\n"
                    + ".wide th, .wide td { white-space: nowrap; }\n"
                    + ".wide thead th { position: sticky; top: 0; z-index: 1; background: var(--paper); }\n"
                    + ".wide th:first-child { position: sticky; left: 0; background: var(--paper); font-weight: normal; }\n"
                    + ".wide thead th:first-child { z-index: 2; font-weight: bold; }\n"
                    + "@media print { .wide { overflow: visible; max-height: none; } "
                    + ".wide th, .wide td { white-space: normal; position: static !important; } }\n";

    /** Each question with its verdict stands apart from the next. */
    private static final String SPACED = ".feedback main > h2 { margin-top: 1.6rem; }\n"
            + ".feedback .problem > .prose + .prose, .feedback .working + .prose { margin-top: 1.5rem; }\n";

    /** Beside the title; on a dark page it keeps its own white. */
    static final String LOGO = ".logo{float:right;max-width:40%;height:auto;margin:0 0 .4rem 1rem}\n"
            + ".masthead::after{content:\"\";display:block;clear:both}\n";

    private StyleSheet() {}

    static String common(Language language) {
        return COMMON + TableMarkup.keyLabels(language);
    }

    /** What every page has, as it is read by people. */
    static String asWritten() {
        return read("sheet.css");
    }

    /** @param body markup of the page: rules for what does not stand in it are left out */
    static String of(Document document, String body) {
        Names names = new Names(document.kind(), document.language().code(), named(body));
        String known = KNOWN.of(
                names,
                named -> withoutUnusedNames(used(common(document.language()), named.all()) + ofKind(named.kind())));
        return known + (document.logo().isPresent() ? LOGO : "") + paged(document);
    }

    private static Set<String> named(String body) {
        Set<String> named = new TreeSet<>(List.of("html"));
        for (int at = body.indexOf('<'); at >= 0; at = body.indexOf('<', at + 1)) {
            int end = at + 1;
            while (end < body.length() && isNameLetter(body.charAt(end), end > at + 1)) {
                end++;
            }
            if (end > at + 1) {
                named.add(body.substring(at + 1, end));
            }
        }
        for (int at = body.indexOf(CLASS); at >= 0; at = body.indexOf(CLASS, at + 1)) {
            int from = at + CLASS.length();
            for (String one : body.substring(from, body.indexOf('"', from)).split(" ")) {
                named.add("." + one);
            }
        }
        return named;
    }

    private static boolean isNameLetter(char c, boolean digitsToo) {
        return c >= 'a' && c <= 'z' || digitsToo && c >= '0' && c <= '9';
    }

    /** Colours and fonts that no rule asks for. */
    private static String withoutUnusedNames(String style) {
        String shorter = style;
        for (MatchResult name : VARIABLE.matcher(style).results().toList()) {
            if (!style.contains("var(" + name.group() + ")")) {
                shorter = shorter.replaceAll(name.group() + ":[^;}]*;?", "");
            }
        }
        return shorter;
    }

    private static String used(String style, Set<String> named) {
        StringBuilder used = new StringBuilder();
        for (int at = 0; at < style.length(); ) {
            int opens = style.indexOf('{', at);
            if (opens < 0) {
                break;
            }
            String selectors = style.substring(at, opens).trim();
            int end = end(style, opens);
            String inside = style.substring(opens + 1, end);
            if (selectors.startsWith("@media")) {
                inside = used(inside, named);
                selectors = inside.isEmpty() ? "" : selectors;
            } else {
                selectors = Stream.of(selectors.split(","))
                        .filter(selector -> named.containsAll(namesIn(selector)))
                        .collect(Collectors.joining(","));
            }
            if (!selectors.isEmpty()) {
                used.append(selectors).append('{').append(inside).append('}');
            }
            at = end + 1;
        }
        return used.toString();
    }

    /** Where what opens there is closed. */
    private static int end(String style, int opens) {
        int depth = 1;
        int at = opens;
        while (depth > 0) {
            at++;
            depth += style.charAt(at) == '{' ? 1 : style.charAt(at) == '}' ? -1 : 0;
        }
        return at;
    }

    /** Elements and classes that must be there, or the rule is for nothing. */
    private static List<String> namesIn(String selector) {
        String plain = selector.replaceAll(":(?:not|nth-[a-z-]+)\\([^)]*\\)|\\[[^]]*\\]|::?[a-z-]+", "");
        return NAME.matcher(plain).results().map(MatchResult::group).toList();
    }

    private static String ofKind(Document.Kind kind) {
        return switch (kind) {
            case REPORT -> WIDE;
            case FEEDBACK -> SPACED;
            case INDEX -> ANSWERS;
            case SHEET, KEY -> "";
        };
    }

    /**
     * Paper size and what stands in its margins. Not every browser fills margins, so the sheet ID stands in the page's
     * own text as well.
     */
    private static String paged(Document document) {
        String size = document.paper() == Document.Paper.LETTER ? "letter" : "A4";
        String foot = document.sheetId().isEmpty()
                ? document.title()
                : document.language().say("print.sheet", "sheet", document.sheetId());
        String middle =
                document.kind() == Document.Kind.KEY ? document.language().say("print.key-notice") : "";
        return "@page {\n"
                + "  size: " + size + ";\n"
                + "  margin: 17mm 19mm 19mm;\n"
                + "  @bottom-left { content: " + CssString.of(foot) + "; }\n"
                + "  @bottom-center { content: " + CssString.of(middle) + "; font-weight: bold; }\n"
                + "  @bottom-right { content: counter(page) \" / \" counter(pages); }\n"
                + "}\n";
    }

    /** Without what is there for whoever reads the file: every page carries it. It holds no string with such signs. */
    private static String closeSet(String style) {
        return style.replaceAll("(?s)/\\*.*?\\*/", "")
                .replaceAll("\\s+", " ")
                .replaceAll(" ?([{};]) ?", "$1")
                .replaceAll("([:,]) ", "$1")
                .replace(";}", "}")
                .trim();
    }

    private static String read(String name) {
        try (InputStream in = StyleSheet.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is not on the class path beside " + StyleSheet.class.getName()
                        + "; build with the resources folder");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the style sheet " + name, e);
        }
    }
}
