package ampersheet.command;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Printable;
import ampersheet.source.Bounds;
import ampersheet.source.SourceFile;
import ampersheet.source.Unread;
import java.nio.file.Path;

/** Reads a file named on the command line. */
final class InputFile {
  private InputFile() {}

  /**
   * Text in UTF-8 within the bounds of what people write.
   *
   * @param what it should be, for messages: "a plan"
   * @throws WrongUsage if it is no file that can be read
   * @throws DiagnosticException if it is too large or not UTF-8
   */
  static String read(Path file, String what) {
    try {
      return SourceFile.text(file, Bounds.WRITTEN, SourceFile.Links.FOLLOWED);
    } catch (Unread other) {
      throw switch (other.why()) {
        case TOO_LARGE -> new DiagnosticException(other.told(shown(file), what + " of at most " + Bounds.WRITTEN.told()));
        case UTF_16, NOT_UTF_8 -> new DiagnosticException(other.told(shown(file), "text in UTF-8"));
        case MISSING, FOLDER, LINK, NO_ORDINARY_FILE, UNREADABLE ->
            new WrongUsage(shown(file), other.getMessage(), "the path of " + what, other.why().nextAction());
      };
    }
  }

  /** With forward slashes on every system. */
  static String shown(Path file) {
    return Printable.line(file.toString().replace('\\', '/'));
  }
}
