package ampersheet.quantity;

import java.util.ArrayList;
import java.util.List;

/**
 * The preferred number series of IEC 60063: E24 as listed there (rounding the geometric series would miss 2.7 to 4.7
 * and 8.2), E192 by rounding 10^(i/192) to three figures with the one exception 9.20, the others as every second,
 * fourth or eighth member of these.
 */
public enum PreferredSeries {
    E3(3),
    E6(6),
    E12(12),
    E24(24),
    E48(48),
    E96(96),
    E192(192);

    private static final double SAME = 1e-9;

    /** Members from 100 to 999, so that they are whole numbers. */
    private final int[] hundredths;

    PreferredSeries(int members) {
        hundredths = members <= 24 ? everyOf(e24(), members) : everyOf(e192(), members);
    }

    private static int[] e24() {
        return new int[] {
            100, 110, 120, 130, 150, 160, 180, 200, 220, 240, 270, 300,
            330, 360, 390, 430, 470, 510, 560, 620, 680, 750, 820, 910
        };
    }

    private static int[] e192() {
        int[] members = new int[192];
        for (int i = 0; i < members.length; i++) {
            members[i] = (int) Math.floor(100 * Elementary.power(10, i / 192.0) + 0.5);
        }
        members[185] = 920;
        return members;
    }

    private static int[] everyOf(int[] finest, int members) {
        int[] chosen = new int[members];
        for (int i = 0; i < members; i++) {
            chosen[i] = finest[i * (finest.length / members)];
        }
        return chosen;
    }

    /** Mantissas in [1, 10), ascending, as the standard lists them. */
    public List<Double> mantissas() {
        List<Double> mantissas = new ArrayList<>();
        for (int member : hundredths) {
            mantissas.add(PowerOfTen.scale(member, -2));
        }
        return List.copyOf(mantissas);
    }

    /**
     * The smallest member not below {@code value}; a value within 1e-9 of a member counts as that member.
     *
     * @throws IllegalArgumentException unless {@code value} is positive and finite
     */
    public double nextUp(double value) {
        for (int i = indexNear(value) - 2; ; i++) {
            double member = member(i);
            if (member >= value * (1 - SAME)) {
                return member;
            }
        }
    }

    /**
     * The largest member not above {@code value}; a value within 1e-9 of a member counts as that member.
     *
     * @throws IllegalArgumentException unless {@code value} is positive and finite
     */
    public double nextDown(double value) {
        for (int i = indexNear(value) + 2; ; i--) {
            double member = member(i);
            if (member <= value * (1 + SAME)) {
                return member;
            }
        }
    }

    /**
     * The member with the least ratio to {@code value}.
     *
     * @throws IllegalArgumentException unless {@code value} is positive and finite
     */
    public double nearest(double value) {
        double below = nextDown(value);
        double above = nextUp(value);
        return value / below <= above / value ? below : above;
    }

    /** Whether {@code value} is a member, to within 1e-9 of itself; no member is zero or negative. */
    public boolean contains(double value) {
        return value > 0 && value < Double.POSITIVE_INFINITY && Math.abs(nextUp(value) - value) <= SAME * value;
    }

    /**
     * Members from {@code low} to {@code high}, both inclusive, ascending.
     *
     * @throws IllegalArgumentException unless both are positive and finite
     */
    public List<Double> between(double low, double high) {
        List<Double> members = new ArrayList<>();
        indexNear(high);
        for (int i = indexNear(low) - 2; member(i) <= high * (1 + SAME); i++) {
            if (member(i) >= low * (1 - SAME)) {
                members.add(member(i));
            }
        }
        return List.copyOf(members);
    }

    /** Members are numbered through the decades: 0 is 1, and {@code hundredths.length} is 10. */
    private double member(int index) {
        int decade = Math.floorDiv(index, hundredths.length);
        return PowerOfTen.scale(hundredths[Math.floorMod(index, hundredths.length)], decade - 2);
    }

    /** Index of the last member not above {@code value}, give or take one for rounding at a decade's edge. */
    private int indexNear(double value) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            // Not said with the value: to write one double so, the script of a page would grow by a tenth.
            throw new IllegalArgumentException("a preferred value is positive and finite");
        }
        int decade = (int) Math.floor(Elementary.log10(value));
        double inDecade = PowerOfTen.scale(value, 2 - decade);
        int index = 0;
        while (index < hundredths.length - 1 && hundredths[index + 1] <= inDecade) {
            index++;
        }
        return decade * hundredths.length + index;
    }
}
