package ampersheet.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToIntFunction;

/**
 * Which draw of which template each slot of each seat gets: a pure function of seed, slots and seat, for any seat
 * without the others.
 *
 * <p>Seats are dealt to a pool in rounds of as many seats as it has members. Within a round every member comes up once,
 * in an order drawn for the round; so each member gets an equal share of any class, and neighbours get different ones.
 * Draws of a template are numbered through the whole plan: the number is how often earlier seats, and earlier slots of
 * the same seat, have taken from it. With other givens fixed it counts as another template. So a template used in
 * several slots never meets itself, and no draw is left out.
 */
final class SeatDraws {
    private final String seed;
    private final List<Slot> slots;
    private final ToIntFunction<String> passedOver;

    SeatDraws(String seed, List<Slot> slots) {
        this(seed, slots, source -> 0);
    }

    /** @param passedOver how many draws of a source go before the first that a seat takes here */
    SeatDraws(String seed, List<Slot> slots, ToIntFunction<String> passedOver) {
        this.seed = seed;
        this.slots = List.copyOf(slots);
        this.passedOver = passedOver;
    }

    /** @param seat from 1 */
    List<SeatDraw> of(int seat) {
        Map<String, Long> takenByThisSeat = new TreeMap<>();
        List<SeatDraw> draws = new ArrayList<>();
        for (Slot slot : slots) {
            String template = template(slot, seat);
            String source = slot.source(template);
            long here = takenByThisSeat.merge(source, 1L, Long::sum) - 1;
            draws.add(new SeatDraw(slot, template, passedOver.applyAsInt(source) + takenBefore(source, seat) + here));
        }
        return draws;
    }

    private String template(Slot slot, int seat) {
        int members = slot.pool().size();
        int round = (seat - 1) / members;
        int position = (seat - 1) % members + slot.member();
        return order(slot, round).get(position % members);
    }

    /** How many draws the seats before this one have taken from a source: a template, or one with some givens fixed. */
    long takenBefore(String source, int seat) {
        long taken = 0;
        for (Slot slot : slots) {
            if (slot.pool().stream().anyMatch(member -> slot.source(member).equals(source))) {
                int members = slot.pool().size();
                int round = (seat - 1) / members;
                taken += round;
                for (int earlier = round * members + 1; earlier < seat; earlier++) {
                    if (slot.source(template(slot, earlier)).equals(source)) {
                        taken++;
                    }
                }
            }
        }
        return taken;
    }

    private List<String> order(Slot slot, int round) {
        if (slot.pool().size() == 1) {
            return slot.pool();
        }
        int firstOfEntry = slot.choice() - slot.member();
        Map<String, String> ranks = new TreeMap<>();
        for (String member : slot.pool()) {
            ranks.put(
                    member,
                    Fingerprint.of("pool", seed, Integer.toString(firstOfEntry), Integer.toString(round), member));
        }
        List<String> order = new ArrayList<>(slot.pool());
        order.sort(Comparator.comparing(ranks::get));
        return order;
    }
}
