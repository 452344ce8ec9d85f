package ampersheet.model;

import ampersheet.chain.Assembly;
import ampersheet.chain.BranchedTiles;
import ampersheet.chain.MatingEdge;
import ampersheet.chain.PrismNet;
import ampersheet.chain.TileRow;
import ampersheet.formula.Expression;
import ampersheet.formula.Values;
import java.util.ArrayList;
import java.util.List;

/** Tiles joined in another way than a panel of pixels. */
public sealed interface AssemblyPlan extends ModelPlan {
    /** @throws Unsolved or IllegalArgumentException if the tiles cannot be put together so */
    Assembly put(Values values);

    /** As it is drawn: what only a step knows is left out. */
    default Assembly drawn(Values values) {
        return put(values);
    }

    @Override
    default AssemblyModel with(Values values, Values.Measured others) {
        return new AssemblyModel(this, values);
    }

    /**
     * @param plainSides so many sides carry the row of contacts unmirrored
     * @param supplies places of the supply contacts, at least one; the same for the grounds
     */
    record Edge(
            Expression sides,
            Expression plainSides,
            Expression contacts,
            List<Expression> supplies,
            List<Expression> grounds,
            Expression output,
            Expression input)
            implements AssemblyPlan {
        public Edge {
            supplies = List.copyOf(supplies);
            grounds = List.copyOf(grounds);
        }

        @Override
        public ModelKind kind() {
            return ModelKind.EDGE;
        }

        @Override
        public List<Expression> formulas() {
            List<Expression> formulas = new ArrayList<>(List.of(sides, plainSides, contacts, output, input));
            formulas.addAll(supplies);
            formulas.addAll(grounds);
            return formulas;
        }

        @Override
        public Assembly put(Values values) {
            ModelNumbers.size("contacts", contacts, values, SizeLimits.JOINED);
            return new MatingEdge(
                    ModelNumbers.size("sides of a tile", sides, values, SizeLimits.SIDES),
                    ModelNumbers.size("plain sides", plainSides, values),
                    ModelNumbers.size("contacts", contacts, values),
                    ModelNumbers.sizes("place of the supply contact", supplies, values),
                    ModelNumbers.sizes("place of the ground contact", grounds, values),
                    ModelNumbers.size("place of the output contact", output, values),
                    ModelNumbers.size("place of the input contact", input, values));
        }
    }

    /** A first tile with straight arms on its sides. */
    record Branches(Expression sides, Expression sideLength, List<PlannedArm> arms, List<PlannedMark> marks)
            implements AssemblyPlan {
        public Branches {
            arms = List.copyOf(arms);
            marks = List.copyOf(marks);
        }

        @Override
        public ModelKind kind() {
            return ModelKind.BRANCHES;
        }

        @Override
        public List<Expression> formulas() {
            List<Expression> formulas = new ArrayList<>(List.of(sides, sideLength));
            arms.forEach(arm -> formulas.addAll(List.of(arm.at(), arm.tiles())));
            return formulas;
        }

        @Override
        public Assembly put(Values values) {
            List<BranchedTiles.Arm> put = arms.stream()
                    .map(arm -> new BranchedTiles.Arm(
                            ModelNumbers.whole("side of an arm", arm.at(), values),
                            ModelNumbers.whole("tiles of an arm", arm.tiles(), values)))
                    .toList();
            ModelNumbers.few(
                    "tiles in the arms",
                    put.stream().mapToLong(BranchedTiles.Arm::tiles).sum(),
                    SizeLimits.JOINED);
            BranchedTiles tiles = new BranchedTiles(
                    ModelNumbers.size("sides of a tile", sides, values), ModelNumbers.number(sideLength, values), put);
            if (!tiles.fault().isEmpty()) {
                throw new Unsolved(tiles.fault());
            }
            return tiles;
        }
    }

    /** @param at side of the first tile on which the arm stands */
    record PlannedArm(Expression at, Expression tiles) {}

    /**
     * The net of a prism.
     *
     * @param top tile of the band that carries the upper lid; the same for the lower one
     * @param turned how far each tile is turned clockwise, or none
     * @param lies the same as it is drawn, over givens alone, where that is another
     * @param plain sides of a tile that carry the plain row of contacts, or none
     */
    record Net(
            Expression sides,
            Expression top,
            Expression bottom,
            List<Expression> turned,
            List<Expression> lies,
            List<Expression> plain)
            implements AssemblyPlan {
        public Net {
            turned = List.copyOf(turned);
            lies = List.copyOf(lies);
            plain = List.copyOf(plain);
        }

        @Override
        public ModelKind kind() {
            return ModelKind.NET;
        }

        @Override
        public List<Expression> formulas() {
            List<Expression> formulas = new ArrayList<>(List.of(sides, top, bottom));
            formulas.addAll(turned);
            formulas.addAll(plain);
            return formulas;
        }

        @Override
        public Assembly put(Values values) {
            return turned(turned, values);
        }

        @Override
        public Assembly drawn(Values values) {
            return turned(lies.isEmpty() ? turned : lies, values);
        }

        private PrismNet turned(List<Expression> by, Values values) {
            return new PrismNet(
                    ModelNumbers.size("sides of a lid", sides, values),
                    ModelNumbers.size("tile under the upper lid", top, values),
                    ModelNumbers.size("tile over the lower lid", bottom, values),
                    by.stream()
                            .map(turn -> ModelNumbers.whole("turn of a tile", turn, values))
                            .toList(),
                    ModelNumbers.sizes("plain side", plain, values));
        }
    }

    /** Tiles that each may be off their measure. */
    record Row(Expression tiles, Expression length, Expression error) implements AssemblyPlan {
        @Override
        public ModelKind kind() {
            return ModelKind.ROW;
        }

        @Override
        public List<Expression> formulas() {
            return List.of(tiles, length, error);
        }

        @Override
        public Assembly put(Values values) {
            return new TileRow(
                    ModelNumbers.size("tiles of the row", tiles, values),
                    ModelNumbers.number(length, values),
                    ModelNumbers.number(error, values));
        }
    }
}
