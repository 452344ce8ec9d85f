package ampersheet.issue;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;

/**
 * Writes a file whole or not at all: into a temporary file of the same folder, which then takes the name. A reader never
 * sees half a sheet, and a run that was cut off can be repeated.
 */
public final class WholeFile {
  private WholeFile() {}

  /** What is to be in a file, written piece by piece. */
  @FunctionalInterface
  public interface Content {
    void writeTo(OutputStream out) throws IOException;
  }

  /**
   * @return whether the file was written; a file that already holds this text is left alone
   * @throws DiagnosticException if the folder or the file cannot be written
   */
  public static boolean write(Path file, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    try {
      if (holds(file, bytes)) {
        return false;
      }
    } catch (IOException failure) {
      throw new DiagnosticException(told(file, failure));
    }
    return write(file, out -> out.write(bytes));
  }

  /** The same for what is too large to be held in memory. */
  public static boolean write(Path file, Content content) {
    Path temporary = file.resolveSibling("." + file.getFileName() + "." + ProcessHandle.current().pid() + ".part");
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      try {
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(temporary))) {
          content.writeTo(out);
        }
        if (Files.isRegularFile(file) && Files.mismatch(temporary, file) < 0) {
          return false;
        }
        move(temporary, file);
      } finally {
        Files.deleteIfExists(temporary);
      }
      return true;
    } catch (IOException | ReadOnlyFileSystemException failure) {
      throw new DiagnosticException(told(file, failure));
    }
  }

  private static boolean holds(Path file, byte[] bytes) throws IOException {
    return Files.isRegularFile(file) && Files.size(file) == bytes.length
        && Arrays.equals(Files.readAllBytes(file), bytes);
  }

  private static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException foreignFileSystem) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static Diagnostic told(Path file, Exception failure) {
    Place place = Place.inFile(file.toString().replace('\\', '/'));
    if (failure instanceof AccessDeniedException || failure instanceof ReadOnlyFileSystemException) {
      return Diagnostic.error(place, "this file may not be written", "a folder that you may write to",
          "Name another folder, or change its permissions, and run the same command again.");
    }
    if (failure instanceof FileAlreadyExistsException) {
      return Diagnostic.error(place, "a file stands where a folder is needed: "
          + ((FileAlreadyExistsException) failure).getFile(), "a folder, or nothing yet",
          "Name another folder, or move that file away, and run the same command again.");
    }
    String reason = failure.getMessage() == null ? failure.getClass().getSimpleName() : failure.getMessage();
    return Diagnostic.error(place, "this file could not be written: " + reason, "room on the disk and a sound folder",
        "Mend that and run the same command again; every file written so far is whole.");
  }
}
