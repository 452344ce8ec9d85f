package ampersheet.circuit;

/** A point of the drawing grid; x to the right, y upwards, one step is half the length of a resistor. */
public record GridPoint(int x, int y) {}
