package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PartValueTest {
    @Test
    void valuesStandInTheOrderOfTheirKeysBecauseThatOrderWasPrintedAndHashedBefore() {
        List<String> keys =
                Arrays.stream(PartValue.values()).map(PartValue::key).toList();
        assertEquals(keys.stream().sorted().distinct().toList(), keys);
    }

    @Test
    void everyValueBelongsToSomeKindOfPart() {
        Set<PartValue> used = EnumSet.noneOf(PartValue.class);
        for (PartKind kind : PartKind.values()) {
            used.addAll(kind.needed());
            used.addAll(kind.optional());
            assertTrue(
                    Collections.disjoint(kind.needed(), kind.optional()),
                    kind.word() + " both needs and may do without a value");
        }
        assertEquals(EnumSet.allOf(PartValue.class), used);
    }

    @Test
    void whatIsPrintedBesideAPartIsPrintedOnce() {
        assertEquals(PartValue.PRINTED.stream().distinct().toList(), PartValue.PRINTED);
    }
}
