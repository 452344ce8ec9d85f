package ampersheet.problem;

import ampersheet.model.Unsolved;
import ampersheet.quantity.Elementary;
import ampersheet.quantity.PreferredSeries;
import ampersheet.template.ProblemTemplate.Members;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.DoublePredicate;

/**
 * Walks through a preferred series or whole numbers, member by member, to the first for which something holds. A series
 * has no first member, so the powers of ten are walked to find the decade, and then all its members.
 */
final class MemberWalk {
    private static final int DECADES = 12;

    private MemberWalk() {}

    /** @throws Unsolved if it holds for none, or for all */
    static double smallest(Members members, DoublePredicate holds) {
        if (members instanceof Members.WholeNumbers whole) {
            for (int n = whole.from(); n <= whole.to(); n++) {
                if (holds.test(n)) {
                    return n;
                }
            }
            throw new Unsolved("no whole number from " + whole.from() + " to " + whole.to() + " fits");
        }
        PreferredSeries series = ((Members.Series) members).series();
        for (int decade = -DECADES; decade <= DECADES; decade++) {
            if (holds.test(powerOfTen(decade))) {
                if (decade == -DECADES) {
                    throw new Unsolved("every member of the series fits, however small");
                }
                return first(series.between(powerOfTen(decade - 1), powerOfTen(decade)), holds);
            }
        }
        throw new Unsolved("no member of the series fits");
    }

    /** @throws Unsolved if it holds for none, or for all */
    static double largest(Members members, DoublePredicate holds) {
        if (members instanceof Members.WholeNumbers whole) {
            for (int n = whole.to(); n >= whole.from(); n--) {
                if (holds.test(n)) {
                    return n;
                }
            }
            throw new Unsolved("no whole number from " + whole.from() + " to " + whole.to() + " fits");
        }
        PreferredSeries series = ((Members.Series) members).series();
        for (int decade = DECADES; decade >= -DECADES; decade--) {
            if (holds.test(powerOfTen(decade))) {
                if (decade == DECADES) {
                    throw new Unsolved("every member of the series fits, however large");
                }
                List<Double> downwards = new ArrayList<>(series.between(powerOfTen(decade), powerOfTen(decade + 1)));
                Collections.reverse(downwards);
                return first(downwards, holds);
            }
        }
        throw new Unsolved("no member of the series fits");
    }

    private static double first(List<Double> members, DoublePredicate holds) {
        for (double member : members) {
            if (holds.test(member)) {
                return member;
            }
        }
        throw new Unsolved("the members of the series fit at powers of ten only");
    }

    private static double powerOfTen(int exponent) {
        return Elementary.power(10, exponent);
    }
}
