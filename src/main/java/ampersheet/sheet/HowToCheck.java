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
        return "Beside a box stands a code and a letter, such as **" + EXAMPLE + "\u00a0" + exampleLetter()
                + "**. Find the letter of your own answer in the table; if it is another one, look for the slip before "
                + "you go on."
                + (bySize ? bySize(byDigits) : "")
                + (byDigits ? byDigits(bySize) : "")
                + "\n\nThe slips that are usual for a problem never have its letter; any other wrong answer has it by "
                + "chance once in 16 times (where two letters are given, twice). Look at the unit yourself.";
    }

    private static char exampleLetter() {
        return EXAMPLE.letter(EXAMPLE_DIGITS / 100).orElseThrow();
    }

    private String bySize(boolean others) {
        int row = row();
        List<String> notes = new ArrayList<>();
        if (keys.stream().anyMatch(key -> key.unit().equals(PERCENT))) {
            notes.add(inLanguage("43\u00a0% is 4.3\u00a0×\u00a010⁻¹, however you write a share."));
        }
        if (keys.stream().anyMatch(key -> key.unit().offset() != 0)) {
            notes.add("Temperatures stay in °C.");
        }
        if (keys.stream().anyMatch(key -> key.unit().dimension().equals(SQUARE_MILLIMETRE.dimension()))) {
            notes.add("Areas stay in mm².");
        }
        boolean minus = keys.stream().anyMatch(key -> key.expected() < 0);
        String limit = inLanguage(thousandths(CheckTable.limit(CheckCode.BY_SIZE.indexOf(EXAMPLE.way()), row)));
        int column = EXAMPLE.column() + EXAMPLE_POWER;
        return "\n\n" + (others ? "Codes with A, B or C:\n\n" : "")
                + "1. **Number**: write it without a prefix, from 1 to 9.99 times a power of ten."
                + (notes.isEmpty() ? "" : " " + String.join(" ", notes))
                + "\n2. **Row**: the code's letter names a column of limits. Go down it to the last limit that is "
                + "not above "
                + "your number. (If already the first is above it, take ten times your number and a power one less.)\n"
                + "3. **Column**: the code's digit plus the power of ten. After 9 comes 0, before 0 comes 9."
                + (minus ? " For a minus sign add 5." : "")
                + "\n\nExample: beside the box stands **" + EXAMPLE + "\u00a0" + exampleLetter() + "**, your answer is "
                + inLanguage("16.3\u00a0mA. The number is 1.63\u00a0×\u00a010⁻²") + ". In column " + EXAMPLE.way()
                + " the last limit not above it is " + limit + ": row " + row + ". 4\u00a0−\u00a02\u00a0=\u00a0"
                + column
                + ": column " + column + ". There stands **" + CheckTable.letter(row, column) + "**: it fits.";
    }

    private static int row() {
        int way = CheckCode.BY_SIZE.indexOf(EXAMPLE.way());
        int row = 0;
        while (row + 1 < CheckTable.ROWS && CheckTable.limit(way, row + 1) <= EXAMPLE_DIGITS) {
            row++;
        }
        return row;
    }

    /** The sums of the example are those of {@link CheckCode}: 8 + 15 + 21 = 44 by N, 8 + 45 + 9 = 62 by M. */
    private String byDigits(boolean others) {
        List<String> rules = new ArrayList<>();
        if (ways.contains('N')) {
            rules.add("- N: the last digit × 1, the one before × 3, then × 7, × 9, and × 1 again. 358 gives "
                    + "8\u00a0+\u00a015\u00a0+\u00a021\u00a0=\u00a044, less 38 is row 6.");
        }
        if (ways.contains('M')) {
            rules.add("- M: the last digit × 1, the one before × 9, then × 3, × 7, and × 1 again. 358 gives "
                    + "8\u00a0+\u00a045\u00a0+\u00a09\u00a0=\u00a062, less 38 is row 24.");
        }
        return "\n\n"
                + (others
                        ? "Codes with " + (rules.size() == 2 ? "N or M" : ways.contains('N') ? "N" : "M") + ", for "
                                + "whole numbers: multiply"
                        : "Multiply")
                + " the digits as follows, add up, and take away 38 until less "
                + "than 38 is left: that is the row. The code's digit is the column.\n\n" + String.join("\n", rules);
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
