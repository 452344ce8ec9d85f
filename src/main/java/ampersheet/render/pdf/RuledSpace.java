package ampersheet.render.pdf;

import ampersheet.figure.Point;
import ampersheet.figure.Stroke;
import java.util.List;

/** Lines to write on; in millimetres. */
record RuledSpace(double width, double height) implements OnPaper {
    /** Room for a line of handwriting with a fraction's bar in it. */
    private static final double APART = 9;

    private static final Stroke LINE = new Stroke(0.35);

    @Override
    public void draw(PaperPen pen) {
        for (double y = APART; y <= height; y += APART) {
            pen.line(List.of(new Point(0, y), new Point(width, y)), LINE);
        }
    }
}
