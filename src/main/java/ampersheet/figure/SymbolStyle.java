package ampersheet.figure;

/** Symbols by IEC 60617 (resistor a rectangle) or IEEE 315 (resistor a zigzag). */
public enum SymbolStyle {
    IEC,
    IEEE
}
