package ampersheet.problem;

import ampersheet.formula.Notation;
import ampersheet.formula.Symbol;
import ampersheet.formula.Values;
import ampersheet.language.Language;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.QuantityWriter.Printed;
import ampersheet.quantity.Unit;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.WordGiven;
import java.util.LinkedHashMap;
import java.util.Map;

/** What the formulas of a template print for each name. */
public final class Notations {
    private Notations() {}

    /**
     * @param values of givens, constants and steps; a name without a value gets a symbol only
     * @param language of the words in a formula
     * @param figures significant figures of a value that has no short exact decimal
     */
    public static Notation of(
            ProblemTemplate template, Language language, Values values, QuantityWriter writer, int figures) {
        Map<String, Symbol> symbols = new LinkedHashMap<>();
        Map<String, Unit> units = new LinkedHashMap<>();
        for (Given given : template.givens()) {
            if (given instanceof QuantityGiven quantity) {
                symbols.put(given.name(), quantity.symbol());
                units.put(given.name(), quantity.unit());
            }
        }
        template.constants().forEach(constant -> {
            symbols.put(constant.name(), constant.symbol());
            units.put(constant.name(), constant.unit());
        });
        template.lines().forEach(line -> {
            symbols.put(line.id(), line.symbol());
            units.put(line.id(), line.unit());
        });
        Map<String, Printed> printed = new LinkedHashMap<>();
        units.forEach((name, unit) -> {
            Quantity value = values.has(name) ? values.quantity(name) : null;
            if (value != null && Double.isFinite(value.value())) {
                printed.put(name, writer.working(value.value(), unit, figures));
            }
        });
        return new Notation(symbols, printed, words(template, values), writer.marker(), language);
    }

    /** What a word given is, and what each word that it may be is called, where they are printed. */
    private static Map<String, String> words(ProblemTemplate template, Values values) {
        Map<String, String> words = new LinkedHashMap<>(template.said(values.words()));
        for (Given given : template.givens()) {
            if (given instanceof WordGiven word) {
                word.values().forEach(value -> words.put(Notation.asWord(value), word.said(value)));
            }
        }
        return words;
    }

    /** The drawn givens as one would type them after {@code work}: {@code Vs=24V Vf=1.6V order="top left"}. */
    public static String givensInOneLine(ProblemTemplate template, Values givens) {
        StringBuilder line = new StringBuilder();
        for (Given given : template.givens()) {
            if (line.length() > 0) {
                line.append(' ');
            }
            line.append(given.name()).append('=');
            if (given instanceof QuantityGiven quantity) {
                Printed printed =
                        QuantityWriter.POINT.plain(givens.quantity(given.name()).value(), quantity.unit(), 9);
                line.append(withoutSpaces(printed.text()));
            } else {
                String word = givens.words().get(given.name());
                line.append(word.indexOf(' ') < 0 ? word : '"' + word + '"');
            }
        }
        return line.toString();
    }

    /** The printed spaces would split a word of the command line, or be hard to type. */
    private static String withoutSpaces(String printed) {
        StringBuilder typed = new StringBuilder();
        for (char c : printed.toCharArray()) {
            if (c != ' ' && c != '\u00a0' && c != '\u202f') {
                typed.append(c == '\u2212' ? '-' : c);
            }
        }
        return typed.toString();
    }
}
