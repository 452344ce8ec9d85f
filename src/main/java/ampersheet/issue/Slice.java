package ampersheet.issue;

import ampersheet.sheet.Roster;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Some of a class, in the order of their seats, so that several machines make the sheets of all.
 *
 * @param number from 1
 * @param of how many slices there are
 */
public record Slice(int number, int of) {
    /** More would be a typing slip. */
    public static final int MOST = 100_000;

    private static final Pattern WRITTEN = Pattern.compile("([0-9]{1,6})/([0-9]{1,6})");

    public Slice {
        if (number < 1 || number > of || of > MOST) {
            throw new IllegalArgumentException("slice " + number + " of " + of);
        }
    }

    /** As it is typed, such as {@code 3/10}; empty for anything else. */
    public static Optional<Slice> read(String typed) {
        Matcher written = WRITTEN.matcher(typed);
        if (!written.matches()) {
            return Optional.empty();
        }
        int number = Integer.parseInt(written.group(1));
        int of = Integer.parseInt(written.group(2));
        return number < 1 || number > of || of > MOST ? Optional.empty() : Optional.of(new Slice(number, of));
    }

    /** Every seat is in one slice; some are empty where there are more slices than seats. */
    public List<Roster.Seat> of(Roster roster) {
        long seats = roster.seats().size();
        return roster.seats().subList((int) (seats * (number - 1) / of), (int) (seats * number / of));
    }

    /** As it begins the names of its files. */
    String fileName() {
        return "slice-" + number + "-of-" + of;
    }

    @Override
    public String toString() {
        return number + "/" + of;
    }
}
