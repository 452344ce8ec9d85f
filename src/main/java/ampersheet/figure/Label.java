package ampersheet.figure;

import ampersheet.formula.Symbol;
import ampersheet.language.Language;
import java.util.List;
import java.util.Optional;

/**
 * What stands beside a part: its name and its value.
 *
 * @param name such as {@code R1}
 * @param lines such as {@code V_f = 2 V}; only a symbol, where the value is asked
 */
public record Label(String name, List<Line> lines) {
    public Label {
        lines = List.copyOf(lines);
    }

    /** @param symbol printed italic with its subscript before the text; @param text such as {@code = 2 V} */
    public record Line(Optional<Symbol> symbol, String text) {
        /** As plain text. */
        public String plain() {
            return symbol.map(s -> text.isEmpty() ? s.plain() : s.plain() + " " + text)
                    .orElse(text);
        }

        /** As the table of a figure tells it: only a symbol where its value is asked. */
        String told(Language language) {
            return text.isEmpty() ? language.say("figure.to-be-found", "symbol", plain()) : plain();
        }
    }
}
