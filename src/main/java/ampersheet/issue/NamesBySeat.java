package ampersheet.issue;

import ampersheet.sheet.Roster;
import java.util.AbstractSet;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Names of files in the folder of a class, in the order of their letters. Those of seats, such as
 * {@code keys/seat-007.html}, take a bit each, so that the names of a large class weigh nothing.
 */
final class NamesBySeat extends AbstractSet<String> {
    private static final String SEAT = "/seat-";
    private static final int LARGEST = 999_999;
    private static final int FEWEST_DIGITS = 3;

    /** Seats by what stands before the number, and that by what stands behind it. */
    private final TreeMap<String, TreeMap<String, BitSet>> seats = new TreeMap<>();

    private final TreeSet<String> others = new TreeSet<>();

    NamesBySeat() {}

    NamesBySeat(NamesBySeat from) {
        from.seats.forEach((before, endings) -> {
            TreeMap<String, BitSet> copies = new TreeMap<>();
            endings.forEach((ending, numbers) -> copies.put(ending, (BitSet) numbers.clone()));
            seats.put(before, copies);
        });
        others.addAll(from.others);
    }

    /** A name that tells a seat. */
    private record OfSeat(String before, int seat, String ending) {
        /** Empty if the seat is not written as this program writes it. */
        static Optional<OfSeat> read(String name) {
            int from = name.indexOf(SEAT) + SEAT.length();
            int to = from;
            while (to < name.length() && name.charAt(to) >= '0' && name.charAt(to) <= '9') {
                to++;
            }
            boolean padded = to - from == FEWEST_DIGITS;
            boolean longer = to - from > FEWEST_DIGITS && to - from <= 6 && name.charAt(from) != '0';
            return from < SEAT.length() || !padded && !longer
                    ? Optional.empty()
                    : Optional.of(new OfSeat(
                            name.substring(0, from), Integer.parseInt(name, from, to, 10), name.substring(to)));
        }
    }

    @Override
    public boolean add(String name) {
        OfSeat of = OfSeat.read(name).orElse(null);
        if (of == null) {
            return others.add(name);
        }
        BitSet numbers = seats.computeIfAbsent(of.before(), first -> new TreeMap<>())
                .computeIfAbsent(of.ending(), first -> new BitSet());
        boolean isNew = !numbers.get(of.seat());
        numbers.set(of.seat());
        return isNew;
    }

    @Override
    public boolean contains(Object name) {
        return name instanceof String text
                && OfSeat.read(text)
                        .map(of -> seats.getOrDefault(of.before(), new TreeMap<>())
                                .getOrDefault(of.ending(), new BitSet())
                                .get(of.seat()))
                        .orElseGet(() -> others.contains(text));
    }

    @Override
    public boolean remove(Object name) {
        if (!contains(name)) {
            return false;
        }
        OfSeat.read((String) name)
                .ifPresentOrElse(
                        of -> seats.get(of.before()).get(of.ending()).clear(of.seat()), () -> others.remove(name));
        return true;
    }

    @Override
    public int size() {
        return others.size()
                + seats.values().stream()
                        .flatMap(endings -> endings.values().stream())
                        .mapToInt(BitSet::cardinality)
                        .sum();
    }

    @Override
    public Iterator<String> iterator() {
        return new InOrderOfLetters(this);
    }

    /** Those of seats and the others, both in their order. */
    private static final class InOrderOfLetters implements Iterator<String> {
        private final Iterator<String> others;
        private final Iterator<Map.Entry<String, TreeMap<String, BitSet>>> folders;
        private Optional<String> other;
        private Map.Entry<String, TreeMap<String, BitSet>> folder =
                Map.entry("", new TreeMap<>(Collections.emptyMap()));
        private int last = -1;
        private int seat = -1;
        private Iterator<String> ofSeat = Collections.emptyIterator();
        private Optional<String> next;

        InOrderOfLetters(NamesBySeat names) {
            others = names.others.iterator();
            folders = names.seats.entrySet().iterator();
            other = nextOther();
            next = nextOfSeat();
        }

        private Optional<String> nextOther() {
            return others.hasNext() ? Optional.of(others.next()) : Optional.empty();
        }

        private Optional<String> nextOfSeat() {
            while (!ofSeat.hasNext()) {
                seat = seat < 0 ? -1 : after(seat, last);
                if (seat < 0) {
                    if (!folders.hasNext()) {
                        return Optional.empty();
                    }
                    folder = folders.next();
                    last = folder.getValue().values().stream()
                            .mapToInt(BitSet::length)
                            .max()
                            .orElse(0);
                    seat = 0;
                }
                ofSeat = names(seat).iterator();
            }
            return Optional.of(ofSeat.next());
        }

        private List<String> names(int number) {
            List<String> names = new ArrayList<>();
            folder.getValue().forEach((ending, numbers) -> {
                if (numbers.get(number)) {
                    names.add(folder.getKey() + Roster.fileName(number).substring(SEAT.length() - 1) + ending);
                }
            });
            return names;
        }

        @Override
        public boolean hasNext() {
            return next.isPresent() || other.isPresent();
        }

        @Override
        public String next() {
            if (!hasNext()) {
                throw new NoSuchElementException();
            }
            if (next.isEmpty() || other.isPresent() && other.get().compareTo(next.get()) < 0) {
                String name = other.orElseThrow();
                other = nextOther();
                return name;
            }
            String name = next.orElseThrow();
            next = nextOfSeat();
            return name;
        }
    }

    /**
     * The number after this one in the order of letters, in which 100 is followed by 1000 and that by 1001; −1 after
     * the last.
     *
     * @param last above all that there are
     */
    private static int after(int number, int last) {
        if (number >= 100 && number * 10 <= Math.min(last, LARGEST)) {
            return number * 10;
        }
        int at = number;
        while (at > 999 && (at % 10 == 9 || at + 1 > last)) {
            at /= 10;
        }
        return at == 999 || at < 999 && at + 1 > last ? -1 : at + 1;
    }
}
