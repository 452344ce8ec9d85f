package ampersheet.formula;

import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.QuantityWriter.Printed;

/** A constant as its author wrote it, digits unchanged, by the SI writing rules of {@link QuantityWriter}. */
final class PrintedConstant {
    private static final int GROUPED_FROM = 5;

    private PrintedConstant() {}

    static Printed of(Expression.Constant constant, DecimalMarker marker) {
        String number = number(constant.asWritten(), marker);
        String unit = constant.unit().symbol();
        String between = unit.equals("°") ? "" : String.valueOf(QuantityWriter.NO_BREAK_SPACE);
        return new Printed(unit.isEmpty() ? number : number + between + unit, number, unit, true);
    }

    private static String number(String written, DecimalMarker marker) {
        int start = written.startsWith("-") ? 1 : 0;
        int exponent = Math.max(written.indexOf('e'), written.indexOf('E'));
        String digits = written.substring(start, exponent < 0 ? written.length() : exponent);
        int point = digits.indexOf('.');
        StringBuilder text = new StringBuilder();
        if (start > 0) {
            text.append(QuantityWriter.MINUS);
        }
        String whole = point < 0 ? digits : digits.substring(0, point);
        for (int i = 0; i < whole.length(); i++) {
            if (i > 0 && whole.length() >= GROUPED_FROM && (whole.length() - i) % 3 == 0) {
                text.append(QuantityWriter.GROUP_SPACE);
            }
            text.append(whole.charAt(i));
        }
        if (point >= 0) {
            String decimals = digits.substring(point + 1);
            text.append(marker.character());
            for (int i = 0; i < decimals.length(); i++) {
                if (i > 0 && decimals.length() >= GROUPED_FROM && i % 3 == 0) {
                    text.append(QuantityWriter.GROUP_SPACE);
                }
                text.append(decimals.charAt(i));
            }
        }
        if (exponent >= 0) {
            text.append("×10").append(Superscript.of(wholeNumber(written.substring(exponent + 1))));
        }
        return text.toString();
    }

    private static int wholeNumber(String signed) {
        int number = 0;
        for (char c : signed.toCharArray()) {
            number = Lexer.digit(c) ? number * 10 + (c - '0') : number;
        }
        return signed.startsWith("-") ? -number : number;
    }
}
