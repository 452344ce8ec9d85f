package ampersheet.sheet;

import ampersheet.answer.AnswerKey;
import ampersheet.language.Language;
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
    private final Language language;

    private HowToCheck(List<AnswerKey> keys, Set<Character> ways, DecimalMarker marker, Language language) {
        this.keys = keys;
        this.ways = ways;
        this.marker = marker;
        this.language = language;
    }

    /** @param keys of the boxes with a letter; @param ways in which their letters are found */
    static List<Block> of(List<AnswerKey> keys, Set<Character> ways, DecimalMarker marker, Language language) {
        HowToCheck howTo = new HowToCheck(keys, ways, marker, language);
        return List.of(new Heading(2, language.say("sheet.check.heading")), new Prose(howTo.words()), howTo.table());
    }

    private String words() {
        boolean bySize = ways.stream().anyMatch(way -> CheckCode.BY_SIZE.indexOf(way) >= 0);
        boolean byDigits = ways.stream().anyMatch(way -> CheckCode.BY_DIGITS.indexOf(way) >= 0);
        List<String> paragraphs = new ArrayList<>();
        paragraphs.add(language.say("sheet.check.about", "code", EXAMPLE.toString(), "letter", exampleLetter()));
        if (bySize) {
            if (byDigits) {
                paragraphs.add(language.say("sheet.check.size.heading"));
            }
            paragraphs.add(bySize());
            paragraphs.add(example());
        }
        if (byDigits) {
            paragraphs.add(byDigits(bySize));
            paragraphs.add(byDigitsRules());
        }
        paragraphs.add(language.say("sheet.check.chance"));
        return String.join("\n\n", paragraphs);
    }

    private static String exampleLetter() {
        return Character.toString(EXAMPLE.letter(EXAMPLE_DIGITS / 100).orElseThrow());
    }

    private String bySize() {
        List<String> number = new ArrayList<>(List.of(language.say("sheet.check.size.number")));
        if (keys.stream().anyMatch(key -> key.unit().equals(PERCENT))) {
            number.add(language.say(
                    "sheet.check.size.share", "percent", "43\u00a0%", "number", marked("4.3\u00a0×\u00a010⁻¹")));
        }
        if (keys.stream().anyMatch(key -> key.unit().offset() != 0)) {
            number.add(language.say("sheet.check.size.temperature"));
        }
        if (keys.stream().anyMatch(key -> key.unit().dimension().equals(SQUARE_MILLIMETRE.dimension()))) {
            number.add(language.say("sheet.check.size.area"));
        }
        String column = language.say("sheet.check.size.column");
        if (keys.stream().anyMatch(key -> key.expected() < 0)) {
            column += " " + language.say("sheet.check.size.minus");
        }
        return "1. " + String.join(" ", number) + "\n2. " + language.say("sheet.check.size.row") + "\n3. " + column;
    }

    private String example() {
        int row = row();
        int column = EXAMPLE.column() + EXAMPLE_POWER;
        return language.say(
                "sheet.check.size.example",
                "code",
                EXAMPLE.toString(),
                "letter",
                exampleLetter(),
                "answer",
                marked("16.3\u00a0mA"),
                "number",
                marked("1.63\u00a0×\u00a010⁻²"),
                "way",
                Character.toString(EXAMPLE.way()),
                "limit",
                marked(thousandths(CheckTable.limit(CheckCode.BY_SIZE.indexOf(EXAMPLE.way()), row))),
                "row",
                Integer.toString(row),
                "sum",
                "4\u00a0−\u00a02\u00a0=\u00a0" + column,
                "column",
                Integer.toString(column),
                "found",
                Character.toString(CheckTable.letter(row, column)));
    }

    private static int row() {
        int way = CheckCode.BY_SIZE.indexOf(EXAMPLE.way());
        int row = 0;
        while (row + 1 < CheckTable.ROWS && CheckTable.limit(way, row + 1) <= EXAMPLE_DIGITS) {
            row++;
        }
        return row;
    }

    private String byDigits(boolean amongOthers) {
        List<String> codes = new ArrayList<>();
        for (char way : CheckCode.BY_DIGITS.toCharArray()) {
            if (ways.contains(way)) {
                codes.add(Character.toString(way));
            }
        }
        return amongOthers
                ? language.say("sheet.check.digits.among-others", "codes", language.either(codes))
                : language.say("sheet.check.digits.alone");
    }

    /** The sums of the example are those of {@link CheckCode}: 8 + 15 + 21 = 44 by N, 8 + 45 + 9 = 62 by M. */
    private String byDigitsRules() {
        List<String> rules = new ArrayList<>();
        if (ways.contains('N')) {
            rules.add("- " + language.say("sheet.check.digits.by-n"));
        }
        if (ways.contains('M')) {
            rules.add("- " + language.say("sheet.check.digits.by-m"));
        }
        return String.join("\n", rules);
    }

    /** With the decimal marker of the sheet. */
    private String marked(String text) {
        return text.replace('.', marker.character());
    }

    private Table table() {
        List<String> head = new ArrayList<>(List.of(language.say("sheet.check.row"), "A", "B", "C"));
        for (int column = 0; column < CheckTable.COLUMNS; column++) {
            head.add(Integer.toString(column));
        }
        List<List<Cell>> rows = new ArrayList<>();
        for (int row = 0; row < CheckTable.ROWS; row++) {
            List<Cell> cells = new ArrayList<>(List.of(cell(Integer.toString(row))));
            for (int way = 0; way < CheckTable.WAYS; way++) {
                cells.add(cell(marked(thousandths(CheckTable.limit(way, row)))));
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
