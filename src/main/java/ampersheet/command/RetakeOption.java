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
import java.util.Set;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Whether the plan is taken again, by those who need it. */
@Command
final class RetakeOption {
    @Option(names = "--retake", paramLabel = "MARKS", descriptionKey = "command.help.retake")
    private List<Path> marks = List.of();

    boolean isGiven() {
        return !marks.isEmpty();
    }

    /** How often it was or is taken again. */
    int rounds() {
        return marks.size();
    }

    /** The files that are read. */
    List<Path> files() {
        return marks.stream()
                .flatMap(folder -> Stream.of(folder.resolve("marks.csv"), folder.resolve("answers.csv")))
                .toList();
    }

    /**
     * Skills by seat, as the sheets of this plan were marked.
     *
     * @param round for which they are to be taken again, from 1
     */
    Map<Integer, Set<String>> missed(int round, Plan plan, TemplateLibrary library) {
        Path folder = marks.get(round - 1);
        Path answers = folder.resolve("answers.csv");
        InputFile.marked(folder.resolve("marks.csv"), say("command.file.retake-marks"));
        return MissedSkills.read(
                new Marking.NamedText(
                        InputFile.shown(answers),
                        InputFile.marked(answers, say("command.file.retake-answers"))
                                .text()),
                ProblemSet.of(plan, library).id(1),
                template -> library.has(template) ? library.template(template).skill() : template);
    }
}
