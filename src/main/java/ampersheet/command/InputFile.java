package ampersheet.command;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Reads a file named on the command line. */
final class InputFile {
  private InputFile() {}

  /**
   * @param what it should be, for messages: "a plan"
   * @throws WrongUsage if it cannot be read
   * @throws DiagnosticException if it is not UTF-8
   */
  static String read(Path file, String what) {
    String shown = shown(file);
    try {
      byte[] bytes = Files.readAllBytes(file);
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException foreign) {
      throw new DiagnosticException(Diagnostic.error(Place.inFile(shown), "this file is not UTF-8 text", "text in UTF-8",
          "Save it again with the encoding UTF-8; spreadsheets call it CSV UTF-8."));
    } catch (NoSuchFileException missing) {
      throw new WrongUsage(shown, "there is no such file", "the path of " + what, "Check the path.");
    } catch (IOException failure) {
      throw new WrongUsage(shown, Files.isDirectory(file) ? "this is a folder" : "this file cannot be read: "
          + failure.getMessage(), "the path of " + what, "Check the path and its permissions.");
    }
  }

  /** With forward slashes on every system. */
  static String shown(Path file) {
    return file.toString().replace('\\', '/');
  }
}
