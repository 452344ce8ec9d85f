package ampersheet.formula;

import ampersheet.quantity.Unit;

/**
 * A piece of a formula.
 *
 * @param text as written; for QUOTED without the quotes
 * @param position index of its first character
 */
record Token(Kind kind, String text, double number, Unit unit, int position) {
    enum Kind {
        NUMBER,
        NAME,
        QUOTED,
        SIGN,
        END
    }

    static Token of(Kind kind, String text, int position) {
        return new Token(kind, text, 0, null, position);
    }

    boolean is(String sign) {
        return kind == Kind.SIGN && text.equals(sign);
    }

    /** For messages: what stands there. */
    String described() {
        return switch (kind) {
            case END -> "the end of the formula";
            case QUOTED -> "\"" + text + "\"";
            default -> text;
        };
    }
}
