package ampersheet.figure;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What a pen leaves on the page, piece by piece, however the pieces were joined; and how often each. */
class Ink implements Pen {
    private final Map<String, Integer> pieces = new TreeMap<>();

    Map<String, Integer> pieces() {
        return pieces;
    }

    private void piece(String piece) {
        pieces.merge(piece, 1, Integer::sum);
    }

    private void between(Point a, Point b, String look) {
        String one = a.x() + "," + a.y();
        String other = b.x() + "," + b.y();
        piece((one.compareTo(other) <= 0 ? one + " to " + other : other + " to " + one) + look);
    }

    @Override
    public void line(List<Point> points, Stroke stroke) {
        for (int i = 1; i < points.size(); i++) {
            between(points.get(i - 1), points.get(i), " " + stroke);
        }
    }

    @Override
    public void polygon(List<Point> corners, Stroke stroke, boolean filled) {
        for (int i = 0; i < corners.size(); i++) {
            between(corners.get(i), corners.get((i + 1) % corners.size()), filled ? " filled" : " " + stroke);
        }
    }

    @Override
    public void circle(Point centre, double radius, Stroke stroke, boolean filled) {
        piece("circle " + centre + " " + radius + (filled ? " filled" : " " + stroke));
    }

    @Override
    public void outline(List<Corner> corners, Stroke stroke) {
        for (int i = 0; i < corners.size(); i++) {
            Corner corner = corners.get(i);
            piece(corner + " " + stroke);
            between(corner.out(), corners.get((i + 1) % corners.size()).in(), " " + stroke);
        }
    }

    @Override
    public void words(Lettering lettering, Point baseline, Lettering.Anchor anchor) {
        piece(lettering.spans() + " " + lettering.size() + " " + lettering.bold() + " " + baseline + " " + anchor);
    }
}
