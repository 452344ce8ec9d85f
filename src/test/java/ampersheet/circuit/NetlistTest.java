package ampersheet.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class NetlistTest {
    private final List<PlacedPart> parts = new ArrayList<>();

    private NetlistTest line(PartKind kind, String name, int x1, int y1, int x2, int y2) {
        Map<PartValue, Double> values = kind == PartKind.SOURCE
                ? Map.of(PartValue.VOLTS, 5.0)
                : kind == PartKind.RESISTOR ? Map.of(PartValue.OHMS, 100.0) : Map.of();
        parts.add(
                new PlacedPart(kind, name, Map.of("from", new GridPoint(x1, y1), "to", new GridPoint(x2, y2)), values));
        return this;
    }

    private NetlistTest point(PartKind kind, String name, int x, int y) {
        parts.add(new PlacedPart(kind, name, Map.of("at", new GridPoint(x, y)), Map.of()));
        return this;
    }

    private Netlist netlist() {
        return new Schematic(parts).netlist();
    }

    private NetlistTest loop() {
        return line(PartKind.SOURCE, "V1", 0, 0, 0, 4)
                .line(PartKind.RESISTOR, "R1", 0, 4, 4, 4)
                .line(PartKind.RESISTOR, "R2", 4, 4, 4, 0)
                .line(PartKind.WIRE, "w1", 4, 0, 0, 0);
    }

    @Test
    void endsOnOnePointAndEndsOfAWireAreOneNode() {
        Netlist netlist = loop().netlist();
        assertEquals(List.of("1", "2", "3"), netlist.nodes());
        assertEquals("1", netlist.nodeAt().get(new GridPoint(4, 0)));
        assertEquals(Map.of("from", "3", "to", "1"), netlist.parts().get(2).node());
        assertEquals(List.of(), netlist.doubts());
    }

    @Test
    void withoutAGroundTheMinusOfTheFirstSourceIsTheReference() {
        line(PartKind.RESISTOR, "R1", 0, 4, 4, 4).line(PartKind.SOURCE, "V1", 4, 4, 0, 4);
        assertEquals(List.of("2", "1"), netlist().nodes());
    }

    @Test
    void theGroundedNodeIsTheReferenceAndNodeNamesComeBeforeLetters() {
        Netlist netlist = loop().point(PartKind.GROUND, "g", 4, 4)
                .point(PartKind.NODE, "A", 0, 4)
                .netlist();
        assertEquals(List.of("ground", "1", "A"), netlist.nodes());
        assertEquals("A", netlist.nodeAt().get(new GridPoint(0, 4)));
    }

    @Test
    void aGroundedNodeKeepsTheNameGivenToIt() {
        assertEquals(
                "minus",
                loop().point(PartKind.GROUND, "g", 0, 0)
                        .point(PartKind.NODE, "minus", 4, 0)
                        .netlist()
                        .reference());
    }

    @Test
    void allGroundSymbolsAreOneNode() {
        line(PartKind.SOURCE, "V1", 0, 0, 0, 4)
                .line(PartKind.RESISTOR, "R1", 0, 4, 4, 4)
                .point(PartKind.GROUND, "g1", 0, 0)
                .point(PartKind.GROUND, "g2", 4, 4);
        assertEquals(List.of("ground", "1"), netlist().nodes());
    }

    @Test
    void nodesWithoutANameAreNumberedInOrder() {
        for (int i = 0; i < 28; i++) {
            line(PartKind.RESISTOR, "R" + i, i, 0, i + 1, 0);
        }
        assertEquals(List.of("26", "27", "28", "29"), netlist().nodes().subList(25, 29));
    }

    @Test
    void wiresThatCrossAreNotConnected() {
        line(PartKind.WIRE, "w1", 0, 2, 4, 2).line(PartKind.WIRE, "w2", 2, 0, 2, 4);
        assertEquals(2, netlist().nodes().size());
        assertTrue(netlist().doubts().stream().allMatch(Doubt.LooseEnd.class::isInstance));
    }

    @Test
    void anEndInTheMiddleOfALineIsDoubtedAndNotConnected() {
        Netlist netlist = loop().line(PartKind.RESISTOR, "R3", 2, 0, 2, 4).netlist();
        assertEquals(
                List.of(
                        new Doubt.LooseEnd(4, "from", new GridPoint(2, 0)),
                        new Doubt.LooseEnd(4, "to", new GridPoint(2, 4)),
                        new Doubt.EndOnLine(4, "to", new GridPoint(2, 4), 1),
                        new Doubt.EndOnLine(4, "from", new GridPoint(2, 0), 3)),
                netlist.doubts());
    }

    @Test
    void aPartDrawnOverAnotherIsDoubted() {
        assertEquals(
                List.of(new Doubt.Overlap(4, 1)),
                loop().line(PartKind.RESISTOR, "R3", 4, 4, 0, 4).netlist().doubts());
    }

    @Test
    void linesThatFollowEachOtherDoNotOverlap() {
        line(PartKind.WIRE, "w1", 0, 0, 4, 0)
                .line(PartKind.WIRE, "w2", 4, 0, 8, 0)
                .line(PartKind.WIRE, "w3", 8, 0, 8, 4)
                .line(PartKind.WIRE, "w4", 8, 4, 0, 4)
                .line(PartKind.WIRE, "w5", 0, 4, 0, 0);
        assertEquals(List.of(), netlist().doubts());
    }

    @Test
    void aDiagonalWireIsDoubted() {
        assertEquals(
                List.of(new Doubt.DiagonalWire(4)),
                loop().line(PartKind.WIRE, "w2", 0, 4, 4, 8)
                        .line(PartKind.RESISTOR, "R3", 4, 8, 4, 4)
                        .netlist()
                        .doubts());
    }

    @Test
    void aNameUsedTwiceIsDoubtedAndRefusedByTheSolver() {
        Netlist netlist = loop().line(PartKind.RESISTOR, "R1", 4, 4, 8, 4)
                .line(PartKind.RESISTOR, "R4", 8, 4, 4, 0)
                .netlist();
        assertEquals(List.of(new Doubt.DuplicateName(4, "R1", 1)), netlist.doubts());
        assertThrows(IllegalArgumentException.class, () -> OperatingPointSolver.solve(netlist));
    }

    @Test
    void aSecondNameForANodeIsDoubted() {
        Netlist netlist = loop().point(PartKind.NODE, "out", 4, 4)
                .point(PartKind.NODE, "exit", 4, 4)
                .netlist();
        assertEquals(List.of(new Doubt.SecondNodeName(5, "exit", "out")), netlist.doubts());
        assertTrue(netlist.nodes().contains("out"));
    }

    @Test
    void aPartWithBothEndsOnOnePointOrJoinedByAWireIsDoubted() {
        Netlist netlist = loop().line(PartKind.RESISTOR, "R3", 4, 4, 4, 4)
                .line(PartKind.RESISTOR, "R4", 4, 0, 8, 0)
                .line(PartKind.WIRE, "w2", 8, 0, 8, 2)
                .line(PartKind.WIRE, "w3", 8, 2, 4, 2)
                .line(PartKind.WIRE, "w4", 4, 2, 0, 0)
                .netlist();
        assertTrue(
                netlist.doubts().contains(new Doubt.ShortedPart(4, true)),
                netlist.doubts().toString());
        assertTrue(
                netlist.doubts().contains(new Doubt.ShortedPart(5, false)),
                netlist.doubts().toString());
    }
}
