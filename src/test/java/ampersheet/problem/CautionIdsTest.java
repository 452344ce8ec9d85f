package ampersheet.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.template.Cautions;
import java.util.Arrays;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class CautionIdsTest {
    @Test
    void everyCautionATemplateMayNameHasABoxAndNoneElse() {
        assertEquals(
                new TreeSet<>(Cautions.IDS),
                Arrays.stream(Caution.values()).map(Caution::id).collect(Collectors.toCollection(TreeSet::new)));
    }
}
