package ampersheet.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The data of one SVG path, told from point to point in as few letters as it takes: a tile has hundreds of pixels. All
 * points are hundredths of a pixel already, so that no error adds up from one to the next. It is kept subpath by
 * subpath, so that what comes again and again can be told once.
 */
final class SvgPath {
    private final List<Subpath> subpaths = new ArrayList<>();
    /** What is drawn from the last start on. */
    private final StringBuilder body = new StringBuilder();
    /** What the last command was; numbers after it go on with it. */
    private char command;

    private long x;
    private long y;
    private long startX;
    private long startY;
    private boolean begun;
    /** Whether a line may go on from here, as it may not from a dot or a closed body. */
    private boolean open;

    /** From a start to an end, in hundredths of a pixel; all in {@code body} is told from the point before. */
    record Subpath(long startX, long startY, long endX, long endY, String body) {
        private static final Pattern STRAIGHT = Pattern.compile("([hv])-([0-9.]+)");

        /** One straight line is the same from its other end. */
        @SuppressWarnings("ArgumentSelectionDefectChecker") // the ends change places
        Subpath fromTheLeft() {
            Matcher straight = STRAIGHT.matcher(body);
            return straight.matches()
                    ? new Subpath(endX, endY, startX, startY, straight.group(1) + straight.group(2))
                    : this;
        }
    }

    /** An open line; where it begins at the end of the one before, it is one with it. */
    void line(List<Point> points, boolean mayGoOn) {
        Point first = points.get(0);
        if (!(mayGoOn && open && hundredths(first.x()) == x && hundredths(first.y()) == y)) {
            move(first);
        }
        points.subList(1, points.size()).forEach(this::lineTo);
        open = true;
    }

    /** Clockwise, whichever way its corners are told: bodies that overlap would else leave a hole. */
    void polygon(List<Point> corners) {
        boolean reversed = turning(corners) < 0;
        int n = corners.size();
        for (int i = 0; i < n; i++) {
            Point corner = corners.get(reversed ? n - 1 - i : i);
            if (i == 0) {
                move(corner);
            } else {
                lineTo(corner);
            }
        }
        close();
    }

    private static double turning(List<Point> corners) {
        double twiceTheArea = 0;
        for (int i = 0; i < corners.size(); i++) {
            Point a = corners.get(i);
            Point b = corners.get((i + 1) % corners.size());
            twiceTheArea += a.x() * b.y() - b.x() * a.y();
        }
        return twiceTheArea;
    }

    /** Two halves. */
    void circle(Point centre, double radius) {
        move(centre.plus(-radius, 0));
        long across = hundredths(2 * radius);
        for (long half : new long[] {across, -across}) {
            command('a');
            number(hundredths(radius));
            number(hundredths(radius));
            body.append(" 0 1 0");
            number(half);
            number(0);
        }
        close();
    }

    /** A line without length, which a round pen leaves as a dot. */
    void dot(Point centre) {
        move(centre);
        command('h');
        number(0);
    }

    void outline(List<Pen.Corner> corners) {
        for (int i = 0; i < corners.size(); i++) {
            if (i == 0) {
                move(corners.get(0).in());
            } else {
                lineTo(corners.get(i).in());
            }
            command('q');
            by(corners.get(i).at());
            by(corners.get(i).out());
            x = hundredths(corners.get(i).out().x());
            y = hundredths(corners.get(i).out().y());
        }
        close();
    }

    private void move(Point to) {
        end();
        startX = hundredths(to.x());
        startY = hundredths(to.y());
        x = startX;
        y = startY;
        begun = true;
        open = false;
        command = 'l'; // as further numbers would be understood
    }

    private void end() {
        if (begun) {
            subpaths.add(new Subpath(startX, startY, x, y, body.toString()));
            body.setLength(0);
            begun = false;
        }
    }

    private void lineTo(Point to) {
        long toX = hundredths(to.x());
        long toY = hundredths(to.y());
        if (toY == y) {
            command('h');
            number(toX - x);
        } else if (toX == x) {
            command('v');
            number(toY - y);
        } else {
            command('l');
            by(to);
        }
        x = toX;
        y = toY;
    }

    private void close() {
        body.append('z');
        x = startX;
        y = startY;
        open = false;
    }

    private void by(Point to) {
        number(hundredths(to.x()) - x);
        number(hundredths(to.y()) - y);
    }

    private void command(char next) {
        if (next != command) {
            body.append(next);
            command = next;
        }
    }

    private void number(long hundredths) {
        number(hundredths, body, body.length() == 0 || Character.isDigit(body.charAt(body.length() - 1)));
    }

    private static void number(long hundredths, StringBuilder text, boolean afterNumber) {
        if (afterNumber && hundredths >= 0) {
            text.append(' ');
        }
        text.append(Decimals.print(hundredths / 100.0));
    }

    private static long hundredths(double value) {
        return Math.round(value * 100);
    }

    /** In the order drawn. */
    List<Subpath> subpaths() {
        end();
        return List.copyOf(subpaths);
    }

    /** Each start is told from the end before; the first one is understood as from the corner of the picture. */
    static String data(List<Subpath> subpaths) {
        StringBuilder data = new StringBuilder();
        long x = 0;
        long y = 0;
        for (Subpath one : subpaths) {
            data.append('m');
            number(one.startX() - x, data, false);
            number(one.startY() - y, data, true);
            data.append(one.body());
            x = one.endX();
            y = one.endY();
        }
        return data.toString();
    }
}
