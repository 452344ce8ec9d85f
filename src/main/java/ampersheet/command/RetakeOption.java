package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.marking.Marking;
import ampersheet.marking.MissedSkills;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Whether the plan is taken again, by those who need it. */
@Command
final class RetakeOption {
    @Option(names = "--retake", paramLabel = "MARKS", descriptionKey = "command.help.retake")
    private Path marks;

    boolean isGiven() {
        return marks != null;
    }

    /** The files that are read. */
    List<Path> files() {
        return Optional.ofNullable(marks)
                .map(folder -> List.of(folder.resolve("marks.csv"), folder.resolve("answers.csv")))
                .orElse(List.of());
    }

    /** Skills by seat, as the sheets of this plan were marked. */
    Map<Integer, Set<String>> missed(Plan plan, TemplateLibrary library) {
        Path answers = marks.resolve("answers.csv");
        InputFile.table(marks.resolve("marks.csv"), say("command.file.retake-marks"));
        return MissedSkills.read(
                new Marking.NamedText(
                        InputFile.shown(answers),
                        InputFile.table(answers, say("command.file.retake-answers"))
                                .text()),
                ProblemSet.of(plan, library).id(1),
                template -> library.has(template) ? library.template(template).skill() : template);
    }
}
