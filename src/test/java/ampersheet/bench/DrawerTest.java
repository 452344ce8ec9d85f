package ampersheet.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.circuit.GridPoint;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.PartValue;
import ampersheet.circuit.PlacedPart;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class DrawerTest {
    @Test
    void aResistorInThePlaceOfAMotorIsNotDrawnAsOne() throws NotLaidOut {
        PlacedPart motor = new PlacedPart(
                PartKind.LOAD,
                "M1",
                Map.of("from", new GridPoint(0, 4), "to", new GridPoint(0, 0)),
                Map.of(PartValue.OHMS, 2.6),
                Map.of("symbol", "motor"));
        PlacedPart fitted = new Drawer(Optional.empty()).fit(motor, List.of()).part();
        assertEquals("box", fitted.word("symbol"));
        assertEquals(2.7, fitted.values().get(PartValue.OHMS), 1e-9);
    }
}
