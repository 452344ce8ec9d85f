package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import ampersheet.model.Unsolved;
import ampersheet.quantity.PreferredSeries;
import ampersheet.template.ProblemTemplate.Members;
import org.junit.jupiter.api.Test;

class MemberWalkTest {
    private static final Members E24 = new Members.Series(PreferredSeries.E24);
    private static final Members TO_200 = new Members.WholeNumbers(1, 200);

    @Test
    void theSmallestMemberIsTheNextOneUp() {
        assertEquals(1200, MemberWalk.smallest(E24, r -> r >= 1120));
        assertEquals(1000, MemberWalk.smallest(E24, r -> r >= 911));
        assertEquals(0.0091, MemberWalk.smallest(E24, r -> r > 0.0083), 1e-15);
    }

    @Test
    void theLargestMemberIsTheNextOneDown() {
        assertEquals(1100, MemberWalk.largest(E24, r -> r <= 1120));
        assertEquals(910, MemberWalk.largest(E24, r -> r <= 999));
        assertEquals(1000, MemberWalk.largest(E24, r -> r <= 1000));
    }

    @Test
    void wholeNumbersAreWalkedFromTheRightEnd() {
        assertEquals(7, MemberWalk.smallest(TO_200, n -> n * 3 >= 20));
        assertEquals(66, MemberWalk.largest(TO_200, n -> n * 3 <= 200));
    }

    @Test
    void noneOrAllIsNoAnswer() {
        assertThrows(Unsolved.class, () -> MemberWalk.smallest(E24, r -> false));
        assertThrows(Unsolved.class, () -> MemberWalk.smallest(E24, r -> true));
        assertThrows(Unsolved.class, () -> MemberWalk.largest(E24, r -> false));
        assertThrows(Unsolved.class, () -> MemberWalk.largest(E24, r -> true));
        assertThrows(Unsolved.class, () -> MemberWalk.smallest(TO_200, n -> n > 200));
    }
}
