package ampersheet.render;

import ampersheet.formula.Spoken;
import ampersheet.formula.Symbol;
import ampersheet.language.Language;
import ampersheet.quantity.QuantityWriter.Printed;

/** The lines of an equation as they are read aloud: the first begins with its symbol, the others go on from it. */
public final class SpokenLines {
    private final Symbol symbol;
    private final Language language;
    private boolean begun;

    public SpokenLines(Symbol symbol, Language language) {
        this.symbol = symbol;
        this.language = language;
    }

    /** @param what on the right, in words */
    public String equal(String what) {
        return begins()
                ? language.say("print.spoken.symbol-equals", "symbol", Spoken.symbol(symbol, language), "what", what)
                : language.say("print.spoken.equals", "what", what);
    }

    /** The last line. */
    public String result(Printed value) {
        String what = Spoken.value(value, language);
        if (value.exact()) {
            return equal(what);
        }
        return begins()
                ? language.say("print.spoken.symbol-about", "symbol", Spoken.symbol(symbol, language), "what", what)
                : language.say("print.spoken.about", "what", what);
    }

    private boolean begins() {
        boolean begins = !begun;
        begun = true;
        return begins;
    }
}
