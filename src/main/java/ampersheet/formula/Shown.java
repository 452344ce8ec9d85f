package ampersheet.formula;

/** Which of its two lines a formula is folded into. */
enum Shown {
    /** Every name by its symbol. */
    SYMBOLS,
    /** Every name by its value. */
    VALUES
}
