package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.marking.Marking;
import ampersheet.marking.MissedSkills;
import ampersheet.sheet.IssuedPart;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Retake;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
                .flatMap(named -> isArchive(named)
                        ? Stream.of(named)
                        : Stream.of(named.resolve("marks.csv"), named.resolve("answers.csv")))
                .toList();
    }

    private static boolean isArchive(Path named) {
        return named.getFileName().toString().endsWith(".zip") && !Files.isDirectory(named);
    }

    /**
     * A time before, where its archive is named instead of the marks by which it was made.
     *
     * @param round from 1
     * @param plan that is taken again
     */
    Optional<IssuedPart> archived(int round, Plan plan, TemplateLibrary library) {
        Path named = marks.get(round - 1);
        if (!isArchive(named)) {
            return Optional.empty();
        }
        if (round == marks.size()) {
            throw new WrongUsage(
                    "--retake",
                    say("command.retake.archive-last", "archive", InputFile.shown(named)),
                    say("command.retake.archive-last.expected"),
                    say("command.retake.archive-last.next"));
        }
        Optional<IssuedPart> part =
                IssuedPart.read(named, plan.seed(), library).filter(one -> Retake.isRound(plan, round, one.plan()));
        if (part.isEmpty()) {
            throw new WrongUsage(
                    InputFile.shown(named),
                    say("command.retake.archive-other", "round", Integer.toString(round)),
                    say("command.retake.archive-other.expected"),
                    say("command.retake.archive-other.next"));
        }
        return part;
    }

    /**
     * Skills by seat, as the sheets of this plan were marked.
     *
     * @param round for which they are to be taken again, from 1
     */
    Map<Integer, Set<String>> missed(int round, Plan plan, TemplateLibrary library) {
        Path folder = marks.get(round - 1);
        Path answers = folder.resolve("answers.csv");
        InputFile.table(folder.resolve("marks.csv"), say("command.file.retake-marks"));
        return MissedSkills.read(
                new Marking.NamedText(
                        InputFile.shown(answers),
                        InputFile.table(answers, say("command.file.retake-answers"))
                                .text()),
                ProblemSet.of(plan, library).id(1),
                template -> library.has(template) ? library.template(template).skill() : template);
    }
}
