package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Which templates there are. */
@Command
final class TemplateOptions {
    @Option(names = "--templates", paramLabel = "DIR", descriptionKey = "command.help.templates")
    private List<Path> folders = new ArrayList<>();

    /** Whether any of the author's own folders is to be looked into. */
    boolean areOwn() {
        return !folders.isEmpty();
    }

    /** @throws WrongUsage if a folder does not exist */
    TemplateLibrary library() {
        return library(folders);
    }

    /** The same with other folders before the built-in templates. */
    static TemplateLibrary library(List<Path> folders) {
        List<TemplateFiles> sources = new ArrayList<>();
        for (Path folder : folders) {
            if (!Files.isDirectory(folder)) {
                throw new WrongUsage(
                        InputFile.shown(folder),
                        say("command.templates.folder"),
                        say("command.templates.folder.expected"),
                        say("command.templates.folder.next"));
            }
            Surroundings.present().requireReadableNames(folder);
            sources.add(TemplateFiles.in(folder));
        }
        sources.add(TemplateFiles.builtIn());
        return new TemplateLibrary(sources);
    }

    /** @throws WrongUsage if there is none of this name */
    static ProblemTemplate named(TemplateLibrary library, String name) {
        if (!library.has(name)) {
            throw new WrongUsage(
                    name,
                    say("command.templates.unknown"),
                    say("command.templates.unknown.expected"),
                    library.nearest(name)
                            .map(near -> say("command.templates.unknown.near.next", "near", near))
                            .orElseGet(() -> say("command.templates.unknown.next")));
        }
        return library.template(name);
    }
}
