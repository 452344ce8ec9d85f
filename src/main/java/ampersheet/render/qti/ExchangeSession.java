package ampersheet.render.qti;

/**
 * How a platform is to deliver the items.
 *
 * @param attempts at each item; 0 for any number of them
 * @param feedback whether explanations and working are shown
 */
public record ExchangeSession(int attempts, boolean feedback) {
    public ExchangeSession {
        if (attempts < 0) {
            throw new IllegalArgumentException(attempts + " attempts");
        }
    }

    boolean isUnlimited() {
        return attempts == 0;
    }
}
