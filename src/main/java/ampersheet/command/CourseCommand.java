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
    private static final String MARKS = "marks.csv";
    /** What folders of marks are called in a course folder; with a code those of sheets that were given out later. */
    private static final String IN_COURSE = "marks(-[0-9A-Z]{5})?";

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
        List<Path> leftOut = new ArrayList<>();
        for (Found week : weeks(leftOut)) {
            Path marks = week.marked().resolve(MARKS);
            Path answers = week.marked().resolve("answers.csv");
            inputs.addAll(List.of(marks, answers));
            weeks.add(new MarkedWeeks.Week(
                    week.name(),
                    new Marking.NamedText(
                            InputFile.shown(marks),
                            InputFile.marked(marks, say("command.file.marks")).text()),
                    new Marking.NamedText(
                            InputFile.shown(answers),
                            InputFile.marked(answers, say("command.file.answers"))
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
        leftOut.forEach(marked -> streams.line(say("command.course.left-out", "folder", InputFile.shown(marked))));
        streams.line("");
        String first = say("command.label.open-first");
        streams.line(LabelColumn.of(first).line(first, InputFile.shown(out.resolve("course.html"))));
        return CommandTree.FINE;
    }

    /** A folder of marks, by what its week is called. */
    private record Found(String name, Path marked) {}

    /**
     * One folder of marks for each week.
     *
     * @param leftOut takes those that are there as well
     */
    private List<Found> weeks(List<Path> leftOut) {
        List<Path> all = within(folder);
        // where weeks are marked as in a course folder, the marks of its set lie beside them
        boolean isOfCourse = all.stream().anyMatch(week -> !marksIn(week).isEmpty());
        List<Found> weeks = new ArrayList<>();
        for (Path week : all) {
            String name = week.getFileName().toString();
            List<Path> marked = new ArrayList<>(marksIn(week));
            if (isMarked(week)) {
                marked.add(week);
            }
            if (!marked.isEmpty() && !(isOfCourse && name.matches(IN_COURSE))) {
                weeks.add(new Found(name, marked.remove(0)));
            }
            leftOut.addAll(marked);
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

    /** Where marks of a week lie in a course folder, those of the sheets that were marked first before the others. */
    private static List<Path> marksIn(Path week) {
        return Files.isDirectory(week) && Files.isReadable(week)
                ? within(week).stream()
                        .filter(marks -> marks.getFileName().toString().matches(IN_COURSE) && isMarked(marks))
                        .toList()
                : List.of();
    }

    private static List<Path> within(Path folder) {
        try (Stream<Path> within = Files.list(folder)) {
            return within.sorted(Comparator.comparing(
                            one -> inOrder(one.getFileName().toString())))
                    .toList();
        } catch (IOException failure) {
            throw new WrongUsage(
                    InputFile.shown(folder),
                    say("command.course.unreadable"),
                    say("command.course.unreadable.expected"),
                    say("command.path.next"));
        }
    }

    private static boolean isMarked(Path folder) {
        return Files.isRegularFile(folder.resolve(MARKS));
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
