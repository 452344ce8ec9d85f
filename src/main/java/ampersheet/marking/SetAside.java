package ampersheet.marking;

/** An answer that was not marked, and why: nothing that came in is lost. */
record SetAside(TypedAnswer answer, String why) {}
