package ampersheet.figure;

import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** Which skill is met in which week: a row for each skill, a column for each week. */
public final class TimetableFigure {
    private static final double COLUMN = 56;
    /** Of many weeks. */
    private static final double NARROW = 30;

    private static final double GAP = 12;
    private static final double HALF = 7;

    private TimetableFigure() {}

    /** Where the names of the skills stand. */
    public enum Names {
        BESIDE(26, 0.5 * 26, 8),
        /** For narrow screens. */
        ABOVE(46, 35, 5);

        private final double pitch;
        private final double first;
        private final int few;

        Names(double pitch, double first, int few) {
            this.pitch = pitch;
            this.first = first;
            this.few = few;
        }

        /** Weeks above whose columns there is room for more than a number. */
        public int few() {
            return few;
        }

        private double y(int row) {
            return first + pitch * row;
        }
    }

    /**
     * A skill.
     *
     * @param weeks in which it is met, from 1; it enters in the first
     */
    public record Row(String name, List<Integer> weeks) {
        public Row {
            weeks = List.copyOf(weeks);
        }
    }

    /**
     * @param weeks what stands above the columns; of more than {@linkplain Names#few a few} a number each
     * @throws IllegalArgumentException if there is no row or no week
     */
    public static Figure draw(
            String title, List<String> weeks, List<Row> rows, Names names, String idPrefix, Language language) {
        if (rows.isEmpty() || weeks.isEmpty()) {
            throw new IllegalArgumentException(
                    "a timetable of " + rows.size() + " rows and " + weeks.size() + " weeks");
        }
        Drawing drawing = new Drawing();
        double column = weeks.size() > names.few() ? NARROW : COLUMN;
        for (int week = 0; week < weeks.size(); week++) {
            words(drawing, "weeks", weeks.get(week), column * (week + 0.5), -HALF, Lettering.Anchor.MIDDLE);
        }
        for (int row = 0; row < rows.size(); row++) {
            double y = names.y(row);
            if (names == Names.ABOVE) {
                words(drawing, "names", rows.get(row).name(), 0, y - HALF - GAP / 2, Lettering.Anchor.START);
            } else {
                words(drawing, "names", rows.get(row).name(), -GAP, y + 4, Lettering.Anchor.END);
            }
            met(drawing, rows.get(row).weeks(), y, column);
        }
        double under = names.y(rows.size()) + Names.BESIDE.pitch / 2;
        square(drawing, HALF, under);
        words(drawing, "names", language.say("figure.timetable.enters"), HALF + GAP, under + 4, Lettering.Anchor.START);
        drawing.circle("returns", Stroke.LINE, new Point(HALF + 2 * COLUMN, under), HALF);
        words(
                drawing,
                "names",
                language.say("figure.timetable.returns"),
                HALF + 2 * COLUMN + GAP,
                under + 4,
                Lettering.Anchor.START);
        String summary = language.say(
                "figure.timetable.summary",
                "skills",
                language.count("figure.timetable.skills", rows.size()),
                "weeks",
                language.count("figure.timetable.weeks", weeks.size()));
        return new Figure(
                drawing.picture(title, summary, idPrefix), title, summary, table(weeks, rows, language), List.of());
    }

    private static void met(Drawing drawing, List<Integer> weeks, double y, double column) {
        for (int i = 0; i < weeks.size(); i++) {
            double x = column * (weeks.get(i) - 0.5);
            if (i == 0) {
                square(drawing, x, y);
            } else {
                drawing.line(
                        "returns",
                        Stroke.FINE,
                        new Point(column * (weeks.get(i - 1) - 0.5) + HALF, y),
                        new Point(x - HALF, y));
                drawing.circle("returns", Stroke.LINE, new Point(x, y), HALF);
            }
        }
    }

    private static void square(Drawing drawing, double x, double y) {
        drawing.filled(
                "enters",
                new Point(x - HALF, y - HALF),
                new Point(x + HALF, y - HALF),
                new Point(x + HALF, y + HALF),
                new Point(x - HALF, y + HALF));
    }

    private static void words(Drawing drawing, String part, String text, double x, double y, Lettering.Anchor anchor) {
        drawing.add(part, new Shape.Words(Lettering.plain(text, Lettering.SMALL), new Point(x, y), anchor, false));
    }

    private static Figure.Table table(List<String> weeks, List<Row> rows, Language language) {
        List<String> head = new ArrayList<>(List.of(language.say("figure.timetable.head")));
        head.addAll(weeks);
        List<List<String>> lines = new ArrayList<>();
        for (Row row : rows) {
            List<String> line = new ArrayList<>(List.of(row.name()));
            TreeSet<Integer> met = new TreeSet<>(row.weeks());
            for (int week = 1; week <= weeks.size(); week++) {
                line.add(
                        !met.contains(week)
                                ? ""
                                : language.say(
                                        met.first() == week ? "figure.timetable.enters" : "figure.timetable.returns"));
            }
            lines.add(line);
        }
        return new Figure.Table(head, lines);
    }
}
