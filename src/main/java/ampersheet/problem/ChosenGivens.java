package ampersheet.problem;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.formula.Values;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.Reading;
import ampersheet.quantity.Unit;
import ampersheet.source.Languages;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Constant;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.WordGiven;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Givens that somebody chose instead of drawing them, also outside the ranges of draws; constants may be chosen, too.
 *
 * @param quantities by name of the given or constant, in SI
 * @param words by name of the given
 */
public record ChosenGivens(Map<String, Quantity> quantities, Map<String, String> words) {
    public ChosenGivens {
        quantities = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(quantities));
        words = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(words));
    }

    /**
     * Reads {@code Vs=24V}, {@code order=serpentine}; a number without unit is in the given's own.
     *
     * @param typed value by name
     * @throws DiagnosticException with every name or value that does not fit
     */
    public static ChosenGivens read(ProblemTemplate template, Map<String, String> typed) {
        Map<String, Quantity> quantities = new LinkedHashMap<>();
        Map<String, String> words = new LinkedHashMap<>();
        List<Diagnostic> faults = new ArrayList<>();
        typed.forEach((name, value) -> {
            Place place = Place.inFile(name + "=" + value);
            Unit unit = unit(template, name);
            if (isFixed(template, name)) {
                faults.add(Diagnostic.error(
                        place,
                        name + " is fixed: the second route does not take it from here, so that another"
                                + " value could not be proven",
                        "another given",
                        "leave " + name + " out"));
            } else if (unit != null) {
                quantity(place, name, value, unit, quantities, faults);
            } else {
                word(template, place, name, value, words, faults);
            }
        });
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults);
        }
        return new ChosenGivens(quantities, words);
    }

    /** Whether nothing is left to draw. */
    boolean coverAll(ProblemTemplate template) {
        return template.givens().stream()
                .allMatch(given -> quantities.containsKey(given.name()) || words.containsKey(given.name()));
    }

    /** The same givens with the chosen ones in the place of theirs. */
    Values putInto(Values givens) {
        Map<String, Quantity> allQuantities = new LinkedHashMap<>(givens.quantities());
        allQuantities.putAll(quantities);
        Map<String, String> allWords = new LinkedHashMap<>(givens.words());
        allWords.putAll(words);
        return Values.of(allQuantities, allWords);
    }

    /** A constant of the steps alone; the models know theirs from elsewhere, such as a handbook table. */
    private static boolean isFixed(ProblemTemplate template, String name) {
        return template.constants().stream()
                        .anyMatch(constant -> constant.name().equals(name))
                && !UsedNames.bySecondRoute(template).contains(name);
    }

    private static Unit unit(ProblemTemplate template, String name) {
        for (Given given : template.givens()) {
            if (given instanceof QuantityGiven quantity && given.name().equals(name)) {
                return quantity.unit();
            }
        }
        for (Constant constant : template.constants()) {
            if (constant.name().equals(name)) {
                return constant.unit();
            }
        }
        return null;
    }

    private static void quantity(
            Place place,
            String name,
            String value,
            Unit unit,
            Map<String, Quantity> quantities,
            List<Diagnostic> faults) {
        String inUnit = unit.symbol().isEmpty() ? "a number" : "a number with a unit such as " + unit.symbol();
        Reading reading = QuantityReader.read(value, unit);
        if (reading instanceof Reading.Ambiguous ambiguous) {
            faults.add(Diagnostic.error(
                    place,
                    "\"" + value + "\" can be read as " + String.join(" or ", ambiguous.meanings(Languages.ENGLISH)),
                    inUnit + " that can be read in one way only",
                    "write the value of " + name + " without group separators"));
        } else if (reading instanceof Reading.Unreadable unreadable) {
            faults.add(Diagnostic.error(
                    place,
                    "\"" + value + "\" is not a value: " + unreadable.problem(Languages.ENGLISH),
                    inUnit,
                    "write it like " + name + "=10" + unit.symbol()));
        } else if (reading instanceof Reading.Value read) {
            if (read.unit().isPresent() && !read.unit().get().dimension().equals(unit.dimension())) {
                faults.add(Diagnostic.error(
                        place,
                        read.unit().get().symbol() + " is not a unit of " + name,
                        inUnit,
                        "write it like " + name + "=10" + unit.symbol()));
            } else {
                quantities.put(name, new Quantity(read.si(unit), unit.dimension()));
            }
        }
    }

    private static void word(
            ProblemTemplate template,
            Place place,
            String name,
            String value,
            Map<String, String> words,
            List<Diagnostic> faults) {
        for (Given given : template.givens()) {
            if (given instanceof WordGiven word && given.name().equals(name)) {
                if (word.values().contains(value)) {
                    words.put(name, value);
                } else {
                    faults.add(Diagnostic.error(
                            place,
                            "\"" + value + "\" is not one of the words for " + name,
                            String.join(" or ", word.values()),
                            "choose one of these words"));
                }
                return;
            }
        }
        faults.add(Diagnostic.error(
                place,
                template.name() + " has no given " + name,
                "one of " + names(template),
                "choose one of these names; capitals matter"));
    }

    private static String names(ProblemTemplate template) {
        List<String> names = new ArrayList<>();
        template.givens().forEach(given -> names.add(given.name()));
        template.constants().forEach(constant -> names.add(constant.name()));
        return String.join(", ", names);
    }
}
