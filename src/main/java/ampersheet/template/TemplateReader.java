package ampersheet.template;

/** Reads one template folder. */
public final class TemplateReader {
  private TemplateReader() {}

  /**
   * @param files where the folder's files come from
   * @param name {@code family/name}
   * @throws ampersheet.diagnostic.DiagnosticException with all faults of the template at once
   */
  public static ProblemTemplate read(TemplateFiles files, String name) {
    throw new UnsupportedOperationException("being written");
  }
}
