package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.render.pdf.ExtraFont;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** A font for names in letters that the shipped ones lack. */
@Command
final class FontOption {
    @Option(names = "--font", paramLabel = "FILE.ttf", descriptionKey = "command.help.font")
    private Path font;

    /** Null where none is given. */
    Path file() {
        return font;
    }

    /** @throws WrongUsage if it cannot be read */
    Optional<ExtraFont> read() {
        return Optional.ofNullable(font)
                .map(file -> new ExtraFont(
                        InputFile.shown(file), InputFile.bytes(file, say("command.file.font"), ExtraFont.LARGEST)));
    }
}
