package ampersheet.render.html;

import ampersheet.formula.MathMl;
import ampersheet.formula.Spoken;
import ampersheet.language.Language;
import ampersheet.render.Address;
import ampersheet.render.CssString;
import ampersheet.render.KeyHead;
import ampersheet.render.Markup;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.KeyLine;
import ampersheet.sheet.Document.KeyTable;
import ampersheet.sheet.Document.MistakeLine;
import ampersheet.sheet.Document.PreferredValues;
import ampersheet.sheet.Document.ReferenceTable;
import ampersheet.sheet.Document.Series;
import ampersheet.sheet.Document.Table;
import java.util.List;
import java.util.stream.Stream;

/** Tables: the key, those to look values up in, and those whose rows become cards on a phone. */
record TableMarkup(Markup markup, FormulaMarkup formulas, Language language) {
    /** Values in a row of preferred values: a whole E12, which a phone just shows. */
    private static final int SERIES_ROW = 12;

    void write(KeyTable table) {
        List<String> head = KeyHead.in(language);
        openTable(language.say("print.answers"), head, "cards key-lines");
        for (KeyLine line : table.lines()) {
            markup.open("tbody", "role", "rowgroup").newline().open("tr", "role", "row");
            openCell("th", "");
            line.symbol().ifPresent(symbol -> markup.open("span")); // keeps both together on a phone
            markup.open("b", "class", "label").line(line.question()).close("b");
            line.symbol().ifPresent(symbol -> {
                markup.text(" ");
                formulas.inLine(MathMl.symbol(symbol), Spoken.symbol(symbol, formulas.language()));
                markup.close("span");
            });
            markup.close("th");
            openCell("td", "").open("strong").line(line.answer()).close("strong");
            markup.close("td");
            openCell("td", "").line(line.accepted()).close("td");
            openCell("td", "").line(line.secondRoute()).close("td");
            markup.close("tr").newline();
            if (!line.mistakes().isEmpty()) {
                markup.open("tr", "role", "row", "class", "mistakes");
                markup.open("td", "role", "cell", "colspan", Integer.toString(head.size()));
                markup.element("p", language.say("print.wrong-methods"))
                        .open("ul")
                        .newline();
                for (MistakeLine mistake : line.mistakes()) {
                    markup.open("li").open("b").line(mistake.value()).close("b").text(" — ");
                    markup.line(mistake.explanation()).close("li").newline();
                }
                markup.close("ul").close("td").close("tr").newline();
            }
            markup.close("tbody").newline();
        }
        markup.close("table").newline();
    }

    void write(PreferredValues values) {
        openScroll(language.say("print.preferred-values"), "look-up series");
        for (Series series : values.series()) {
            markup.open("tbody").newline();
            List<List<String>> rows = series.rows(SERIES_ROW);
            for (List<String> row : rows) {
                markup.open("tr");
                if (row == rows.get(0)) {
                    markup.open("th", "scope", "rowgroup", "rowspan", Integer.toString(rows.size()))
                            .line(series.name())
                            .close("th");
                }
                row.forEach(value -> markup.text(" ").open("td").line(value).close("td"));
                markup.close("tr").newline();
            }
            markup.close("tbody").newline();
        }
        markup.close("table").close("div").newline();
    }

    void write(ReferenceTable table) {
        openScroll(table.caption(), "look-up");
        markup.open("thead").open("tr");
        table.head()
                .forEach(name -> markup.open("th", "scope", "col").line(name).close("th"));
        markup.close("tr").close("thead").newline().open("tbody").newline();
        for (List<String> row : table.rows()) {
            markup.open("tr").open("th", "scope", "row").line(row.get(0)).close("th");
            row.subList(1, row.size())
                    .forEach(value -> markup.text(" ").open("td").line(value).close("td"));
            markup.close("tr").newline();
        }
        markup.close("tbody").close("table").close("div").newline();
    }

    private void openScroll(String caption, String look) {
        markup.open("div", "class", "scroll", "tabindex", "0", "role", "group", "aria-label", caption)
                .newline();
        markup.open("table", "class", look)
                .newline()
                .open("caption")
                .line(caption)
                .close("caption")
                .newline();
    }

    void write(Table table) {
        if (table.wide()) {
            wide(table);
            return;
        }
        openTable(table.caption(), table.head(), "cards");
        markup.open("tbody", "role", "rowgroup").newline();
        for (List<Cell> row : table.rows()) {
            markup.open("tr", "role", "row");
            for (int i = 0; i < row.size(); i++) {
                String element = i == 0 ? "th" : "td";
                openCell(element, i < table.head().size() ? table.head().get(i) : "");
                content(row.get(i));
                markup.close(element);
            }
            markup.close("tr").newline();
        }
        markup.close("tbody").newline().close("table").newline();
    }

    /** It scrolls by itself; its head and the names of its rows stay in sight. */
    private void wide(Table table) {
        markup.open("div", "class", "wide", "tabindex", "0", "role", "group", "aria-label", table.caption())
                .newline()
                .open("table")
                .newline();
        if (!table.caption().isEmpty()) {
            markup.open("caption").line(table.caption()).close("caption").newline();
        }
        markup.open("thead").open("tr");
        table.head()
                .forEach(name -> markup.open("th", "scope", "col").line(name).close("th"));
        markup.close("tr").close("thead").newline().open("tbody").newline();
        for (List<Cell> row : table.rows()) {
            markup.open("tr").open("th", "scope", "row");
            content(row.get(0));
            markup.close("th");
            for (Cell cell : row.subList(1, row.size())) {
                markup.open("td");
                content(cell);
                markup.close("td");
            }
            markup.close("tr").newline();
        }
        markup.close("tbody").close("table").close("div").newline();
    }

    /**
     * On a phone each row of these tables becomes a small card and each cell carries its column's name; roles are
     * spelled out because a cell that is no longer displayed as one would lose its meaning for a screen reader.
     */
    private void openTable(String caption, List<String> head, String look) {
        markup.open("table", "class", look, "role", "table").newline();
        if (!caption.isEmpty()) {
            markup.open("caption").line(caption).close("caption").newline();
        }
        markup.open("thead", "role", "rowgroup").open("tr", "role", "row");
        head.forEach(name -> markup.open("th", "scope", "col", "role", "columnheader")
                .line(name)
                .close("th"));
        markup.close("tr").close("thead").newline();
    }

    /** Of a table of one head for all, the style sheet knows the columns' names. */
    private Markup openCell(String element, String label) {
        if (element.equals("th")) {
            markup.open("th", labelled(label, "scope", "row", "role", "rowheader"));
        } else {
            markup.open("td", labelled(label, "role", "cell"));
        }
        return markup;
    }

    private static String[] labelled(String label, String... attributes) {
        return label.isEmpty()
                ? attributes
                : Stream.concat(Stream.of(attributes), Stream.of("data-label", label))
                        .toArray(String[]::new);
    }

    /** Names of the columns of a key, before each cell where its rows are cards. */
    static String keyLabels(Language language) {
        List<String> head = KeyHead.in(language);
        StringBuilder style = new StringBuilder("@media (max-width:34em){");
        for (int i = 0; i < head.size(); i++) {
            style.append(".key-lines tr:first-child>:nth-child(").append(i + 1);
            style.append(")::before{content:").append(CssString.of(head.get(i))).append(";color:var(--ink-soft)}");
        }
        return style.append("}\n").toString();
    }

    private void content(Cell cell) {
        if (Address.isAllowed(cell.href())) {
            markup.open("a", "href", Address.encoded(cell.href()))
                    .line(cell.text())
                    .close("a");
        } else {
            markup.line(cell.text());
        }
    }
}
