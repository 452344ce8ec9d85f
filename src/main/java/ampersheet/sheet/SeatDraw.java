package ampersheet.sheet;

/**
 * What one seat gets in one slot: the template, and which of the plan's draws from it.
 *
 * @param index from 0; no two slots share one, and no two seats but for shared examples
 */
record SeatDraw(Slot slot, String template, long index) {
    /** What it is drawn from. */
    String source() {
        return slot.source(template);
    }
}
