package ampersheet.marking;

import ampersheet.sheet.Roster;
import java.text.Normalizer;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The seats of a class, found by what files say of them. */
final class Seats {
    private static final int MOST_DIGITS = 6;

    private final Map<Integer, Roster.Seat> byNumber = new TreeMap<>();
    /** 0 for a name that two learners have. */
    private final Map<String, Integer> byName = new LinkedHashMap<>();

    Seats(Roster roster) {
        for (Roster.Seat seat : roster.seats()) {
            byNumber.put(seat.number(), seat);
            if (!seat.name().isBlank()) {
                byName.merge(plain(seat.name()), seat.number(), (one, other) -> 0);
            }
        }
    }

    /** From 1; 0 if that is no seat number. */
    static int number(String written) {
        String digits = written.strip();
        boolean whole = !digits.isEmpty()
                && digits.length() <= MOST_DIGITS
                && digits.chars().allMatch(c -> c >= '0' && c <= '9');
        return whole ? Integer.parseInt(digits) : 0;
    }

    boolean has(int number) {
        return byNumber.containsKey(number);
    }

    Optional<Roster.Seat> seat(int number) {
        return Optional.ofNullable(byNumber.get(number));
    }

    /** Empty if nobody or more than one has that name. */
    Optional<Integer> named(String name) {
        return Optional.ofNullable(byName.get(plain(name))).filter(seat -> seat > 0);
    }

    /** Whether the class list calls the learner of this seat otherwise. */
    boolean isCalledOtherwise(int number, String name) {
        Roster.Seat seat = byNumber.get(number);
        return seat != null && !seat.name().isBlank() && !plain(seat.name()).equals(plain(name));
    }

    private static String plain(String name) {
        return Normalizer.normalize(name, Normalizer.Form.NFKC)
                .toLowerCase(Locale.ROOT)
                .replaceAll("[\\s\\h]+", " ")
                .strip();
    }
}
