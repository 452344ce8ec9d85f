package ampersheet.template;

import ampersheet.circuit.OperatingPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PlacedPart;
import ampersheet.language.Language;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * What the trade buys, builds and runs: outside it a problem may be sound arithmetic about a thing nobody has.
 *
 * @param id in small letters with hyphens
 * @param meaning of the quantity, a noun phrase
 * @param unit in which the limit is told
 * @param least SI, ends included
 * @param most SI, ends included
 * @param among if not empty, the only values there are; SI
 * @param series if present, the value is a member of it
 * @param parts the measure of each kind of part that the limit holds for in every solved circuit, without being named:
 *     {@code current}, {@code power} or {@code across}
 * @param source a published one, or that it is common practice without source
 */
public record TradeLimit(
        String id,
        String meaning,
        Unit unit,
        OptionalDouble least,
        OptionalDouble most,
        List<Double> among,
        Optional<PreferredSeries> series,
        Map<PartKind, String> parts,
        String source) {
    private static final int FIGURES = 4;
    /** Room for the last bits of a worked value. */
    private static final double SAME = 1e-9;

    public TradeLimit {
        among = List.copyOf(among);
        parts = Collections.unmodifiableMap(new TreeMap<>(parts));
    }

    /** @param si value in coherent SI units */
    public boolean allows(double si) {
        double room = SAME * Math.abs(si);
        return (least.isEmpty() || si >= least.getAsDouble() - room)
                && (most.isEmpty() || si <= most.getAsDouble() + room)
                && (among.isEmpty() || among.stream().anyMatch(one -> Math.abs(si - one) <= SAME * Math.abs(one)))
                && (series.isEmpty() || series.get().contains(si));
    }

    /** What it limits of a part of a solved circuit, SI and without sign; empty for a part of another kind. */
    public OptionalDouble measured(PlacedPart part, OperatingPoint point) {
        String measure = parts.get(part.kind());
        if (measure == null) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Math.abs(
                switch (measure) {
                    case "current" -> point.current(part.name());
                    case "power" -> point.power(part.name());
                    default -> point.across(part.name());
                }));
    }

    /** What is allowed, such as {@code from 5 to 40}. */
    public String told(Language language) {
        if (!among.isEmpty()) {
            List<String> values = among.stream().map(one -> text(one, language)).toList();
            return language.say("problem.limit.one-of", "values", String.join(language.say("list.comma"), values));
        }
        String from = least.isPresent() ? text(least.getAsDouble(), language) : "";
        String to = most.isPresent() ? text(most.getAsDouble(), language) : "";
        String member = series.map(PreferredSeries::toString).orElse("");
        boolean ofSeries = series.isPresent();
        if (least.isPresent() && most.isPresent()) {
            return ofSeries
                    ? language.say("problem.limit.series-from-to", "series", member, "least", from, "most", to)
                    : language.say("problem.limit.from-to", "least", from, "most", to);
        }
        if (least.isPresent()) {
            return ofSeries
                    ? language.say("problem.limit.series-at-least", "series", member, "least", from)
                    : language.say("problem.limit.at-least", "least", from);
        }
        if (most.isPresent()) {
            return ofSeries
                    ? language.say("problem.limit.series-at-most", "series", member, "most", to)
                    : language.say("problem.limit.at-most", "most", to);
        }
        return ofSeries ? language.say("problem.limit.series", "series", member) : "";
    }

    /** The same as it goes into the version of a template: it is never read, and no language may change it. */
    String asFingerprinted() {
        if (!among.isEmpty()) {
            return "one of " + among.stream().map(this::fingerprinted).collect(Collectors.joining(", "));
        }
        String ends = least.isPresent() && most.isPresent()
                ? "from " + fingerprinted(least.getAsDouble()) + " to " + fingerprinted(most.getAsDouble())
                : least.isPresent()
                        ? "at least " + fingerprinted(least.getAsDouble())
                        : most.isPresent() ? "at most " + fingerprinted(most.getAsDouble()) : "";
        String member = series.map(of -> "a value of " + of).orElse("");
        return ends.isEmpty() ? member : member.isEmpty() ? ends : member + " " + ends;
    }

    private String fingerprinted(double si) {
        return QuantityWriter.POINT.plain(si, unit, FIGURES).text();
    }

    /** As printed, in the limit's unit; in words where there is no number. */
    public String text(double si, Language language) {
        return !Double.isFinite(si)
                ? language.say("problem.limit.no-number")
                : QuantityWriter.POINT.plain(si, unit, FIGURES).text();
    }
}
