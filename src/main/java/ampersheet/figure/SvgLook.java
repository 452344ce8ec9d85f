package ampersheet.figure;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Who says how a drawing's lines and letters look: each element, or the style of a page, once for all its drawings. */
enum SvgLook {
    /** The SVG itself, in a file of its own. */
    ALONE,
    /** The style of a page; a script may point at parts, and draw them heavier. */
    IN_PAGE,
    /** The same on a page where nothing points at parts: what is drawn alike is one path across all of them. */
    AT_REST;

    static final String FILLED = "fill=\"currentColor\" stroke=\"none\"";
    static final String WORDS = FILLED + " ";
    static final String MIDDLE = "text-anchor=\"middle\"";
    static final String END = "text-anchor=\"end\"";
    static final String ITALIC = "font-style=\"italic\"";
    static final String BOLD = "font-weight=\"bold\"";
    private static final String SMALL = size(12);
    private static final String FINE = width(Stroke.FINE.width());

    private static final String ALL = "fill=\"none\" stroke=\"currentColor\" stroke-width=\""
            + Decimals.print(Stroke.LINE.width())
            + "\" stroke-linecap=\"round\" stroke-linejoin=\"round\" font-family=\""
            + Lettering.FAMILY + "\" " + size(Lettering.BODY);

    /** Names in a page for what comes often. What is one name is read after what has none. */
    private static final Map<String, String> CLASSES =
            new TreeMap<>(Map.of(FILLED, "f", MIDDLE, "m", END, "e", ITALIC, "i", SMALL, "s", FINE, "t"));

    static String size(double size) {
        return "font-size=\"" + Decimals.print(size) + "\"";
    }

    static String width(double width) {
        return "stroke-width=\"" + Decimals.print(width) + "\"";
    }

    /**
     * Says in a page what {@link #ALONE} says in each drawing. What is shown by reference is matched by itself, without
     * what stands around it; so no rule may name that.
     */
    static String style() {
        StringBuilder style = new StringBuilder();
        rule(".drawing svg", ALL, style);
        rule("text", FILLED, style);
        CLASSES.forEach((attributes, name) -> rule(
                Stream.of("path", "g", "tspan")
                        .map(element -> element + "." + name)
                        .collect(Collectors.joining(",")),
                attributes,
                style));
        return style.append('\n').toString();
    }

    private static void rule(String selector, String attributes, StringBuilder style) {
        String declarations = attributes
                .replaceAll("(font-size=\"[0-9.]+)\"", "$1px\"")
                .replace("=\"", ":")
                .replace("\" ", ";")
                .replace("\"", "");
        style.append(selector).append('{').append(declarations).append('}');
    }

    boolean namesParts() {
        return this != AT_REST;
    }

    /** Between elements: a file of its own is also read by people. */
    String lineBreak() {
        return this == ALONE ? "\n" : "";
    }

    /** Attributes of the whole. */
    String whole() {
        return this == ALONE ? " xmlns=\"http://www.w3.org/2000/svg\"" : "";
    }

    /** The same, as far as they concern lines and letters. */
    String lines() {
        return this == ALONE ? " " + ALL : "";
    }

    /** @param all attributes with their values, some empty */
    String attributes(String... all) {
        StringBuilder names = new StringBuilder();
        StringBuilder others = new StringBuilder();
        for (String one : all) {
            String name = isNamed(one) ? CLASSES.get(one) : null;
            if (name != null) {
                names.append(names.length() == 0 ? "" : " ").append(name);
            } else if (!one.isEmpty() && !(one.equals(WORDS) && this != ALONE)) {
                others.append(' ').append(one.trim());
            }
        }
        return (names.length() == 0 ? "" : " class=\"" + names + "\"") + others;
    }

    /** A style rule would go before the heavier lines of what a script points at. */
    private boolean isNamed(String attributes) {
        return this == AT_REST || this == IN_PAGE && !attributes.equals(FINE);
    }
}
