package ampersheet.figure;

import ampersheet.chain.DataPath;
import ampersheet.chain.Panel;
import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;

/** Draws a panel of tiles with ports, rotation, data path and return line. */
public final class ChainFigure {
    private static final double PAGE_HEIGHT = 700;
    /** What is enlarged for large print has fewer pixels on a page: those of US Letter, with its title below. */
    private static final double PAGE_HEIGHT_IF_NARROW = 575;

    private static final double WIDEST_PITCH = 28;
    /** Rather than draw pixels closer, tiles are left out, where they can be. */
    private static final double NARROWEST_PITCH = 10;

    private static final double NARROWEST_OF_ALL = 5;
    /** A narrow page is enlarged. */
    private static final double NARROWEST_IF_NARROW = 4;
    /** Rather than draw pixels closer, tiles of all rows are left out. */
    private static final double NARROWEST_BEFORE_LEAVING_OUT = 7;

    private static final double BESIDE_PITCH = 14;
    private static final double BESIDE_IF_NARROW = 22;

    private ChainFigure() {}

    /** A pixel that is asked about or pointed at, in panel columns and rows from 0, with a short label. */
    public record Mark(int x, int y, String label) {}

    /**
     * The numbers of pixels are not printed, so that the figure gives no answer away; the path of the data is. In a
     * long single row of tiles those in the middle are left out.
     *
     * @param setting with a width that is not exceeded where pixels can be told apart
     * @throws IllegalArgumentException if the data does not pass through every tile, or a mark lies on no pixel
     */
    public static Figure draw(String title, Panel panel, List<Mark> marks, Figure.Setting setting) {
        DataPath.Outcome.Traced path = trace(panel);
        for (Mark mark : marks) {
            if (path.turn(mark.x(), mark.y()) < 0) {
                throw new IllegalArgumentException(
                        "the mark at column " + mark.x() + ", row " + mark.y() + " is on no pixel");
            }
        }
        ChainWords words = new ChainWords(panel, path, marks, setting.language());
        return new Figure(
                layOut(panel, path, marks, setting.widest(), setting.language())
                        .picture(title, words.summary(), setting.idPrefix()),
                title,
                words.summary(),
                words.table(),
                words.walk());
    }

    static DataPath.Outcome.Traced trace(Panel panel) {
        DataPath.Outcome outcome = DataPath.trace(panel);
        if (outcome instanceof DataPath.Outcome.Traced traced) {
            return traced;
        }
        throw new IllegalArgumentException("a panel that the data does not pass through cannot be drawn: " + outcome);
    }

    /**
     * The widest distance between pixels that fits the page; to allow it the controller moves, then tiles are left out,
     * then the rest of a row goes on in a line below.
     */
    static Drawing layOut(
            Panel panel, DataPath.Outcome.Traced path, List<Mark> marks, double widest, Language language) {
        List<Way> ways = ways(panel, widest);
        Subject subject = new Subject(panel, path, marks, language);
        for (Way way : ways) {
            double pitch = WIDEST_PITCH;
            boolean outlineOnly = true;
            while (pitch >= way.narrowest) {
                Drawing drawing = way.draw(subject, pitch, outlineOnly);
                Box bounds = drawing.bounds().grown(4);
                double across = (bounds.width() - widest) / pixelsAcross(panel, way.elided);
                double down = (bounds.height() - tallest(widest)) / pixelsDown(panel);
                boolean fits = across <= 0 && down <= 0;
                if (fits && !outlineOnly) {
                    return widest < Figure.PAGE_WIDTH ? wider(drawing, way, subject, pitch, widest) : drawing;
                }
                outlineOnly = !fits;
                double closer = fits ? 0 : Math.max(1, Math.floor(Math.max(across, down)));
                pitch = pitch > way.narrowest ? Math.max(way.narrowest, pitch - closer) : pitch - closer;
            }
        }
        Way last = ways.get(ways.size() - 1);
        return last.draw(subject, last.narrowest, false);
    }

    private static double tallest(double widest) {
        return widest < Figure.PAGE_WIDTH ? PAGE_HEIGHT_IF_NARROW : PAGE_HEIGHT;
    }

    /** With pixels farther apart, as far as that fits. */
    private static Drawing wider(Drawing drawing, Way way, Subject subject, double pitch, double widest) {
        Drawing best = drawing;
        for (double wider = pitch + 1; wider <= WIDEST_PITCH; wider++) {
            Drawing next = way.draw(subject, wider, false);
            Box bounds = next.bounds().grown(4);
            if (bounds.width() > widest || bounds.height() > tallest(widest)) {
                break;
            }
            best = next;
        }
        return best;
    }

    /** What is drawn, in whatever way. */
    private record Subject(Panel panel, DataPath.Outcome.Traced path, List<Mark> marks, Language language) {}

    /**
     * A way to draw a panel that is too wide.
     *
     * @param elided whether tiles in the middle are left out
     * @param tilesInLine after so many tiles a single row goes on in a line below
     * @param narrowest distance between pixels that is tried before the next way
     * @param beside down to this distance the controller stands beside its tile; closer together it needs the width
     */
    record Way(boolean elided, int tilesInLine, double narrowest, double beside) {
        Drawing draw(Subject subject, double pitch, boolean outlineOnly) {
            return new ChainDrawing(
                            new ChainLayout(subject.panel, subject.path, subject.marks, this, pitch),
                            outlineOnly,
                            subject.language)
                    .drawing();
        }

        boolean controllerAbove(Panel panel, double pitch) {
            return pitch < beside || tilesInLine < panel.places().size();
        }
    }

    private static List<Way> ways(Panel panel, double widest) {
        int tiles = panel.places().size();
        boolean oneRow = panel.places().stream()
                .allMatch(p -> p.row() == panel.places().get(0).row());
        boolean canElide = oneRow && tiles > 4;
        boolean narrow = widest < Figure.PAGE_WIDTH;
        double beside = narrow ? BESIDE_IF_NARROW : BESIDE_PITCH;
        double whole = oneRow && (canElide || narrow)
                ? NARROWEST_PITCH
                : narrow ? NARROWEST_BEFORE_LEAVING_OUT : NARROWEST_OF_ALL;
        List<Way> ways = new ArrayList<>(List.of(new Way(false, tiles, whole, beside)));
        if (canElide) {
            ways.add(new Way(true, tiles, narrow ? NARROWEST_PITCH : NARROWEST_OF_ALL, beside));
        }
        if (oneRow && narrow) {
            ways.add(new Way(canElide, 2, NARROWEST_PITCH, beside));
            ways.add(new Way(canElide, 1, NARROWEST_IF_NARROW, beside));
        } else if (narrow) {
            ways.add(new Way(canLeaveColumnsOut(panel), tiles, NARROWEST_IF_NARROW, beside));
        }
        return ways;
    }

    /** Unless the data goes round a tile that is turned apart from its row. */
    private static boolean canLeaveColumnsOut(Panel panel) {
        boolean alike = panel.places().stream()
                .allMatch(place -> panel.places().stream()
                        .filter(other -> other.row() == place.row())
                        .allMatch(other -> other.quarterTurns() == place.quarterTurns()));
        return alike
                && panel.places().stream()
                                .mapToInt(Panel.Place::column)
                                .distinct()
                                .count()
                        > 3;
    }

    private static int pixelsAcross(Panel panel, boolean elided) {
        int tiles = panel.places().stream().mapToInt(Panel.Place::column).max().orElse(0) + 1;
        return (elided ? Math.min(3, tiles) : tiles) * panel.tile().columns();
    }

    private static int pixelsDown(Panel panel) {
        return (panel.places().stream().mapToInt(Panel.Place::row).max().orElse(0) + 1)
                * panel.tile().rows();
    }
}
