package ampersheet.sheet;

import ampersheet.answer.AnswerKey;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.Unit;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * How a learner finds the letter of an answer, with the table. The example is worked with the table itself, and what no
 * box of the sheet needs is left out.
 */
final class HowToCheck {
    private static final CheckCode EXAMPLE = new CheckCode('B', 4);
    private static final double EXAMPLE_DIGITS = 1.63;
    private static final int EXAMPLE_POWER = -2;

    private static final Unit PERCENT = Unit.parse("%");
    private static final Unit SQUARE_MILLIMETRE = Unit.parse("mm^2");

    private final List<AnswerKey> keys;
    private final Set<Character> ways;
    private final DecimalMarker marker;

    private HowToCheck(List<AnswerKey> keys, Set<Character> ways, DecimalMarker marker) {
        this.keys = keys;
        this.ways = ways;
        this.marker = marker;
    }

    /** @param keys of the boxes with a letter; @param ways in which their letters are found */
    static List<Block> of(List<AnswerKey> keys, Set<Character> ways, DecimalMarker marker) {
        HowToCheck howTo = new HowToCheck(keys, ways, marker);
        return List.of(new Heading(2, "Check letters"), new Prose(howTo.words()), howTo.table());
    }

    private String words() {
        boolean bySize = ways.stream().anyMatch(way -> CheckCode.BY_SIZE.indexOf(way) >= 0);
        boolean byDigits = ways.stream().anyMatch(way -> CheckCode.BY_DIGITS.indexOf(way) >= 0);
        List<String> steps = new ArrayList<>();
        if (bySize) {
            steps.addAll(bySize());
        }
        if (byDigits) {
            steps.add(byDigits(bySize));
        }
        char letter = EXAMPLE.letter(EXAMPLE_DIGITS / 100).orElseThrow();
        return "Beside a box stands a code and a letter"
                + (bySize ? ", such as **" + EXAMPLE + " " + letter + "**" : "")
                + ". Find the letter of your own answer in the table; if it is another one, look for the slip before "
                + "you go on.\n\n" + numbered(steps)
                + "\n\nThe slips that are usual for a problem never have its letter; any other wrong answer has it by "
                + "chance once in 16 times (where two letters are given, twice). Look at the unit yourself.";
    }

    private static String numbered(List<String> steps) {
        StringBuilder list = new StringBuilder();
        for (int i = 0; i < steps.size(); i++) {
            list.append(i == 0 ? "" : "\n").append(i + 1).append(". ").append(steps.get(i));
        }
        return list.toString();
    }

    private List<String> bySize() {
        int row = row();
        List<String> notes = new ArrayList<>();
        if (keys.stream().anyMatch(key -> key.unit().equals(PERCENT))) {
            notes.add(inLanguage("43 % is 4.3 × 10⁻¹, however you write a share."));
        }
        if (keys.stream().anyMatch(key -> key.unit().offset() != 0)) {
            notes.add("Temperatures stay in °C.");
        }
        if (keys.stream().anyMatch(key -> key.unit().dimension().equals(SQUARE_MILLIMETRE.dimension()))) {
            notes.add("Areas stay in mm².");
        }
        String lowest = CheckTable.limit(CheckCode.BY_SIZE.indexOf(EXAMPLE.way()), 0) > 1
                ? " (A number below the first of them is read as ten times as large, with a power one less.)"
                : "";
        int column = EXAMPLE.column() + EXAMPLE_POWER;
        boolean minus = keys.stream().anyMatch(key -> key.expected() < 0);
        return List.of(
                inLanguage("**Write** your number without a prefix, as a number from 1 to 9.99 times a power of ten: "
                                + "16.3 mA is 1.63 × 10⁻² A.")
                        + (notes.isEmpty() ? "" : " " + String.join(" ", notes)),
                "**Row**: the code's letter (A, B or C) names a column of limits. Go down it to the last limit that is not "
                        + "above your number: of column " + EXAMPLE.way() + " that is "
                        + inLanguage(thousandths(CheckTable.limit(CheckCode.BY_SIZE.indexOf(EXAMPLE.way()), row)))
                        + ", in row " + row + "." + lowest,
                "**Letter**: the code's digit plus the power of ten names the column: 4 − 2 is column " + column
                        + ", and in row " + row + " stands **" + CheckTable.letter(row, column)
                        + "**. After 9 comes 0, before 0 comes 9." + (minus ? " For a minus sign add 5." : ""));
    }

    private static int row() {
        int way = CheckCode.BY_SIZE.indexOf(EXAMPLE.way());
        int row = 0;
        while (row + 1 < CheckTable.ROWS && CheckTable.limit(way, row + 1) <= EXAMPLE_DIGITS) {
            row++;
        }
        return row;
    }

    private String byDigits(boolean others) {
        List<String> rules = new ArrayList<>();
        if (ways.contains('N')) {
            rules.add("with N by 1, 3, 7, 9, 1, 3 …");
        }
        if (ways.contains('M')) {
            rules.add("with M by 1, 9, 3, 7, 1, 9 …");
        }
        String example = ways.contains('N')
                ? "137 gives by N 7 × 1 + 3 × 3 + 1 × 7 = 23"
                : "137 gives by M 7 × 1 + 3 × 9 + 1 × 3 = 37";
        return (others ? "**Whole numbers** have codes with N or M instead. " : "")
                + "Multiply the digits, from the last to "
                + "the first, " + String.join(", ", rules)
                + ", and add up; take away 38 as often as it goes: that is the "
                + "row. " + example + ". The code's digit is the column.";
    }

    private String inLanguage(String text) {
        return marker == DecimalMarker.COMMA ? text.replaceAll("(\\d)\\.(\\d)", "$1,$2") : text;
    }

    private Table table() {
        List<String> head = new ArrayList<>(List.of("row", "A", "B", "C"));
        for (int column = 0; column < CheckTable.COLUMNS; column++) {
            head.add(Integer.toString(column));
        }
        List<List<Cell>> rows = new ArrayList<>();
        for (int row = 0; row < CheckTable.ROWS; row++) {
            List<Cell> cells = new ArrayList<>(List.of(cell(Integer.toString(row))));
            for (int way = 0; way < CheckTable.WAYS; way++) {
                cells.add(cell(inLanguage(thousandths(CheckTable.limit(way, row)))));
            }
            for (int column = 0; column < CheckTable.COLUMNS; column++) {
                cells.add(cell(Character.toString(CheckTable.letter(row, column))));
            }
            rows.add(cells);
        }
        return new Table("", head, rows);
    }

    private static String thousandths(double limit) {
        String digits = Long.toString(Math.round(limit * 1000));
        return digits.substring(0, 1) + "." + digits.substring(1);
    }

    private static Cell cell(String text) {
        return new Cell(text, "");
    }
}
