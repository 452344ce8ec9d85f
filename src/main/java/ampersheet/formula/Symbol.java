package ampersheet.formula;

/**
 * How a name is printed: {@code Vs} as V with subscript s, {@code theta_JA} as θ with subscript JA, {@code tau} as τ,
 * {@code dT} and {@code delta_T} as ΔT.
 *
 * @param letters the quantity symbol itself, printed italic if one letter
 * @param subscript printed upright; may be empty
 */
public record Symbol(String letters, String subscript) {
  /** Derived from the name alone; a template may give another with {@code symbol:}. */
  public static Symbol of(String name) {
    throw new UnsupportedOperationException("being written");
  }

  /** For plain text: {@code V_s}. */
  public String plain() {
    return subscript.isEmpty() ? letters : letters + "_" + subscript;
  }
}
