package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.circuit.CopperWire;
import ampersheet.formula.Expression;
import ampersheet.formula.Step;
import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.PreferredSeries;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Unit;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.PreferredValues;
import ampersheet.sheet.Document.ReferenceTable;
import ampersheet.sheet.Document.Series;
import ampersheet.template.Premises;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Ask;
import ampersheet.template.ProblemTemplate.DesignAsk;
import ampersheet.template.ProblemTemplate.QuantityAsk;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What a learner looks values up in, so that a sheet can be solved from paper alone: each table once. */
public final class LookUpTables {
    private static final int WIRE_FIGURES = 3;
    private static final int OHM_FIGURES = 4;
    private static final Unit MILLIMETRE = Unit.parse("mm");
    private static final Unit SQUARE_MILLIMETRE = Unit.parse("mm^2");
    private static final Unit MILLIOHM = Unit.parse("mohm");

    private LookUpTables() {}

    /** The tables that these templates need, each once. */
    public static List<Block> of(Collection<ProblemTemplate> templates, DecimalMarker marker, Language language) {
        List<Block> blocks = new ArrayList<>();
        preferredValues(templates, marker).ifPresent(blocks::add);
        if (templates.stream().anyMatch(LookUpTables::needsWireGauges)) {
            blocks.add(wireGauges(marker, language));
        }
        return blocks;
    }

    /** The same, with the series that everybody knows even where no template takes a value from one. */
    public static List<Block> atHand(Collection<ProblemTemplate> templates, DecimalMarker marker, Language language) {
        Set<PreferredSeries> series = EnumSet.of(PreferredSeries.E12, PreferredSeries.E24);
        templates.forEach(template -> series.addAll(series(template)));
        List<Block> blocks = new ArrayList<>(List.of(preferredValues(series, marker)));
        if (templates.stream().anyMatch(LookUpTables::needsWireGauges)) {
            blocks.add(wireGauges(marker, language));
        }
        return blocks;
    }

    /** All series that one of the templates takes a value from; nothing if none does. */
    static Optional<PreferredValues> preferredValues(Collection<ProblemTemplate> templates, DecimalMarker marker) {
        Set<PreferredSeries> series = EnumSet.noneOf(PreferredSeries.class);
        templates.forEach(template -> series.addAll(series(template)));
        return series.isEmpty() ? Optional.empty() : Optional.of(preferredValues(series, marker));
    }

    static boolean needsWireGauges(ProblemTemplate template) {
        return TemplateSayings.tables(template).contains(Premises.Table.WIRE_GAUGES);
    }

    /** Every series that an answer or a step takes a value from. */
    static Set<PreferredSeries> series(ProblemTemplate template) {
        Set<PreferredSeries> series = EnumSet.noneOf(PreferredSeries.class);
        for (Ask ask : template.asks()) {
            if (ask instanceof QuantityAsk quantity
                    && quantity.acceptance() instanceof Acceptance.Preferred preferred) {
                series.add(preferred.series());
            } else if (ask instanceof DesignAsk design) {
                design.acceptance().series().ifPresent(series::add);
            }
        }
        for (Step step : template.working().steps()) {
            step.cases().forEach(one -> named(one.is(), series));
        }
        return series;
    }

    private static void named(Expression formula, Set<PreferredSeries> series) {
        if (formula instanceof Expression.Name name) {
            for (PreferredSeries one : PreferredSeries.values()) {
                if (one.name().equals(name.id())) {
                    series.add(one);
                }
            }
        }
        formula.parts().forEach(part -> named(part, series));
    }

    static PreferredValues preferredValues(Set<PreferredSeries> series, DecimalMarker marker) {
        return new PreferredValues(series.stream()
                .map(one -> new Series(one.name(), values(one, marker)))
                .toList());
    }

    /** As the standard prints them: two figures up to E24, three beyond. */
    private static List<String> values(PreferredSeries series, DecimalMarker marker) {
        int decimals =
                series.mantissas().size() <= PreferredSeries.E24.mantissas().size() ? 1 : 2;
        int scale = decimals == 1 ? 10 : 100;
        List<String> values = new ArrayList<>();
        for (double mantissa : series.mantissas()) {
            String digits = Long.toString(Math.round(mantissa * scale));
            values.add(digits.substring(0, 1) + marker.character() + digits.substring(1));
        }
        return values;
    }

    static ReferenceTable wireGauges(DecimalMarker marker, Language language) {
        QuantityWriter writer = new QuantityWriter(marker);
        List<List<String>> rows = new ArrayList<>();
        for (CopperWire.Gauge gauge : CopperWire.table()) {
            rows.add(List.of(
                    Integer.toString(gauge.number()),
                    number(gauge.diameter(), MILLIMETRE, WIRE_FIGURES, writer),
                    number(gauge.area(), SQUARE_MILLIMETRE, WIRE_FIGURES, writer),
                    number(gauge.ohmsPerMetre(), MILLIOHM, OHM_FIGURES, writer)));
        }
        return new ReferenceTable(
                language.say("sheet.wire.caption"),
                List.of(
                        language.say("sheet.wire.gauge"),
                        language.say("sheet.wire.diameter"),
                        language.say("sheet.wire.area"),
                        language.say("sheet.wire.resistance")),
                rows);
    }

    /** In this very unit, whatever prefix would suit the number. */
    private static String number(double si, Unit unit, int figures, QuantityWriter writer) {
        return writer.rounded(unit.fromSi(si), Unit.ONE, figures).number();
    }
}
