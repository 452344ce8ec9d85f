package ampersheet.marking;

import ampersheet.quantity.DecimalMarker;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a comma in an answer such as {@code 2,353 V} means: a decimal marker, or a mark between thousands. By itself
 * nothing tells; what the same person wrote beside it may. On a sheet with decimal commas it is the point of
 * {@code 2.353 V}: there, the two have changed places.
 */
enum CommaReading {
    DECIMAL,
    THOUSANDS;

    private static final Pattern EITHER = Pattern.compile("(?<![\\d.,])([1-9]\\d{0,2}),(\\d{3})(?![\\d.,])");
    private static final Pattern NUMBER = Pattern.compile("(?<![\\d.,])\\d[\\d.,]*");
    private static final Pattern DECIMAL_COMMA =
            Pattern.compile("\\d{1,3}(\\.\\d{3})+,\\d+|0\\d*,\\d+|\\d+,(\\d{1,2}|\\d{4,})");
    private static final Pattern DECIMAL_POINT = Pattern.compile("\\d{1,3}(,\\d{3})+\\.\\d+|\\d+\\.\\d+");

    /** The answer so written that only this reading is left. */
    String of(String typed, DecimalMarker sheet) {
        return sheet == DecimalMarker.COMMA ? exchanged(of(exchanged(typed))) : of(typed);
    }

    private static String exchanged(String typed) {
        return typed.replace('.', '\n').replace(',', '.').replace('\n', ',');
    }

    private String of(String typed) {
        Matcher number = EITHER.matcher(typed);
        return number.find()
                ? typed.substring(0, number.start())
                        + number.group(1)
                        + (this == DECIMAL ? "." : "")
                        + number.group(2)
                        + typed.substring(number.end())
                : typed;
    }

    CommaReading other() {
        return this == DECIMAL ? THOUSANDS : DECIMAL;
    }

    /** What the other answers of one person tell; empty if nothing, or if they use both markers. */
    static Optional<CommaReading> shownBy(List<String> answers, DecimalMarker sheet) {
        return sheet == DecimalMarker.COMMA
                ? shownBy(answers.stream().map(CommaReading::exchanged).toList())
                : shownBy(answers);
    }

    private static Optional<CommaReading> shownBy(List<String> answers) {
        boolean comma = false;
        boolean point = false;
        for (String answer : answers) {
            Matcher number = NUMBER.matcher(answer);
            while (number.find()) {
                comma |= DECIMAL_COMMA.matcher(number.group()).matches();
                point |= DECIMAL_POINT.matcher(number.group()).matches();
            }
        }
        return comma == point ? Optional.empty() : Optional.of(comma ? DECIMAL : THOUSANDS);
    }
}
