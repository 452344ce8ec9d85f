package ampersheet.figure;

import java.util.List;

/** Pictures of nothing, for tests of pages. */
public final class Pictures {
    private Pictures() {}

    /** Without shapes, so only for pages that take in the SVG. */
    public static Picture of(double width, double height, String svg) {
        return new Picture(
                "nothing-" + Integer.toHexString(svg.hashCode()),
                width,
                height,
                new Point(0, 0),
                List.of(),
                look -> svg);
    }
}
