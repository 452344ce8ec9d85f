package ampersheet.practice;

import java.util.List;

/** Days as a learner counts them, in the calendar of the place; a number for each, so that gaps can be counted. */
public final class Day {
    private static final int DAYS_OF_FOUR_CENTURIES = 146_097;
    /** From 1 March of the year 0 to 1 January 1970. */
    private static final int BEFORE_1970 = 719_468;

    private Day() {}

    /** {@code 2026-11-29} for so many days after 1 January 1970, by the Gregorian calendar. */
    public static String written(int day) {
        int shifted = day + BEFORE_1970;
        int cycle = Math.floorDiv(shifted, DAYS_OF_FOUR_CENTURIES);
        int inCycle = shifted - cycle * DAYS_OF_FOUR_CENTURIES;
        int yearOfCycle = (inCycle - inCycle / 1460 + inCycle / 36_524 - inCycle / 146_096) / 365;
        int inYear = inCycle - (365 * yearOfCycle + yearOfCycle / 4 - yearOfCycle / 100);
        int fromMarch = (5 * inYear + 2) / 153;
        int month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
        int year = yearOfCycle + cycle * 400 + (month <= 2 ? 1 : 0);
        return padded(year, 4) + "-" + padded(month, 2) + "-" + padded(inYear - (153 * fromMarch + 2) / 5 + 1, 2);
    }

    /**
     * The number of a day.
     *
     * @throws UnfitText for what {@link #written} does not write
     */
    public static int read(String written) {
        List<String> parts = Texts.parts(written, '-');
        if (parts.size() != 3) {
            throw new UnfitText("practice.unfit.day", "word", written);
        }
        int month = Texts.whole(parts.get(1));
        int year = Texts.whole(parts.get(0)) - (month <= 2 ? 1 : 0);
        int cycle = Math.floorDiv(year, 400);
        int yearOfCycle = year - cycle * 400;
        int inYear = (153 * (month > 2 ? month - 3 : month + 9) + 2) / 5 + Texts.whole(parts.get(2)) - 1;
        int day = cycle * DAYS_OF_FOUR_CENTURIES
                + 365 * yearOfCycle
                + yearOfCycle / 4
                - yearOfCycle / 100
                + inYear
                - BEFORE_1970;
        if (!written(day).equals(written)) {
            throw new UnfitText("practice.unfit.no-day", "word", written);
        }
        return day;
    }

    private static String padded(int number, int digits) {
        StringBuilder out = new StringBuilder(Integer.toString(number));
        while (out.length() < digits) {
            out.insert(0, '0');
        }
        return out.toString();
    }
}
