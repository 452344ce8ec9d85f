package ampersheet.circuit;

import java.util.List;

/** A drawing that is a circuit: parts whose ends coincide are connected. */
public record Schematic(List<PlacedPart> parts) {
    public Schematic {
        parts = List.copyOf(parts);
    }

    public Netlist netlist() {
        return Netlist.of(this);
    }
}
