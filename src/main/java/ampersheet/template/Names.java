package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Scope;
import ampersheet.formula.Symbol;
import ampersheet.quantity.Dimension;
import ampersheet.source.Faults;
import ampersheet.source.Yaml;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;

/** What each name of a template stands for, where it was given, and whether anything uses it. */
final class Names {
    enum Kind {
        GIVEN("a given"),
        WORD("a given"),
        CONSTANT("a constant"),
        STEP("a step"),
        AXIS("a quantity of the curve");

        private final String told;

        Kind(String told) {
            this.told = told;
        }

        String told() {
            return told;
        }
    }

    /**
     * @param order among all names, as written
     * @param dimension empty for words, and where the unit could not be read: then formulas with it go unchecked
     * @param words of a word given
     */
    record Named(String id, Kind kind, int order, Place place, Optional<Dimension> dimension, List<String> words) {
        boolean isStep() {
            return kind == Kind.STEP;
        }

        boolean isUnknown() {
            return kind != Kind.WORD && dimension.isEmpty();
        }
    }

    /** Words that mean something else where names are used. */
    private static final Set<String> TAKEN_BY_WORDS = new TreeSet<>(
            List.of("true", "false", "gt", "gte", "lt", "lte", "as", "in", "using", StatementReader.SYMBOL));

    private final Map<String, Named> byId = new LinkedHashMap<>();
    private final Map<Symbol, String> bySymbol = new LinkedHashMap<>();
    private final Set<String> used = new TreeSet<>();
    private final Faults faults;

    Names(Faults faults) {
        this.faults = faults;
    }

    /** Takes a name in, or tells why it cannot be one. */
    boolean declare(Yaml.Scalar name, Kind kind, Optional<Dimension> dimension, List<String> words) {
        String id = name.text();
        if (!isFree(id, name.place())) {
            return false;
        }
        byId.put(id, new Named(id, kind, byId.size(), name.place(), dimension, words));
        return true;
    }

    /** Takes in a name that a step needs on its way; it counts as worked where that step is. */
    boolean declareFor(Yaml.Scalar step, String id, Optional<Dimension> dimension) {
        Named leading = byId.get(step.text());
        if (leading == null || !isFree(id, step.place())) {
            return false;
        }
        byId.put(id, new Named(id, Kind.STEP, leading.order(), step.place(), dimension, List.of()));
        return true;
    }

    /** Whether the text is a name that nothing has yet; tells a fault if not. */
    private boolean isFree(String id, Place place) {
        if (FormulaReader.isReserved(id) || TAKEN_BY_WORDS.contains(id)) {
            faults.error(
                    place,
                    "the name " + id + " is taken by the language of formulas and words",
                    "a name that is not a function, a series or a keyword",
                    "Choose another name; symbol: changes how it is printed.");
            return false;
        }
        if (!FormulaReader.isName(id)) {
            faults.error(
                    place,
                    "\"" + id + "\" is not a name",
                    "a letter, then letters, digits and _, such as Vs or R1",
                    "Choose another name; symbol: changes how it is printed.");
            return false;
        }
        Named first = byId.get(id);
        if (first != null) {
            faults.error(
                    place,
                    "the name " + id + " is given a second time",
                    "every name once; " + id + " already is " + first.kind().told() + " in line "
                            + first.place().line(),
                    "Rename one of the two.");
            return false;
        }
        return true;
    }

    /** Two quantities may not print alike. */
    void declareSymbol(String id, Symbol symbol, Place place) {
        String first = bySymbol.putIfAbsent(symbol, id);
        if (first != null && !first.equals(id)) {
            faults.error(
                    place,
                    id + " is printed as " + symbol.plain() + ", and so is " + first,
                    "a symbol of its own",
                    "Rename it, or give it another symbol with symbol:.");
        }
    }

    Optional<Named> get(String id) {
        return Optional.ofNullable(byId.get(id));
    }

    Collection<Named> all() {
        return byId.values();
    }

    void use(String id) {
        used.add(id);
    }

    boolean isUsed(String id) {
        return used.contains(id);
    }

    /** Names of quantities and words for which the predicate holds. */
    Scope scope(Predicate<Named> visible, Scope.Measures measures) {
        Map<String, Dimension> quantities = new LinkedHashMap<>();
        Map<String, Set<String>> words = new TreeMap<>();
        for (Named named : byId.values()) {
            if (!visible.test(named)) {
                continue;
            }
            if (named.kind() == Kind.WORD) {
                words.put(named.id(), new TreeSet<>(named.words()));
            } else {
                named.dimension().ifPresent(dimension -> quantities.put(named.id(), dimension));
            }
        }
        return new Scope(quantities, words, measures);
    }
}
