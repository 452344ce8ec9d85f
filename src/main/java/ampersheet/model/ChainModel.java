package ampersheet.model;

import static ampersheet.model.Argument.COLUMN;
import static ampersheet.model.Argument.ROW;
import static ampersheet.model.Argument.TURN;

import ampersheet.chain.ChannelPackets;
import ampersheet.chain.DataPath;
import ampersheet.chain.FrameMemory;
import ampersheet.chain.Panel;
import ampersheet.formula.Values;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Elementary;
import java.util.List;
import java.util.function.IntBinaryOperator;
import java.util.function.ToDoubleBiFunction;

/** A panel with numbers, and the way of the data through it. */
public final class ChainModel implements Model {
    static final List<Measure> MEASURES = List.of(
            measure(
                    "turn",
                    List.of(COLUMN, ROW),
                    Dimension.ONE,
                    "turn of the pixel at column x and row y, from 0",
                    (chain, asked) -> ofPixel(chain.traced()::turn, asked)),
            measure(
                    "lines_before",
                    List.of(COLUMN, ROW),
                    Dimension.ONE,
                    "lines of pixels of its tile that the data has left behind at the pixel",
                    (chain, asked) -> ofPixel(chain.traced()::linesBefore, asked)),
            measure(
                    "column_of",
                    List.of(TURN),
                    Dimension.ONE,
                    "column of the pixel with that turn, from 0",
                    (chain, asked) -> chain.stopAt(asked.number(0)).x()),
            measure(
                    "row_of",
                    List.of(TURN),
                    Dimension.ONE,
                    "row of the pixel with that turn, from 0",
                    (chain, asked) -> chain.stopAt(asked.number(0)).y()),
            measure(
                    "pixels",
                    List.of(),
                    Dimension.ONE,
                    "number of pixels",
                    (chain, asked) -> chain.traced().stops().size()),
            measure(
                    "tiles",
                    List.of(),
                    Dimension.ONE,
                    "number of tiles",
                    (chain, asked) -> chain.traced().tileOrder().size()),
            measure(
                    "packets",
                    List.of(),
                    Dimension.ONE,
                    "packets that carry a frame",
                    (chain, asked) ->
                            chain.slot(chain.traced().stops().size() - 1).packet()),
            measure(
                    "packet_of",
                    List.of(TURN),
                    Dimension.ONE,
                    "packet that carries the pixel with that turn, from 1",
                    (chain, asked) ->
                            chain.slot(chain.stopAt(asked.number(0)).turn()).packet()),
            measure(
                    "channel_of",
                    List.of(TURN),
                    Dimension.ONE,
                    "first channel of the pixel with that turn in its packet, from 1",
                    (chain, asked) ->
                            chain.slot(chain.stopAt(asked.number(0)).turn()).channel()),
            measure(
                    "packet_time",
                    List.of(),
                    Dimension.TIME,
                    "time of the fullest packet",
                    (chain, asked) -> chain.packetTime()),
            measure("frame_time", List.of(), Dimension.TIME, "time of one frame", (chain, asked) -> chain.frameTime()),
            measure(
                    "memory",
                    List.of(),
                    Dimension.ONE,
                    "memory of the frames kept",
                    (chain, asked) -> FrameMemory.bits(chain.panel(), chain.plan.framesKept(chain.values))),
            measure(
                    "tile_turn",
                    List.of(COLUMN, ROW),
                    Dimension.ONE,
                    "turn of the tile that holds the pixel",
                    (chain, asked) -> ofPixel(chain.traced()::tileTurn, asked)),
            measure(
                    "return_turn",
                    List.of(COLUMN, ROW),
                    Dimension.ONE,
                    "tiles the return line passes from the pixel's tile back to the controller",
                    (chain, asked) -> ofPixel(chain.traced()::returnTurn, asked)));

    private final ChainPlan plan;
    private final Values values;
    private final Once<Panel> panel;
    private final Once<DataPath.Outcome.Traced> traced;
    private final Once<List<ChannelPackets.Slot>> slots;

    ChainModel(ChainPlan plan, Values values) {
        this.plan = plan;
        this.values = values;
        this.panel = new Once<>(() -> plan.panel(values));
        this.traced = new Once<>(() -> Solutions.of(DataPath.trace(panel())));
        this.slots = new Once<>(
                () -> planned().packets(values).slots(traced().stops().size()));
    }

    private static Measure measure(
            String name,
            List<Argument> arguments,
            Dimension dimension,
            String meaning,
            ToDoubleBiFunction<ChainModel, Arguments> reading) {
        return Measure.of(ModelKind.CHAIN, ChainModel.class, name, arguments, dimension, meaning, reading);
    }

    @Override
    public ChainPlan plan() {
        return plan;
    }

    /** @throws Unsolved if the tiles cannot be laid so */
    public Panel panel() {
        return panel.get();
    }

    private DataPath.Outcome.Traced traced() {
        return traced.get();
    }

    private double frameTime() {
        // A panel whose path is not complete has no frame; the trace tells why.
        traced();
        return DataPath.frameTime(panel(), plan.parallelChains(values), plan.passingDelay(values));
    }

    private ChainPlan.PlannedPackets planned() {
        return plan.packets().orElseThrow(() -> new Unsolved("the chain has no packets"));
    }

    private ChannelPackets.Slot slot(int turn) {
        return slots.get().get(turn);
    }

    /** Channel after channel of the fullest packet, after what comes before the first. */
    private double packetTime() {
        ChainPlan.PlannedPackets planned = planned();
        double time =
                planned.before().map(lead -> ModelNumbers.number(lead, values)).orElse(0.0);
        double each = ModelNumbers.number(
                planned.channelTime().orElseThrow(() -> new Unsolved("the packets have no channel_time")), values);
        int used = planned.packets(values).mostUsed(traced().stops().size());
        for (int channel = 0; channel < used; channel++) {
            time += each;
        }
        return time;
    }

    private static double ofPixel(IntBinaryOperator turn, Arguments asked) {
        double x = asked.number(0);
        double y = asked.number(1);
        int found = Elementary.isWhole(x) && Elementary.isWhole(y) ? turn.applyAsInt((int) x, (int) y) : -1;
        if (found < 0) {
            throw new Unsolved("the data never passes a pixel at column " + x + ", row " + y);
        }
        return found;
    }

    private DataPath.Stop stopAt(double turn) {
        List<DataPath.Stop> stops = traced().stops();
        if (!Elementary.isWhole(turn) || turn < 0 || turn >= stops.size()) {
            throw new Unsolved("no pixel of the chain has turn " + turn);
        }
        return stops.get((int) turn);
    }
}
