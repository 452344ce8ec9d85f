package ampersheet.command;

import ampersheet.render.pdf.ExtraFont;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** A font for names in letters that the shipped ones lack. */
@Command
final class FontOption {
  @Option(names = "--font", paramLabel = "FILE.ttf", description = "A TrueType font for names in letters that the fonts of the "
      + "program lack; those have Latin, Greek, Cyrillic, Hebrew and Arabic.")
  private Path font;

  /** @throws WrongUsage if it cannot be read */
  Optional<ExtraFont> read() {
    if (font == null) {
      return Optional.empty();
    }
    String shown = InputFile.shown(font);
    try {
      if (!Files.isRegularFile(font) || Files.size(font) > ExtraFont.LARGEST) {
        throw new WrongUsage(shown, Files.exists(font) ? "this is no font, or too large a one" : "there is no such file",
            "a TrueType font of at most " + ExtraFont.LARGEST / 1_000_000 + " MB", "Check the path.");
      }
      return Optional.of(new ExtraFont(shown, Files.readAllBytes(font)));
    } catch (IOException failure) {
      throw new WrongUsage(shown, "this file cannot be read: " + failure.getMessage(), "the path of a TrueType font",
          "Check its permissions.");
    }
  }
}
