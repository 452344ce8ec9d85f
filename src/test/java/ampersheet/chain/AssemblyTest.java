package ampersheet.chain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.chain.BranchedTiles.Arm;
import ampersheet.chain.BranchedTiles.Crossing;
import ampersheet.chain.MatingEdge.Fault;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class AssemblyTest {
    private static final long SEED = 20_261_126L;

    /** USB Type-C pin table (as printed in UM2191): the rows face each other, A1 opposite B12, A4 opposite B9. */
    @Test
    void aRowThatFacesItselfMeetsItsPlacesFromTheOtherEnd() {
        MatingEdge edge = new MatingEdge(4, 2, 12, List.of(4), List.of(1), 2, 8);
        List<Integer> touched = new ArrayList<>();
        for (int place = 1; place <= 12; place++) {
            touched.add(edge.touched(place));
        }
        assertEquals(List.of(12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1), touched);
    }

    /** Worked by hand, side by side: what touches is written down for each pair of rows. */
    @Test
    void pairsAreSafeWhereNoContactMeetsOneItMustNot() {
        // V G . O I against I O . G V: V on I, G on O is a short.
        assertEquals(0, new MatingEdge(4, 2, 5, List.of(1), List.of(2), 4, 5).safePairs());
        // V . G . O I . against . I O . G . V: the middle place is bare, V on a bare place, O on G is a short.
        assertEquals(0, new MatingEdge(4, 2, 7, List.of(1), List.of(3), 5, 6).safePairs());
        // V G O I . . against . . I O G V: O on I, G and V on bare places; two plain and two mirrored sides.
        assertEquals(4 + 4, new MatingEdge(4, 2, 6, List.of(1), List.of(2), 3, 4).safePairs());
        assertEquals(1 + 4, new MatingEdge(3, 1, 6, List.of(1), List.of(2), 3, 4).safePairs());
        // V meets G across the seam.
        assertEquals(0, new MatingEdge(3, 3, 6, List.of(1), List.of(6), 2, 4).safePairs());
        // The output lies in the middle and meets the other output.
        assertEquals(0, new MatingEdge(6, 3, 5, List.of(1), List.of(2), 3, 4).safePairs());
    }

    /** Rows written out by hand, left row against right row as they face each other. */
    @Test
    void theGravestFaultOfAPairIsFoundByWalkingItsContacts() {
        // V G O . . I G V against V G I . . O G V: each meets its partner.
        assertEquals(Optional.empty(), like(8, List.of(1, 8), List.of(2, 7), 3, 6));
        // V G O . . I V G against G V I . . O G V: the right half was copied instead of mirrored.
        assertEquals(Optional.of(Fault.SHORT), like(8, List.of(1, 7), List.of(2, 8), 3, 6));
        // V G . O . I G V and one place more: the output sits in the middle and meets the other output.
        assertEquals(Optional.of(Fault.OUTPUT_FORCED), like(9, List.of(1, 9), List.of(2, 8), 5, 6));
        // The output meets a ground that has no second one.
        assertEquals(Optional.of(Fault.OUTPUT_FORCED), like(8, List.of(1, 8), List.of(6), 3, 5));
        // The supply meets nothing, ground and data are joined: the output feeds the other tile through its input.
        assertEquals(Optional.of(Fault.FED_THROUGH_DATA), like(8, List.of(1), List.of(2, 7), 3, 6));
        // The ground meets nothing: the current comes back through the input.
        assertEquals(Optional.of(Fault.FED_THROUGH_DATA), like(8, List.of(1, 8), List.of(2), 3, 6));
        // The supply meets the data input, and only the ground is joined.
        assertEquals(Optional.of(Fault.FED_THROUGH_DATA), like(8, List.of(1), List.of(2, 7), 3, 8));
        // The supply meets the data input, but nothing leads back to ground.
        assertEquals(Optional.of(Fault.NO_POWER), like(8, List.of(1), List.of(2), 3, 8));
        // Supply is joined and the input meets supply as well: it stays high, and no ground is there.
        assertEquals(Optional.of(Fault.NO_POWER), like(9, List.of(1, 5), List.of(2), 3, 9));
        // Ground and supply are joined; input and output meet bare places.
        assertEquals(Optional.of(Fault.NO_DATA), like(8, List.of(1, 8), List.of(2, 7), 3, 5));
        // A single contact in the middle meets itself.
        assertEquals(Optional.empty(), like(7, List.of(1, 7), List.of(4), 3, 5));
    }

    private static Optional<Fault> like(
            int contacts, List<Integer> supplies, List<Integer> grounds, int output, int input) {
        MatingEdge edge = new MatingEdge(4, 2, contacts, supplies, grounds, output, input);
        assertEquals(edge.fault(0, 1), edge.fault(2, 3), "two mirrored sides meet as two plain ones do");
        assertEquals(
                Optional.of(Fault.OUTPUT_FORCED),
                edge.fault(0, 2),
                "outputs meet where a plain side meets a mirrored one");
        return edge.fault(0, 1);
    }

    @Test
    void pairsAreCountedInBothOrders() {
        MatingEdge mirrored = new MatingEdge(5, 2, 8, List.of(1, 8), List.of(2, 7), 3, 6);
        assertEquals(2 * 2 + 3 * 3, mirrored.workingPairs());
        assertEquals(2 * 2 * 3, mirrored.harmfulPairs());
        MatingEdge copied = new MatingEdge(5, 2, 8, List.of(1, 7), List.of(2, 8), 3, 6);
        assertEquals(0, copied.workingPairs());
        assertEquals(5 * 5, copied.harmfulPairs());
        MatingEdge dark = new MatingEdge(5, 5, 8, List.of(1), List.of(2), 3, 6);
        assertEquals(0, dark.workingPairs());
        assertEquals(0, dark.harmfulPairs());
    }

    @Test
    void contactsWithoutPartnerAreCounted() {
        assertEquals(0, new MatingEdge(4, 4, 8, List.of(1, 8), List.of(2, 7), 3, 6).unmatched());
        assertEquals(2, new MatingEdge(4, 4, 8, List.of(1), List.of(2), 3, 6).unmatched());
        assertEquals(1, new MatingEdge(4, 4, 8, List.of(1, 8), List.of(2), 3, 6).unmatched());
        assertEquals(4, new MatingEdge(4, 4, 8, List.of(1), List.of(2), 3, 5).unmatched());
    }

    /** Two sides of one kind put place p on place c + 1 - p, two of different kinds place p on place p. */
    @Test
    void faultsAgreeWithThePlacesWorkedOut() {
        Random random = new Random(SEED);
        for (int draw = 0; draw < 400; draw++) {
            int contacts = 6 + random.nextInt(6);
            List<Integer> places = new ArrayList<>();
            for (int place = 1; place <= contacts; place++) {
                places.add(place);
            }
            Collections.shuffle(places, random);
            List<Integer> supplies = places.subList(0, 1 + random.nextInt(2));
            List<Integer> grounds = places.subList(2, 3 + random.nextInt(2));
            int output = places.get(4);
            int input = places.get(5);
            MatingEdge edge = new MatingEdge(4, 2, contacts, supplies, grounds, output, input);
            String where = "seed " + SEED + ", draw " + draw + ": " + edge;
            assertEquals(worked(supplies, grounds, output, input, contacts + 1), edge.fault(0, 1), where);
            assertEquals(Optional.of(Fault.OUTPUT_FORCED), edge.fault(1, 3), where);
        }
    }

    private static Optional<Fault> worked(
            List<Integer> supplies, List<Integer> grounds, int output, int input, int sum) {
        boolean supply = supplies.stream().anyMatch(place -> supplies.contains(sum - place));
        boolean ground = grounds.stream().anyMatch(place -> grounds.contains(sum - place));
        boolean data = output + input == sum;
        if (supplies.stream().anyMatch(place -> grounds.contains(sum - place))) {
            return Optional.of(Fault.SHORT);
        } else if (2 * output == sum || supplies.contains(sum - output) || grounds.contains(sum - output)) {
            return Optional.of(Fault.OUTPUT_FORCED);
        } else if (supply && ground) {
            return data ? Optional.empty() : Optional.of(Fault.NO_DATA);
        }
        boolean fed =
                ground && (data || supplies.contains(sum - input)) || supply && (data || grounds.contains(sum - input));
        return Optional.of(fed ? Fault.FED_THROUGH_DATA : Fault.NO_POWER);
    }

    @Test
    void twoContactsOfOneKindInOnePlaceAreOne() {
        assertEquals(
                new MatingEdge(4, 2, 8, List.of(1), List.of(2), 3, 6),
                new MatingEdge(4, 2, 8, List.of(1, 1), List.of(2), 3, 6));
    }

    @Test
    void twoContactsOnOnePlaceAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new MatingEdge(4, 2, 8, List.of(1, 8), List.of(2, 8), 3, 6));
        assertThrows(IllegalArgumentException.class, () -> new MatingEdge(4, 2, 6, List.of(1), List.of(1), 3, 4));
        assertThrows(IllegalArgumentException.class, () -> new MatingEdge(4, 2, 6, List.of(1), List.of(7), 3, 4));
        assertThrows(IllegalArgumentException.class, () -> new MatingEdge(4, 5, 6, List.of(1), List.of(2), 3, 4));
    }

    /** GeeksforGeeks, Euler tour of a tree: 1 2 3 2 4 2 1 for the tree with the edges 1-2, 2-3, 2-4. */
    @Test
    void theDataWalksRoundTheTilesAsRoundATree() {
        BranchedTiles tiles = new BranchedTiles(4, 1, List.of(new Arm(1, 1), new Arm(2, 1), new Arm(3, 1)));
        assertEquals(
                List.of(
                        new Crossing(0, 1, false),
                        new Crossing(1, 0, true),
                        new Crossing(0, 2, false),
                        new Crossing(2, 0, true),
                        new Crossing(0, 3, false),
                        new Crossing(3, 0, true)),
                tiles.walk());
        assertEquals(3, tiles.turn(2, 1));
        assertEquals(-1, tiles.turn(2, 2));
        assertEquals(3, tiles.lastSide());
    }

    @Test
    void theOrderInWhichArmsAreWrittenDoesNotMatter() {
        BranchedTiles oneWay = new BranchedTiles(6, 1, List.of(new Arm(1, 2), new Arm(3, 1), new Arm(5, 3)));
        BranchedTiles other = new BranchedTiles(6, 1, List.of(new Arm(5, 3), new Arm(1, 2), new Arm(3, 1)));
        assertEquals(oneWay.turn(0, 2), other.turn(1, 2));
        assertEquals(oneWay.turn(2, 1), other.turn(0, 1));
        assertEquals(oneWay.way(), other.way(), 1e-12);
    }

    /** Distance between centres: squares 1, hexagons sqrt(3), triangles 1 / sqrt(3) sides. */
    @Test
    void theWayLeadsFromCentreToCentre() {
        Map<Integer, Double> distances = new LinkedHashMap<>();
        distances.put(3, 1 / Math.sqrt(3));
        distances.put(4, 1.0);
        distances.put(6, Math.sqrt(3));
        distances.forEach((sides, distance) ->
                assertEquals(2 * 5 * distance, new BranchedTiles(sides, 1, List.of(new Arm(1, 5))).way(), 1e-9));
    }

    @Test
    void armsGoStraightOn() {
        for (int sides : new int[] {3, 4, 6}) {
            List<BranchedTiles.Placed> placed = new BranchedTiles(sides, 1, List.of(new Arm(1, 6))).tiles();
            RegularPolygon.Spot first = placed.get(1).outline().centre();
            RegularPolygon.Spot third = placed.get(3).outline().centre();
            RegularPolygon.Spot fifth = placed.get(5).outline().centre();
            assertEquals(0, fifth.x() - third.x() - (third.x() - first.x()), 1e-9, sides + " sides");
            assertEquals(0, fifth.y() - third.y() - (third.y() - first.y()), 1e-9, sides + " sides");
            assertTrue(first.distanceTo(third) > 0.9, sides + " sides");
        }
    }

    @Test
    void everyTileIsMetOnceAndEverySeamCrossedOutAndBack() {
        Random random = new Random(SEED);
        for (int draw = 0; draw < 200; draw++) {
            int sides = List.of(3, 4, 6).get(random.nextInt(3));
            List<Arm> arms = new ArrayList<>();
            for (int at = 1; at < sides; at++) {
                arms.add(new Arm(at, random.nextInt(4)));
            }
            BranchedTiles tiles = new BranchedTiles(sides, 0.05, arms);
            String where = "seed " + SEED + ", draw " + draw + ": " + tiles;
            if (!tiles.fault().isEmpty()) {
                continue;
            }
            int count = tiles.tiles().size() - 1;
            List<Integer> met = tiles.walk().stream()
                    .filter(c -> !c.returning())
                    .map(Crossing::to)
                    .sorted()
                    .toList();
            List<Integer> all = new ArrayList<>();
            for (int i = 1; i <= count; i++) {
                all.add(i);
            }
            assertEquals(all, met, where);
            int here = 0;
            for (Crossing crossing : tiles.walk()) {
                assertEquals(here, crossing.from(), where);
                here = crossing.to();
            }
            assertEquals(0, here, where);
            assertEquals(2 * count, tiles.walk().size(), where);
        }
    }

    /**
     * By hand: a lone square has three open sides; a strip of three triangles has nine sides, two seams, one
     * controller.
     */
    @Test
    void openSidesAreThoseWithoutNeighbourOrController() {
        assertEquals(3, new BranchedTiles(4, 1, List.of(new Arm(1, 0))).openSides());
        assertEquals(9 - 2 * 2 - 1, new BranchedTiles(3, 1, List.of(new Arm(2, 2))).openSides());
        assertEquals(6 * 4 - 2 * 3 - 1, new BranchedTiles(6, 1, List.of(new Arm(1, 1), new Arm(3, 2))).openSides());
    }

    @Test
    void tilesThatWouldLieOnEachOtherAreTold() {
        assertTrue(new BranchedTiles(6, 1, List.of(new Arm(1, 5), new Arm(3, 5), new Arm(5, 5)))
                .fault()
                .isEmpty());
        assertThrows(IllegalArgumentException.class, () -> new BranchedTiles(5, 1, List.of(new Arm(1, 1))));
        assertThrows(IllegalArgumentException.class, () -> new BranchedTiles(4, 1, List.of(new Arm(0, 1))));
        assertThrows(
                IllegalArgumentException.class, () -> new BranchedTiles(4, 1, List.of(new Arm(1, 1), new Arm(1, 2))));
    }

    /** Worst case 5 * 0.1 mm (ideambox, tolerance stack-ups); four plates of 0.05 mm: 0.10 mm (metricmech). */
    @Test
    void errorsOfARowAddUpAsPublished() {
        assertEquals(0.5e-3, new TileRow(5, 0.12, 0.1e-3).worstEdge(), 1e-12);
        assertEquals(0.1e-3, new TileRow(4, 0.12, 0.05e-3).typicalEdge(), 1e-12);
        assertEquals(0.2e-3, new TileRow(4, 0.12, 0.1e-3).worstGapFromDatum(), 1e-12);
        assertEquals(0, new TileRow(1, 0.12, 0.1e-3).worstGapFromDatum());
        assertThrows(IllegalArgumentException.class, () -> new TileRow(17, 0.1, 0.001));
        assertFalse(new TileRow(3, 0.1, 0.001).worstEdge() < 0.003 - 1e-12);
    }
}
