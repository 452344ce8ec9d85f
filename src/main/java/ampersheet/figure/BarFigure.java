package ampersheet.figure;

import ampersheet.language.Language;
import java.util.List;

/** Counts or shares as bars, one below the other, each with its number at its end. */
public final class BarFigure {
    private static final double HALF_HEIGHT = 6.5;

    private BarFigure() {}

    /** @param value not negative; @param text the same as it is to be read */
    public record Bar(String name, double value, String text) {}

    /**
     * @param axis what is counted, as under the scale
     * @param named what the rows are, as head of the first column of the description
     * @param language of the description
     * @throws IllegalArgumentException if there is no bar, or one with a negative value
     */
    public static Figure draw(
            String title, String axis, String named, List<Bar> bars, String idPrefix, Language language) {
        return draw(title, axis, named, 1, bars, idPrefix, language);
    }

    /**
     * The same on a scale that reaches at least to a number.
     *
     * @throws IllegalArgumentException as for the other
     */
    public static Figure draw(
            String title, String axis, String named, double least, List<Bar> bars, String idPrefix, Language language) {
        double most = least;
        for (Bar bar : bars) {
            if (!(bar.value() >= 0)) {
                throw new IllegalArgumentException("a bar cannot show " + bar.value());
            }
            most = Math.max(most, bar.value());
        }
        RowChart chart = new RowChart(
                axis,
                most,
                (int) Math.min(10, most),
                bars.stream().map(Bar::name).toList());
        for (int row = 0; row < bars.size(); row++) {
            Bar bar = bars.get(row);
            double y = chart.y(row);
            double end = chart.x(bar.value());
            if (bar.value() > 0) {
                chart.drawing()
                        .filled(
                                "bar",
                                new Point(0, y - HALF_HEIGHT),
                                new Point(end, y - HALF_HEIGHT),
                                new Point(end, y + HALF_HEIGHT),
                                new Point(0, y + HALF_HEIGHT));
            }
            chart.text("values", bar.text(), end + 6, y, Lettering.Anchor.START);
        }
        String summary = language.count("figure.bars.summary", bars.size(), "axis", axis);
        return new Figure(
                chart.drawing().picture(title, summary, idPrefix),
                title,
                summary,
                new Figure.Table(
                        List.of(named, axis),
                        bars.stream()
                                .map(bar -> List.of(bar.name(), bar.text()))
                                .toList()),
                List.of());
    }
}
