package ampersheet.figure;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.Schematic;
import ampersheet.figure.LabelPlacer.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToIntFunction;

/**
 * Moves the columns of a schematic closer together, a little at a time and where it costs least, until the drawing is
 * narrow enough; where text then lacks room beside its part, rows move apart.
 */
final class Narrowing {
    private static final double CLOSER = 6;
    private static final double APART = 12;
    /** Of two columns. */
    private static final double CLOSEST = 14;

    /** Draws the same schematic at any spacing. */
    interface Pen {
        /** @param beside on which side of a part its label goes first, where not as usual */
        CircuitDrawing draw(Spacing spacing, Map<String, Side> beside);
    }

    private final Pen pen;
    private final double widest;
    private final List<Integer> columns;
    private final List<Integer> rows;

    Narrowing(Schematic schematic, Pen pen, double widest) {
        this.pen = pen;
        this.widest = widest;
        this.columns = lines(schematic, GridPoint::x);
        this.rows = lines(schematic, GridPoint::y);
    }

    private static List<Integer> lines(Schematic schematic, ToIntFunction<GridPoint> along) {
        TreeSet<Integer> lines = new TreeSet<>();
        schematic.parts().forEach(part -> part.ends().values().forEach(end -> lines.add(along.applyAsInt(end))));
        return List.copyOf(lines);
    }

    /** As narrow as wanted, or as far as it goes without text or bodies in each other's way. */
    CircuitDrawing of(Spacing start) {
        CircuitDrawing usual = pen.draw(start, Map.of());
        CircuitDrawing best = closer(usual);
        if (best.drawing().width() > widest || best.faults() > 0) {
            Map<String, Side> both = new TreeMap<>(usual.inwards(false));
            both.putAll(usual.inwards(true));
            for (Map<String, Side> beside : List.of(usual.inwards(false), usual.inwards(true), both)) {
                CircuitDrawing other = closer(pen.draw(start, beside));
                if (misfit(other) < misfit(best)) {
                    best = other;
                }
            }
        }
        return best;
    }

    private double misfit(CircuitDrawing drawing) {
        return Math.max(0, drawing.drawing().width() - widest) + cost(drawing);
    }

    private CircuitDrawing closer(CircuitDrawing start) {
        CircuitDrawing best = roomier(start);
        while (best.drawing().width() > widest) {
            CircuitDrawing now = best;
            List<Spacing> closer = closer(now.spacing());
            CircuitDrawing next = cheapest(closer, now);
            if (next == null || cost(next) > cost(now)) {
                next = cheaper(
                        next,
                        cheapest(
                                closer.stream()
                                        .flatMap(spacing -> taller(spacing).stream())
                                        .toList(),
                                now));
                next = cheaper(next, turned(now));
            }
            if (next == null || next.faults() > best.faults()) {
                break;
            }
            best = next;
        }
        return best;
    }

    /** With rows apart as long as that takes faults away. */
    private CircuitDrawing roomier(CircuitDrawing start) {
        CircuitDrawing best = start;
        boolean better = true;
        while (best.faults() > 0 && better) {
            CircuitDrawing next = best;
            for (Spacing taller : taller(best.spacing())) {
                next = cheaper(next, pen.draw(taller, best.beside()));
            }
            better = next.faults() < best.faults();
            best = better ? next : best;
        }
        return best;
    }

    private static CircuitDrawing cheaper(CircuitDrawing one, CircuitDrawing other) {
        return one == null || other != null && cost(other) < cost(one) ? other : one;
    }

    /** With an outermost label on another side of its part; null where that makes nothing narrower. */
    private CircuitDrawing turned(CircuitDrawing now) {
        CircuitDrawing best = null;
        for (String part : now.outermost()) {
            for (Side side : Side.values()) {
                Map<String, Side> beside = new TreeMap<>(now.beside());
                beside.put(part, side);
                best = cheaper(best, narrower(pen.draw(now.spacing(), beside), now));
                for (Spacing taller : taller(now.spacing())) {
                    best = cheaper(best, narrower(pen.draw(taller, beside), now));
                }
            }
        }
        return best;
    }

    /** The wider a gap, the sooner it is made narrower. */
    private List<Spacing> closer(Spacing spacing) {
        List<Integer> gaps = new ArrayList<>();
        for (int i = 1; i < columns.size(); i++) {
            if (width(spacing, i) - CLOSER >= CLOSEST) {
                gaps.add(i);
            }
        }
        gaps.sort((one, other) -> Double.compare(width(spacing, other), width(spacing, one)));
        return gaps.stream()
                .map(i -> {
                    Spacing closer = spacing.copy();
                    closer.widen(columns.get(i - 1), columns.get(i), -CLOSER);
                    return closer;
                })
                .toList();
    }

    private double width(Spacing spacing, int gap) {
        return spacing.between(columns.get(gap - 1), columns.get(gap));
    }

    private List<Spacing> taller(Spacing spacing) {
        List<Spacing> taller = new ArrayList<>();
        for (int i = 1; i < rows.size(); i++) {
            Spacing apart = spacing.copy();
            apart.heighten(rows.get(i - 1), rows.get(i), APART);
            taller.add(apart);
        }
        return taller;
    }

    /** Of those that are narrower than now. */
    private CircuitDrawing cheapest(List<Spacing> spacings, CircuitDrawing now) {
        CircuitDrawing best = null;
        for (Spacing spacing : spacings) {
            best = cheaper(best, narrower(pen.draw(spacing, now.beside()), now));
        }
        return best;
    }

    private static CircuitDrawing narrower(CircuitDrawing drawing, CircuitDrawing now) {
        return drawing.drawing().width() < now.drawing().width() ? drawing : null;
    }

    /** Faults weigh far more than parts that would look better with more room. */
    static int cost(CircuitDrawing drawing) {
        return 100 * drawing.faults() + drawing.cramped().size();
    }
}
