package ampersheet.command;

import ampersheet.source.Told;
import java.util.ListResourceBundle;
import java.util.stream.Stream;
import picocli.CommandLine.Help;
import picocli.CommandLine.IHelpFactory;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.UsageMessageSpec;

/**
 * The words of a command's help. Annotations name sentences by key; they are looked up when help is shown and not
 * before. A resource bundle named in the annotations would be read at each start, searched for by the machine's locale,
 * and have keys of the library's own making, which no test of ours would see.
 */
final class HelpWords implements IHelpFactory {
    private static final String FACE = "command.";

    @Override
    public Help create(CommandSpec spec, Help.ColorScheme colors) {
        // The list of all commands and a command's own help both ask.
        if (spec.resourceBundle() == null) {
            UsageMessageSpec about = spec.usageMessage();
            about.description(said(about.description()));
            about.footer(said(about.footer()));
            spec.resourceBundle(options(spec));
        }
        return new Help(spec, colors);
    }

    /** An empty line and one that is to be typed stand in the annotation as they are. */
    private static String[] said(String[] lines) {
        return Stream.of(lines)
                .map(line -> line.startsWith(FACE) ? Told.say(line) : line)
                .toArray(String[]::new);
    }

    private static ListResourceBundle options(CommandSpec spec) {
        return new ListResourceBundle() {
            @Override
            protected Object[][] getContents() {
                return spec.args().stream()
                        .map(ArgSpec::descriptionKey)
                        .distinct()
                        .map(key -> new Object[] {key, Told.say(key)})
                        .toArray(Object[][]::new);
            }
        };
    }
}
