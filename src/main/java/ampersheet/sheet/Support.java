package ampersheet.sheet;

/** How much of the working a sheet shows. Numbers and key are the same whichever it is. */
public sealed interface Support {
  /** Every step with its result: a worked example. */
  record Full() implements Support {}

  /** The working with some steps left blank. */
  record Faded(Fade fade) implements Support {}

  /** The question only. */
  record Bare() implements Support {}

  /**
   * Which steps are left blank. Research disagrees on the best direction, so that it is the instructor's choice; for
   * circuits, blanking from the first step on did better (Moreno, Reisslein, Ozogul 2009, J Eng Educ 98).
   */
  sealed interface Fade {
    /** The first {@code blank} steps. */
    record Forward(int blank) implements Fade {}

    /** The last {@code blank} steps. */
    record Backward(int blank) implements Fade {}

    /** Every step of this principle and no other. */
    record Principle(String name) implements Fade {}
  }
}
