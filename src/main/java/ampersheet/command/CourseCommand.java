package ampersheet.command;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.issue.Output;
import ampersheet.marking.MarkedWeeks;
import ampersheet.marking.Marking;
import ampersheet.source.Languages;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "course",
        sortOptions = false,
        description = "command.course.help",
        footer = {"", "command.course.footer"})
final class CourseCommand implements Callable<Integer> {
    private final Streams streams;

    @Parameters(paramLabel = "FOLDER", descriptionKey = "command.course.help.folder")
    private Path folder;

    @Option(names = "--out", required = true, paramLabel = "DIR", descriptionKey = "command.course.help.out")
    private Path out;

    @Mixin
    private OutputOptions output;

    @Mixin
    private TemplateOptions templates;

    @Mixin
    HelpOptions help;

    CourseCommand(Streams streams) {
        this.streams = streams;
    }

    @Override
    public Integer call() {
        TemplateLibrary library = templates.library();
        List<MarkedWeeks.Week> weeks = new ArrayList<>();
        List<Path> inputs = new ArrayList<>();
        for (Path week : weeks()) {
            Path marked = isMarked(week) ? week : below(week);
            Path marks = marked.resolve("marks.csv");
            Path answers = marked.resolve("answers.csv");
            inputs.addAll(List.of(marks, answers));
            weeks.add(new MarkedWeeks.Week(
                    week.getFileName().toString(),
                    new Marking.NamedText(
                            InputFile.shown(marks),
                            InputFile.table(marks, say("command.file.marks")).text()),
                    new Marking.NamedText(
                            InputFile.shown(answers),
                            InputFile.table(answers, say("command.file.answers"))
                                    .text())));
        }
        MarkedWeeks course = MarkedWeeks.read(
                weeks,
                template -> library.has(template)
                        ? library.template(template).skill()
                        : template.substring(0, Math.max(0, template.indexOf('/'))),
                Languages.ENGLISH);
        try (Output output = Output.folder(out, this.output.terms(streams, false, inputs.toArray(new Path[0])))) {
            output.require(List.of(out.resolve("course.csv"), out.resolve("course.html")));
            output.write(out.resolve("course.csv"), course.table());
            output.write(
                    out.resolve("course.html"),
                    course.page(
                            folder.toAbsolutePath().normalize().getFileName().toString()));
            output.finish();
        }
        streams.line(say(
                "command.course.read",
                "weeks",
                count("command.count.weeks", weeks.size()),
                "learners",
                count("command.count.learners", course.learnerCount())));
        streams.line("");
        String first = say("command.label.open-first");
        streams.line(LabelColumn.of(first).line(first, InputFile.shown(out.resolve("course.html"))));
        return CommandTree.FINE;
    }

    private List<Path> weeks() {
        List<Path> weeks;
        try (Stream<Path> within = Files.list(folder)) {
            List<Path> all = within.sorted(Comparator.comparing(
                            week -> inOrder(week.getFileName().toString())))
                    .toList();
            List<Path> below =
                    all.stream().filter(week -> isMarked(below(week))).toList();
            weeks = below.isEmpty()
                    ? all.stream().filter(CourseCommand::isMarked).toList()
                    : below; // beside the weeks of a course lie the marks of its set
        } catch (IOException failure) {
            throw new WrongUsage(
                    InputFile.shown(folder),
                    say("command.course.unreadable"),
                    say("command.course.unreadable.expected"),
                    say("command.path.next"));
        }
        if (weeks.isEmpty()) {
            throw new WrongUsage(
                    InputFile.shown(folder),
                    say("command.course.no-marks"),
                    say("command.course.no-marks.expected"),
                    say("command.course.no-marks.next", "folder", InputFile.shown(folder.resolve("week-1"))));
        }
        return weeks;
    }

    private static boolean isMarked(Path folder) {
        return Files.isRegularFile(folder.resolve("marks.csv"));
    }

    /** Where the desk keeps the marks of a week. */
    private static Path below(Path week) {
        return week.resolve("marks");
    }

    /** With numbers of equal length, so that 2 comes before 10. */
    private static String inOrder(String name) {
        StringBuilder padded = new StringBuilder();
        StringBuilder digits = new StringBuilder();
        for (char c : (name + "\0").toCharArray()) {
            if (c >= '0' && c <= '9') {
                digits.append(c);
            } else {
                padded.append(digits.length() > 0 ? "0".repeat(Math.max(0, 9 - digits.length())) : "")
                        .append(digits)
                        .append(c);
                digits.setLength(0);
            }
        }
        return padded.toString();
    }
}
