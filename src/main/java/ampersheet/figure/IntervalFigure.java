package ampersheet.figure;

import ampersheet.language.Language;
import java.util.List;

/** Estimates as dots, each on a line from the low to the high end of its interval. */
public final class IntervalFigure {
    private static final double CAP = 4;

    private IntervalFigure() {}

    /** From 0 up to the end of the scale. */
    public record Row(String name, double low, double value, double high, String text) {}

    /**
     * @param axis what is estimated, as under the scale
     * @param named what the rows are, as head of the first column of the description
     * @param to end of the scale
     * @param language of the description
     * @throws IllegalArgumentException if there is no row, or one that leaves the scale
     */
    public static Figure draw(
            String title, String axis, String named, double to, List<Row> rows, String idPrefix, Language language) {
        RowChart chart = new RowChart(axis, to, 10, rows.stream().map(Row::name).toList());
        Drawing drawing = chart.drawing();
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            if (!(0 <= row.low() && row.low() <= row.value() && row.value() <= row.high() && row.high() <= to)) {
                throw new IllegalArgumentException("an interval must lie on the scale with its value inside: " + row);
            }
            double y = chart.y(i);
            drawing.line("interval", Stroke.LINE, new Point(chart.x(row.low()), y), new Point(chart.x(row.high()), y));
            for (double end : new double[] {row.low(), row.high()}) {
                drawing.line(
                        "interval", Stroke.LINE, new Point(chart.x(end), y - CAP), new Point(chart.x(end), y + CAP));
            }
            drawing.dot("value", new Point(chart.x(row.value()), y), CAP);
            chart.text("values", row.text(), RowChart.WIDTH + 12, y, Lettering.Anchor.START);
        }
        String summary = language.count("figure.intervals.summary", rows.size(), "axis", axis);
        List<List<String>> cells = rows.stream()
                .map(row -> List.of(
                        row.name(),
                        row.text(),
                        language.say(
                                "figure.intervals.range",
                                "low",
                                chart.scale().printBetween(row.low()),
                                "high",
                                chart.scale().printBetween(row.high()))))
                .toList();
        return new Figure(
                drawing.picture(title, summary, idPrefix),
                title,
                summary,
                new Figure.Table(List.of(named, axis, language.say("figure.intervals.head")), cells),
                List.of());
    }
}
