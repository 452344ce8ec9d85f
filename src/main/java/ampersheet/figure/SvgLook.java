package ampersheet.figure;

/** Who says how a drawing's lines and letters look. */
enum SvgLook {
    /** The SVG itself, in a file of its own. */
    ALONE(
            true,
            " xmlns=\"http://www.w3.org/2000/svg\"",
            " fill=\"none\" stroke=\"currentColor\" stroke-width=\"" + Decimals.print(Stroke.LINE.width())
                    + "\" stroke-linecap=\"round\" stroke-linejoin=\"round\" font-family=\"" + Lettering.FAMILY
                    + "\" font-size=\"" + Decimals.print(Lettering.BODY) + "\"",
            " fill=\"currentColor\" stroke=\"none\"",
            " fill=\"currentColor\" stroke=\"none\"",
            " text-anchor=\"middle\"",
            " text-anchor=\"end\"",
            " font-style=\"italic\""),
    /** The style of a page, which says it once for all its drawings; a script may point at parts. */
    IN_PAGE(true, "", "", " class=\"f\"", "", " class=\"m\"", " class=\"e\"", " class=\"i\""),
    /** The same on a page where nothing points at parts: what is drawn alike is one path across all of them. */
    AT_REST(false, "", "", " class=\"f\"", "", " class=\"m\"", " class=\"e\"", " class=\"i\"");

    /** Says in a page what {@link #ALONE} says in each drawing. */
    static final String STYLE = ".drawing svg{fill:none;stroke:currentColor;stroke-width:"
            + Decimals.print(Stroke.LINE.width()) + ";stroke-linecap:round;stroke-linejoin:round;font-family:"
            + Lettering.FAMILY + ";font-size:" + Decimals.print(Lettering.BODY) + "px}"
            + ".drawing .f,.drawing text{fill:currentColor;stroke:none}"
            + ".drawing .m{text-anchor:middle}.drawing .e{text-anchor:end}.drawing .i{font-style:italic}\n";

    final boolean partsNamed;
    final String language;
    final String all;
    final String filled;
    final String words;
    final String middle;
    final String end;
    final String italic;

    SvgLook(
            boolean partsNamed,
            String language,
            String all,
            String filled,
            String words,
            String middle,
            String end,
            String italic) {
        this.partsNamed = partsNamed;
        this.language = language;
        this.all = all;
        this.filled = filled;
        this.words = words;
        this.middle = middle;
        this.end = end;
        this.italic = italic;
    }
}
