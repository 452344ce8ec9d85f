package ampersheet.marking;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The folder in which an instructor has collected what learners sent. Files are read in the order of their names. */
final class AnswerFolder {
  /** A sheet's Markdown has some 20 kB, a table of a whole class some more. */
  private static final long LARGEST_FILE = 16L << 20;
  private static final String EXPECTED = "tables of answers (.csv) and filled-in sheets (.md)";

  private final Path folder;
  private final List<String> names;

  private AnswerFolder(Path folder, List<String> names) {
    this.folder = folder;
    this.names = List.copyOf(names);
  }

  static AnswerFolder of(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return new AnswerFolder(folder, files.map(file -> file.getFileName().toString()).sorted().toList());
    }
  }

  List<String> names() {
    return names;
  }

  /** Reads one of the {@link #names()}, whatever it is; what is wrong with it stands in the file's faults. */
  ReturnedFile read(String name, String shown, Privacy privacy) {
    Path file = folder.resolve(name);
    String kind = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    if (name.startsWith(".")) {
      return new ReturnedFile(shown, List.of(), List.of());
    }
    if (Files.isDirectory(file)) {
      return faulty(shown, "this is a folder, and what is in it is not read", "Move its files up into the folder of answers.");
    }
    if (!kind.equals("csv") && !kind.equals("md")) {
      return faulty(shown, switch (kind) {
        case "html", "htm" -> "this is a page and not the answers typed in it";
        case "zip" -> "this is an archive, and what is in it is not read";
        default -> "this kind of file is not read";
      }, switch (kind) {
        case "html", "htm" -> "Ask for the answer file that the page saves, which ends in .csv.";
        case "zip" -> "Unpack it into the folder of answers.";
        default -> "Ask for the answers in one of these forms, or type them into a table.";
      });
    }
    try {
      if (Files.size(file) > LARGEST_FILE) {
        return faulty(shown, "this file is larger than 16 MB", "Look what it is; answers of a class need far less.");
      }
      byte[] bytes = Files.readAllBytes(file);
      if (bytes.length > 1 && (bytes[0] & bytes[1] & 0xFE) == 0xFE) {
        return faulty(shown, "this file is in UTF-16 and not in UTF-8",
            "Save it again with the encoding UTF-8; spreadsheets call it CSV UTF-8.");
      }
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return kind.equals("csv") ? AnswerTable.read(shown, text, privacy) : FilledSheet.read(shown, text, privacy);
    } catch (CharacterCodingException foreign) {
      return faulty(shown, "this file is not UTF-8 text",
          "Save it again with the encoding UTF-8; spreadsheets call it CSV UTF-8.");
    } catch (IOException failure) {
      return faulty(shown, "this file cannot be read", "Check its permissions, or ask for it again.");
    }
  }

  private static ReturnedFile faulty(String shown, String problem, String nextAction) {
    return new ReturnedFile(shown, List.of(),
        List.of(Diagnostic.error(Place.inFile(shown), problem, EXPECTED, nextAction)));
  }
}
