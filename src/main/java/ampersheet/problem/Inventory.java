package ampersheet.problem;

import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.formula.Expression;
import ampersheet.model.CircuitPlan;
import ampersheet.model.CircuitPlan.PlannedPart;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.QuantityWriter;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What a workshop has in its bins, and what its meters can tell. A kind of part of which it lists none is taken as at
 * hand, whatever its value.
 *
 * @param file as its reader knows it
 * @param written the file's text
 * @param fingerprint of what is listed, however it is written
 */
public record Inventory(String file, String written, List<Bin> bins, List<Meter> meters, String fingerprint) {
    /** Two values this near are one. */
    private static final double SAME = 1e-9;

    public Inventory {
        bins = List.copyOf(bins);
        meters = List.copyOf(meters);
    }

    /** The kinds of parts that can be listed. */
    public enum Kind {
        RESISTOR("resistor", PartValue.OHMS, Set.of(PartKind.RESISTOR, PartKind.LOAD)),
        CAPACITOR("capacitor", PartValue.FARADS, Set.of(PartKind.CAPACITOR)),
        TRIMPOT("trimpot", PartValue.OHMS, Set.of(PartKind.TRIMPOT)),
        LED("led", PartValue.VOLTS, Set.of(PartKind.LED)),
        ZENER("zener", PartValue.VOLTS, Set.of(PartKind.ZENER));

        private final String word;
        private final PartValue value;
        private final Set<PartKind> drawnAs;

        Kind(String word, PartValue value, Set<PartKind> drawnAs) {
            this.word = word;
            this.value = value;
            this.drawnAs = drawnAs;
        }

        /** The part with another value. */
        PlacedPart scaled(PlacedPart part, double factor) {
            Map<PartValue, Double> values = new TreeMap<>(part.values());
            values.computeIfPresent(value, (name, known) -> known * factor);
            return new PlacedPart(part.kind(), part.name(), part.ends(), values, part.words());
        }

        public String word() {
            return word;
        }

        /** By which its bins are told apart. */
        public PartValue value() {
            return value;
        }

        public Dimension dimension() {
            return value.dimension();
        }
    }

    /**
     * Parts of one value.
     *
     * @param value in SI units
     * @param tolerance share of the value to both sides
     * @param rating watts; empty if it is not stated
     * @param place of its line
     */
    public record Bin(Kind kind, double value, double tolerance, OptionalDouble rating, int count, Place place) {}

    /**
     * What a meter may be off: a share of what it reads, and an amount.
     *
     * @param quantity what it measures
     * @param amount in SI units
     * @param step what its last digit is worth, in SI units
     */
    public record Meter(Dimension quantity, double share, double amount, double step) {
        public double error(double reading) {
            return share * Math.abs(reading) + amount;
        }
    }

    public Optional<Meter> meter(Dimension quantity) {
        return meters.stream()
                .filter(meter -> meter.quantity().equals(quantity))
                .findFirst();
    }

    /** The kind whose bins a drawn part comes from; empty if the workshop lists none of it. */
    public Optional<Kind> limited(PartKind drawn) {
        for (Kind kind : Kind.values()) {
            if (kind.drawnAs.contains(drawn) && bins.stream().anyMatch(bin -> bin.kind() == kind)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }

    Optional<Bin> bin(Kind kind, double value) {
        return bins.stream()
                .filter(bin -> bin.kind() == kind && Math.abs(bin.value() - value) <= SAME * bin.value())
                .findFirst();
    }

    static double value(Kind kind, PlacedPart part) {
        return part.values().get(kind.value);
    }

    /**
     * The template, with givens that are values of parts drawn only from the bins.
     *
     * @throws DiagnosticException if the bins hold none of the values a part may have, or the template works the value
     *     of a part by a formula, so that no one part is it
     */
    public ProblemTemplate limit(ProblemTemplate template) {
        List<Diagnostic> faults = new ArrayList<>();
        List<Given> givens = new ArrayList<>(template.givens());
        for (PlannedPart part :
                template.model(CircuitPlan.class).map(CircuitPlan::parts).orElse(List.of())) {
            Optional<Kind> kind = limited(part.kind());
            Expression value = kind.map(known -> part.values().get(known.value)).orElse(null);
            if (value == null) {
                continue;
            }
            if (!(value instanceof Expression.Name) && !(value instanceof Expression.Constant)) {
                faults.add(Diagnostic.error(
                        Place.inFile(file),
                        template.name() + " draws " + part.name() + " as one part, but its value is worked from others",
                        "a problem in which each part drawn is one from a bin",
                        "Leave " + template.name() + " out of this plan, or issue it without a parts list."));
            } else if (value instanceof Expression.Name name) {
                givens.replaceAll(given -> given.name().equals(name.id()) && given instanceof QuantityGiven quantity
                        ? limit(template, part, kind.get(), quantity, faults)
                        : given);
            }
        }
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults);
        }
        return template.withGivens(givens);
    }

    private QuantityGiven limit(
            ProblemTemplate template, PlannedPart part, Kind kind, QuantityGiven given, List<Diagnostic> faults) {
        List<Double> held = given.values().stream()
                .filter(value -> bin(kind, value).isPresent())
                .toList();
        if (held.isEmpty()) {
            Set<String> bins = new TreeSet<>();
            given.values().stream()
                    .limit(6)
                    .forEach(value -> bins.add(
                            QuantityWriter.POINT.plain(value, given.unit(), 4).text()));
            faults.add(Diagnostic.error(
                    Place.inFile(file),
                    "no bin holds a " + kind.word + " that can be " + part.name() + " of " + template.name(),
                    String.join(", ", bins) + (given.values().size() > 6 ? " …" : ""),
                    "List one of these, or leave the template out of this plan."));
            return given;
        }
        return new QuantityGiven(given.name(), given.meaning(), given.symbol(), given.unit(), held, given.tolerance());
    }
}
