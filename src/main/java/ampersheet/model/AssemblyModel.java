package ampersheet.model;

import static ampersheet.model.Argument.ARM;
import static ampersheet.model.Argument.PLACE;
import static ampersheet.model.Argument.SIDE;
import static ampersheet.model.Argument.TILE;

import ampersheet.chain.Assembly;
import ampersheet.chain.BranchedTiles;
import ampersheet.chain.MatingEdge;
import ampersheet.chain.PrismNet;
import ampersheet.chain.TileRow;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Elementary;
import java.util.List;
import java.util.function.Supplier;
import java.util.function.ToDoubleBiFunction;

/** Tiles put together with numbers. */
public final class AssemblyModel implements Model {
    static final List<Measure> MEASURES = List.of(
            edge(
                    "touched",
                    List.of(PLACE),
                    "place that lies on that place of the row where two plain sides meet",
                    AssemblyModel::touched),
            edge(
                    "safe_pairs",
                    List.of(),
                    "pairs of sides that may meet without a short",
                    (edge, asked) -> edge.safePairs()),
            edge(
                    "fault",
                    List.of(SIDE, SIDE),
                    "gravest fault where these sides of two tiles meet, from 1 for a short to 5; 0 if the pair works",
                    AssemblyModel::fault),
            edge(
                    "working_pairs",
                    List.of(),
                    "pairs of sides that pass supply, ground and data without a fault",
                    (edge, asked) -> edge.workingPairs()),
            edge(
                    "harmful_pairs",
                    List.of(),
                    "pairs of sides with a short, a forced output or a tile fed through a data pin",
                    (edge, asked) -> edge.harmfulPairs()),
            edge(
                    "unmatched",
                    List.of(),
                    "contacts of a plain side that meet no partner on another plain side",
                    (edge, asked) -> edge.unmatched()),
            branches(
                    "arm_turn",
                    List.of(ARM, TILE),
                    Dimension.ONE,
                    "turn of a tile of an arm, the first tile's being 0",
                    AssemblyModel::armTurn),
            branches(
                    "crossings",
                    List.of(),
                    Dimension.ONE,
                    "times the data crosses from tile to tile until it is back in the first",
                    (branches, asked) -> branches.walk().size()),
            branches(
                    "way",
                    List.of(),
                    Dimension.LENGTH,
                    "way of the data from the centre of the first tile round all others and back",
                    (branches, asked) -> branches.way()),
            branches(
                    "open_sides",
                    List.of(),
                    Dimension.ONE,
                    "sides on which neither a tile nor the controller sits",
                    (branches, asked) -> branches.openSides()),
            branches(
                    "last_side",
                    List.of(),
                    Dimension.ONE,
                    "side of the first tile at which the data comes home last",
                    (branches, asked) -> branches.lastSide()),
            net(
                    "meets_tile",
                    List.of(TILE, SIDE),
                    "tile of which a side meets that side after folding",
                    (net, asked) -> net.met(place(asked)).tile()),
            net(
                    "meets_side",
                    List.of(TILE, SIDE),
                    "side, as it lies in the net, that meets that side after folding",
                    (net, asked) -> net.met(place(asked)).side()),
            net(
                    "closed_edges",
                    List.of(),
                    "edges that are open in the flat net and closed by folding",
                    (net, asked) -> net.closedEdges()),
            net(
                    "like_edges",
                    List.of(),
                    "edges of the solid where two plain or two mirrored sides meet",
                    (net, asked) -> net.likeEdges()),
            row(
                    "worst_edge",
                    "farthest the last edge can be from its place, each tile set against the one before",
                    (row, asked) -> row.worstEdge()),
            row(
                    "typical_edge",
                    "root mean square of how far that edge is from its place",
                    (row, asked) -> row.typicalEdge()),
            row(
                    "worst_gap_from_datum",
                    "widest gap or deepest overlap, each tile set from one datum",
                    (row, asked) -> row.worstGapFromDatum()));

    private final AssemblyPlan plan;
    private final Once<Assembly> assembly;
    private final Once<Assembly> drawn;

    AssemblyModel(AssemblyPlan plan, Values values) {
        this.plan = plan;
        this.assembly = new Once<>(() -> possible(() -> plan.put(values)));
        this.drawn = new Once<>(() -> possible(() -> plan.drawn(values)));
    }

    private static Assembly possible(Supplier<Assembly> put) {
        try {
            return put.get();
        } catch (IllegalArgumentException impossible) {
            throw new Unsolved(impossible.getMessage());
        }
    }

    private static Measure edge(
            String name, List<Argument> arguments, String meaning, ToDoubleBiFunction<MatingEdge, Arguments> reading) {
        return measure(ModelKind.EDGE, MatingEdge.class, name, arguments, Dimension.ONE, meaning, reading);
    }

    private static Measure branches(
            String name,
            List<Argument> arguments,
            Dimension dimension,
            String meaning,
            ToDoubleBiFunction<BranchedTiles, Arguments> reading) {
        return measure(ModelKind.BRANCHES, BranchedTiles.class, name, arguments, dimension, meaning, reading);
    }

    private static Measure net(
            String name, List<Argument> arguments, String meaning, ToDoubleBiFunction<PrismNet, Arguments> reading) {
        return measure(ModelKind.NET, PrismNet.class, name, arguments, Dimension.ONE, meaning, reading);
    }

    private static Measure row(String name, String meaning, ToDoubleBiFunction<TileRow, Arguments> reading) {
        return measure(ModelKind.ROW, TileRow.class, name, List.of(), Dimension.LENGTH, meaning, reading);
    }

    private static <A extends Assembly> Measure measure(
            ModelKind kind,
            Class<A> of,
            String name,
            List<Argument> arguments,
            Dimension dimension,
            String meaning,
            ToDoubleBiFunction<A, Arguments> reading) {
        return Measure.of(
                kind,
                AssemblyModel.class,
                name,
                arguments,
                dimension,
                meaning,
                (model, asked) -> reading.applyAsDouble(of.cast(model.assembly()), asked));
    }

    @Override
    public AssemblyPlan plan() {
        return plan;
    }

    /** @throws Unsolved if the tiles cannot be put together so */
    public Assembly assembly() {
        return assembly.get();
    }

    /**
     * As the figure shows it.
     *
     * @throws Unsolved if the tiles cannot be put together so
     */
    public Assembly drawn() {
        return drawn.get();
    }

    private static double touched(MatingEdge edge, Arguments asked) {
        int place = asked.whole(0);
        if (place < 1 || place > edge.contacts()) {
            throw new Unsolved("the row of contacts has no place " + asked.number(0));
        }
        return edge.touched(place);
    }

    /** From the side of the one tile and the side of the other, both from 1. */
    private static double fault(MatingEdge edge, Arguments asked) {
        for (int i = 0; i < asked.count(); i++) {
            if (asked.whole(i) < 1 || asked.whole(i) > edge.sides()) {
                throw new Unsolved("the tile has no side " + asked.number(i));
            }
        }
        return edge.fault(asked.whole(0) - 1, asked.whole(1) - 1)
                .map(fault -> fault.ordinal() + 1)
                .orElse(0);
    }

    private static PrismNet.Place place(Arguments asked) {
        return new PrismNet.Place(asked.whole(0), asked.whole(1));
    }

    private static double armTurn(BranchedTiles branches, Arguments asked) {
        double arm = asked.number(0);
        double tile = asked.number(1);
        int turn = Elementary.isWhole(arm) && Elementary.isWhole(tile) ? branches.turn((int) arm - 1, (int) tile) : -1;
        if (turn < 0) {
            throw new Unsolved("arm " + arm + " has no tile " + tile);
        }
        return turn;
    }
}
