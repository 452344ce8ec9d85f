package ampersheet.quantity;

/** The decimal marker of a printed number; both are allowed by the SI. */
public enum DecimalMarker {
    POINT('.'),
    COMMA(',');

    private final char character;

    DecimalMarker(char character) {
        this.character = character;
    }

    public char character() {
        return character;
    }
}
