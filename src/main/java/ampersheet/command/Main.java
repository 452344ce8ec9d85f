package ampersheet.command;

/** Entry point of the command line. */
public final class Main {
  private Main() {}

  public static void main(String[] arguments) {
    throw new UnsupportedOperationException("being written");
  }
}
