package ampersheet.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class SeatDrawsTest {
    private static final Support BARE = new Support.Bare();
    private static final int CLASS = 1_000;

    private static Slot slot(int number, int choice, int member, String... pool) {
        return new Slot(number, choice, member, List.of(pool), BARE, false, "");
    }

    /**
     * A pool of four of which each seat gets two, an example and its twin of a pool of three, and one template alone.
     */
    private static final List<Slot> SLOTS = List.of(
            slot(0, 0, 0, "a", "b", "c", "d"),
            slot(1, 1, 1, "a", "b", "c", "d"),
            new Slot(2, 2, 0, List.of("b", "e", "f"), new Support.Full(), true, ""),
            slot(3, 2, 0, "b", "e", "f"),
            slot(4, 3, 0, "a"));

    private static final SeatDraws DRAWS = new SeatDraws("a seed", SLOTS, false);

    @Test
    void eachMemberOfAPoolGetsAnEqualShare() {
        for (Slot slot : SLOTS) {
            Map<String, Integer> shares = new TreeMap<>();
            for (int seat = 1; seat <= CLASS; seat++) {
                shares.merge(DRAWS.of(seat).get(slot.number()).template(), 1, Integer::sum);
            }
            assertEquals(new TreeSet<>(slot.pool()), new TreeSet<>(shares.keySet()));
            for (Map.Entry<String, Integer> share : shares.entrySet()) {
                double equal = (double) CLASS / slot.pool().size();
                assertTrue(Math.abs(share.getValue() - equal) <= 0.05 * CLASS, share + " of " + CLASS + " in " + slot);
                assertTrue(Math.abs(share.getValue() - equal) <= 1, "rounds deal equally: " + share);
            }
        }
    }

    @Test
    void noDrawIsGivenTwiceAndNoneIsLeftOut() {
        Map<String, Set<Long>> given = new TreeMap<>();
        Map<String, Long> largest = new TreeMap<>();
        for (int seat = 1; seat <= CLASS; seat++) {
            for (SeatDraw draw : DRAWS.of(seat)) {
                assertTrue(
                        given.computeIfAbsent(draw.template(), name -> new TreeSet<>())
                                .add(draw.index()),
                        "seat " + seat + " meets another: " + draw);
                largest.merge(draw.template(), draw.index(), Math::max);
            }
        }
        given.forEach((template, indices) -> assertEquals(largest.get(template) + 1, indices.size(), template));
    }

    @Test
    void anExampleAndItsTwinShareTheTemplateAndNotTheNumbers() {
        for (int seat = 1; seat <= 100; seat++) {
            List<SeatDraw> draws = DRAWS.of(seat);
            assertEquals(draws.get(2).template(), draws.get(3).template());
            assertNotEquals(draws.get(2).index(), draws.get(3).index());
        }
    }

    @Test
    void severalOutOfOnePoolAreDifferentTemplates() {
        for (int seat = 1; seat <= 100; seat++) {
            List<SeatDraw> draws = DRAWS.of(seat);
            assertNotEquals(draws.get(0).template(), draws.get(1).template());
        }
    }

    @Test
    void neighboursInARoundGetDifferentTemplates() {
        for (int seat = 1; seat < 100; seat += 4) {
            assertNotEquals(
                    DRAWS.of(seat).get(0).template(), DRAWS.of(seat + 1).get(0).template());
        }
    }

    @Test
    void anotherSeedDealsOtherwise() {
        SeatDraws other = new SeatDraws("another seed", SLOTS, false);
        long different = 0;
        for (int seat = 1; seat <= 100; seat++) {
            different += DRAWS.of(seat)
                            .get(0)
                            .template()
                            .equals(other.of(seat).get(0).template())
                    ? 0
                    : 1;
        }
        assertTrue(different > 50, different + " of 100 differ");
    }

    @Test
    void sharedExamplesAreTheSameForAllAndTakeOneDrawForEachOfTheirPlaces() {
        SeatDraws shared = new SeatDraws("a seed", SLOTS, true);
        Map<String, Set<Long>> taken = new TreeMap<>();
        Map<String, Set<Long>> examples = new TreeMap<>();
        for (int seat = 1; seat <= CLASS; seat++) {
            for (SeatDraw draw : shared.of(seat)) {
                Map<String, Set<Long>> where = draw.slot().example() ? examples : taken;
                boolean isNew = where.computeIfAbsent(draw.template(), name -> new TreeSet<>())
                        .add(draw.index());
                assertTrue(isNew || draw.slot().example(), "seat " + seat + " meets another: " + draw);
            }
        }
        examples.forEach((template, indices) -> assertEquals(Set.of(0L), indices, template));
        taken.forEach((template, indices) -> {
            long first = examples.containsKey(template) ? 1 : 0;
            assertEquals(first, ((TreeSet<Long>) indices).first(), template);
            assertEquals(first + indices.size() - 1, ((TreeSet<Long>) indices).last(), "none left out of " + template);
        });
    }
}
