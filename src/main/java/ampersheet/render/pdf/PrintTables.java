package ampersheet.render.pdf;

import ampersheet.formula.MathMl;
import ampersheet.language.Language;
import ampersheet.render.KeyHead;
import ampersheet.render.Markup;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.KeyLine;
import ampersheet.sheet.Document.KeyTable;
import ampersheet.sheet.Document.MistakeLine;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.Document.PreferredValues;
import ampersheet.sheet.Document.ReferenceTable;
import ampersheet.sheet.Document.Series;
import ampersheet.sheet.Document.Table;
import java.util.List;

/** Tables: of a key, of a class, and those to look values up in. */
final class PrintTables {
    /** A table with more has short entries and is set close, its halves side by side or, in large print, apart. */
    private static final int MANY_COLUMNS = 8;

    private static final int SERIES_ROW = 12;
    /** Width of a digit and of what stands between columns in the compact profile, in millimetres. */
    private static final double DIGIT = 1.6;

    private static final double BETWEEN_COLUMNS = 2;

    private final Markup markup;
    private final MathBoxes math;
    private final Profile profile;
    private final Paper paper;
    private final Language language;

    PrintTables(Markup markup, MathBoxes math, Profile profile, Paper paper, Language language) {
        this.markup = markup;
        this.math = math;
        this.profile = profile;
        this.paper = paper;
        this.language = language;
    }

    void write(KeyTable table) {
        openTable(language.say("print.answers"), KeyHead.in(language), "plain");
        for (KeyLine line : table.lines()) {
            markup.open("tr").open("th", "scope", "row").line(line.question());
            line.symbol().ifPresent(symbol -> {
                markup.text(" ");
                math.write(MathMl.symbol(symbol));
            });
            markup.close("th")
                    .open("td")
                    .open("strong")
                    .line(line.answer())
                    .close("strong")
                    .close("td");
            markup.open("td")
                    .line(line.accepted())
                    .close("td")
                    .open("td")
                    .line(line.secondRoute())
                    .close("td")
                    .close("tr")
                    .newline();
        }
        closeTable();
        for (KeyLine line : table.lines()) {
            if (!line.mistakes().isEmpty()) {
                markup.open("p", "class", "prompt")
                        .open("b")
                        .line(line.question())
                        .close("b")
                        .text(" " + language.say("print.wrong-methods"))
                        .close("p")
                        .newline()
                        .open("ul", "class", "mistakes")
                        .newline();
                for (MistakeLine mistake : line.mistakes()) {
                    markup.open("li")
                            .open("b")
                            .line(mistake.value())
                            .close("b")
                            .text(" — ")
                            .line(mistake.explanation())
                            .close("li")
                            .newline();
                }
                markup.close("ul").newline();
            }
        }
    }

    void write(PreferredValues values) {
        openLookUp(language.say("print.preferred-values"), "series");
        markup.open("tbody").newline();
        for (Series series : values.series()) {
            List<List<String>> rows = series.rows(profile == Profile.LARGE ? SERIES_ROW / 2 : SERIES_ROW);
            for (List<String> row : rows) {
                markup.open("tr");
                if (row == rows.get(0)) {
                    markup.open("th", "scope", "row", "rowspan", Integer.toString(rows.size()))
                            .line(series.name())
                            .close("th");
                }
                row.forEach(value -> markup.open("td").line(value).close("td"));
                markup.close("tr").newline();
            }
        }
        markup.close("tbody").close("table").close("div").newline();
    }

    /** Its rows side by side where the paper is wide enough for them: that takes a quarter of the lines. */
    void write(ReferenceTable written) {
        boolean wide = profile == Profile.REGULAR || profile == Profile.COMPACT;
        ReferenceTable turned = written.turned();
        ReferenceTable table = wide && (!paper.isFolded() || fitsFolded(turned)) ? turned : written;
        openLookUp(table.caption(), "numbers");
        markup.open("thead").open("tr");
        table.head()
                .forEach(name -> markup.open("th", "scope", "col").line(name).close("th"));
        markup.close("tr").close("thead").newline().open("tbody").newline();
        for (List<String> row : table.rows()) {
            markup.open("tr").open("th", "scope", "row").line(row.get(0)).close("th");
            row.subList(1, row.size())
                    .forEach(value -> markup.open("td").line(value).close("td"));
            markup.close("tr").newline();
        }
        markup.close("tbody").close("table").close("div").newline();
    }

    private boolean fitsFolded(ReferenceTable table) {
        double width = 0;
        for (int column = 0; column < table.head().size(); column++) {
            int longest = table.head().get(column).length();
            for (List<String> row : table.rows()) {
                longest = Math.max(longest, row.get(column).length());
            }
            width += longest * DIGIT + BETWEEN_COLUMNS;
        }
        return width <= PrintStyle.textWidth(paper, profile);
    }

    private void openLookUp(String caption, String look) {
        markup.open("div", "class", "look-up")
                .newline()
                .open("table", "class", look)
                .newline();
        markup.open("caption").line(caption).close("caption").newline();
    }

    void write(Table table) {
        if (table.head().size() <= MANY_COLUMNS || profile.columns()) {
            rows(table, table.rows(), table.head().size() <= MANY_COLUMNS ? "plain" : "grid");
        } else {
            int half = (table.rows().size() + 1) / 2;
            List<List<List<Cell>>> halves = List.of(
                    table.rows().subList(0, half),
                    table.rows().subList(half, table.rows().size()));
            String look = profile == Profile.LARGE ? "half" : "half beside";
            markup.open("div", "class", "halves");
            for (List<List<Cell>> rows : halves) {
                markup.open("div", "class", look);
                rows(table, rows, "grid");
                markup.close("div");
            }
            markup.close("div").newline();
        }
    }

    private void rows(Table table, List<List<Cell>> rows, String look) {
        openTable(table.caption(), table.head(), look);
        for (List<Cell> row : rows) {
            markup.open("tr");
            for (int i = 0; i < row.size(); i++) {
                if (i == 0) {
                    markup.open("th", "scope", "row").line(row.get(i).text()).close("th");
                } else {
                    markup.open("td").line(row.get(i).text()).close("td");
                }
            }
            markup.close("tr").newline();
        }
        closeTable();
    }

    private void openTable(String caption, List<String> head, String look) {
        if (!caption.isEmpty()) {
            markup.open("p", "class", "prompt")
                    .open("b")
                    .line(caption)
                    .close("b")
                    .close("p")
                    .newline();
        }
        markup.open("table", "class", look).newline().open("thead").open("tr");
        head.forEach(name -> markup.open("th", "scope", "col").line(name).close("th"));
        markup.close("tr").close("thead").newline().open("tbody").newline();
    }

    private void closeTable() {
        markup.close("tbody").close("table").newline();
    }
}
