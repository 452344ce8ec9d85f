package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.circuit.Netlist;
import ampersheet.circuit.PartKind;
import ampersheet.circuit.Schematic;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class FoldingTest {
    /** Two loops with nothing but 0 V in common, and two loads at one supply. */
    private static Map<String, Circuits.Drawn> cut() {
        Map<String, Circuits.Drawn> cut = new TreeMap<>(Circuits.all());
        cut.put(
                "two loops",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 4)
                        .part(PartKind.RESISTOR, "R1", 0, 4, 4, 4)
                        .wire(4, 4, 4, 0)
                        .wire(4, 0, 0, 0)
                        .wire(4, 0, 8, 0)
                        .part(PartKind.SOURCE, "V2", 8, 0, 8, 4)
                        .part(PartKind.RESISTOR, "R2", 8, 4, 12, 4)
                        .wire(12, 4, 12, 0)
                        .wire(12, 0, 8, 0)
                        .part(PartKind.GROUND, "ground", 0, 0)
                        .drawn());
        cut.put(
                "two loads",
                new Circuits()
                        .part(PartKind.SOURCE, "V1", 0, 0, 0, 4)
                        .wire(0, 4, 4, 4)
                        .part(PartKind.RESISTOR, "R1", 4, 4, 4, 0)
                        .wire(4, 0, 0, 0)
                        .wire(4, 4, 8, 4)
                        .part(PartKind.RESISTOR, "R2", 8, 4, 8, 2)
                        .part(PartKind.RESISTOR, "R3", 8, 2, 8, 0)
                        .wire(8, 0, 4, 0)
                        .part(PartKind.GROUND, "ground", 0, 0)
                        .drawn());
        return cut;
    }

    private static List<Folding.Fold> folds(Circuits.Drawn drawn) {
        List<Folding.Fold> folds =
                new ArrayList<>(Folding.of(drawn.schematic(), drawn.labels(), true, Languages.ENGLISH));
        folds.addAll(Folding.of(drawn.schematic(), drawn.labels(), false, Languages.ENGLISH));
        return folds;
    }

    /** Which terminals are connected, when all ground symbols are one node and so are terminals of one name. */
    private static Set<Set<String>> connections(Schematic... pieces) {
        Map<String, Set<String>> terminals = new TreeMap<>();
        for (int i = 0; i < pieces.length; i++) {
            Netlist netlist = pieces[i].netlist();
            for (Netlist.Connected connected : netlist.parts()) {
                for (Map.Entry<String, String> end : connected.node().entrySet()) {
                    boolean common = end.getValue().equals(netlist.reference())
                            || end.getValue().startsWith("plus of ");
                    terminals
                            .computeIfAbsent(
                                    common ? end.getValue() : i + " " + end.getValue(), node -> new TreeSet<>())
                            .add(connected.part().name() + " " + end.getKey());
                }
            }
        }
        Set<Set<String>> connections =
                new TreeSet<>((one, other) -> one.toString().compareTo(other.toString()));
        connections.addAll(terminals.values());
        return connections;
    }

    @Test
    void thePiecesTogetherAreTheSameCircuit() {
        cut().forEach((name, drawn) -> {
            for (Folding.Fold fold : folds(drawn)) {
                assertEquals(connections(drawn.schematic()), connections(fold.upper(), fold.lower()), name);
            }
        });
    }

    @Test
    void eachPieceIsWithoutDoubtAndHasItsGround() {
        cut().forEach((name, drawn) -> {
            for (Folding.Fold fold : folds(drawn)) {
                for (Schematic piece : List.of(fold.upper(), fold.lower())) {
                    assertEquals(List.of(), piece.netlist().doubts(), name);
                    assertTrue(piece.parts().stream().anyMatch(part -> part.kind() == PartKind.GROUND), name);
                }
            }
        });
    }

    @Test
    void loopsThatShareOnlyGroundAreCutThereAndLoadsAtTheirSupply() {
        Circuits.Drawn loops = cut().get("two loops");
        List<Folding.Fold> atGround = Folding.of(loops.schematic(), loops.labels(), true, Languages.ENGLISH);
        assertFalse(atGround.isEmpty());
        atGround.forEach(fold -> assertEquals(List.of("R2", "V2"), components(fold.lower())));
        Circuits.Drawn loads = cut().get("two loads");
        assertEquals(List.of(), Folding.of(loads.schematic(), loads.labels(), true, Languages.ENGLISH));
        List<Folding.Fold> atSupply = Folding.of(loads.schematic(), loads.labels(), false, Languages.ENGLISH);
        assertEquals(1, atSupply.size());
        assertEquals(List.of("R2", "R3"), components(atSupply.get(0).lower()));
        for (Schematic piece : List.of(atSupply.get(0).upper(), atSupply.get(0).lower())) {
            assertEquals(
                    List.of("plus of V1"),
                    piece.parts().stream()
                            .filter(part -> part.kind() == PartKind.NODE)
                            .map(part -> part.name())
                            .toList());
        }
    }

    private static List<String> components(Schematic piece) {
        return piece.netlist().parts().stream()
                .map(connected -> connected.part().name())
                .sorted()
                .toList();
    }
}
