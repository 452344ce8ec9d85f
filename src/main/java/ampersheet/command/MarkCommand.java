package ampersheet.command;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Severity;
import ampersheet.issue.MarkedFolder;
import ampersheet.marking.EarlierMarks;
import ampersheet.marking.MarkForms;
import ampersheet.marking.Marking;
import ampersheet.marking.ReceivedList;
import ampersheet.sheet.Roster;
import ampersheet.source.Languages;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "mark",
        sortOptions = false,
        description = "command.mark.help",
        footer = {
            "",
            "command.mark.footer.read",
            "command.mark.footer.written",
            "command.mark.footer.contradictions",
            "command.mark.footer.bounds",
            "command.mark.footer.exit-code"
        })
final class MarkCommand implements Callable<Integer> {
    /** More would push the result off a terminal. */
    private static final int MOST_NOTES = 40;

    private final Streams streams;

    @Parameters(paramLabel = "ANSWERS", descriptionKey = "command.mark.help.answers")
    private Path answers;

    @Option(names = "--roster", required = true, paramLabel = "CLASS.csv", descriptionKey = "command.help.class-list")
    private Path roster;

    @Option(names = "--out", required = true, paramLabel = "DIR", descriptionKey = "command.mark.help.out")
    private Path out;

    @Option(names = "--pseudonyms", descriptionKey = "command.mark.help.pseudonyms")
    private boolean pseudonyms;

    @Option(names = "--received", paramLabel = "TIMES.csv", descriptionKey = "command.mark.help.received")
    private Path received;

    @Option(names = "--due", paramLabel = "TIME", descriptionKey = "command.mark.help.due")
    private String due;

    @Option(names = "--before", paramLabel = "MARKS.csv", descriptionKey = "command.mark.help.before")
    private Path before;

    @Option(names = "--decisions", paramLabel = "DECISIONS.csv", descriptionKey = "command.mark.help.decisions")
    private Path decisions;

    @Option(names = "--also", split = ",", paramLabel = "FORM", descriptionKey = "command.mark.help.also")
    private List<String> also = List.of();

    @Mixin
    private OtherSheetsOption others;

    @Mixin
    private EraseOptions erase;

    @Option(names = "--json", descriptionKey = "command.mark.help.as-json")
    private boolean json;

    private int removed;

    @Mixin
    private OutputOptions output;

    @Mixin
    private IssuedWithOption issuedWith;

    @Mixin
    HelpOptions help;

    MarkCommand(Streams streams) {
        this.streams = streams;
    }

    @Override
    public Integer call() {
        if (!Files.isDirectory(answers)) {
            throw new WrongUsage(
                    InputFile.shown(answers),
                    say("command.mark.answers"),
                    say("command.mark.answers.expected"),
                    say("command.path.next"));
        }
        Surroundings.present().requireReadableNames(answers);
        requireApart();
        Roster learners = RosterFile.read(roster);
        IssuedWithOption.Issued issued = issuedWith.read();
        if (erase.isWished()) {
            erase.requireSeat(learners, roster);
            boolean done = erase.tellAndDo(
                    Marking.erasure(
                            task(issued, learners),
                            erase.seat(),
                            Optional.ofNullable(decisions),
                            Optional.ofNullable(received)),
                    streams,
                    json);
            if (!done) {
                return CommandTree.FINE;
            }
            learners = learners.without(erase.seat());
        }
        return mark(task(issued, learners));
    }

    private Marking.Task task(IssuedWithOption.Issued issued, Roster learners) {
        return new Marking.Task(
                answers,
                issued.sheets(),
                issued.corrections(),
                learners,
                text(received, say("command.file.times")),
                due(),
                Optional.ofNullable(before)
                        .map(marks -> EarlierMarks.read(
                                InputFile.shown(marks),
                                InputFile.marked(marks, say("command.file.earlier-marks"))
                                        .text())),
                text(decisions, say("command.file.decisions")),
                others.than(issued.sheets().code()),
                pseudonyms);
    }

    private int mark(Marking.Task task) {
        MarkedFolder.Written written = MarkedFolder.write(
                task,
                out,
                forms(),
                output.terms(streams, false, inputs()),
                (made, output) -> erase.isWished() ? erase.removeTables(out, made, output) : List.of());
        Marking.Marked marked = written.marked();
        removed = written.removed();
        written.left().forEach(note -> streams.err().print(note.print()));
        marked.notes().stream().limit(MOST_NOTES).forEach(note -> streams.err().print(note.print()));
        if (marked.notes().size() > MOST_NOTES) {
            streams.err()
                    .print(count(
                                    "command.mark.more-notes",
                                    marked.notes().size() - MOST_NOTES,
                                    "file",
                                    InputFile.shown(out.resolve("set-aside.csv")))
                            + "\n");
        }
        if (json) {
            streams.line(Json.of(json -> write(json, marked)));
        } else {
            tell(marked);
        }
        boolean faults = marked.notes().stream().anyMatch(note -> note.severity() == Severity.ERROR);
        return faults ? CommandTree.PROBLEMS_FOUND : CommandTree.FINE;
    }

    private List<MarkForms> forms() {
        return also.stream()
                .map(word -> MarkForms.named(word)
                        .orElseThrow(() -> new WrongUsage(
                                "--also",
                                say("command.mark.form", "form", word),
                                say("command.mark.form.expected"),
                                say("command.mark.form.next"))))
                .distinct()
                .toList();
    }

    private Path[] inputs() {
        List<Path> inputs = new ArrayList<>(issuedWith.files());
        inputs.addAll(Stream.of(roster, received, before, decisions)
                .filter(Objects::nonNull)
                .toList());
        return inputs.toArray(Path[]::new);
    }

    /** What is written must not be read as an answer: not in this run, and not in the next. */
    private void requireApart() {
        Path read = real(answers);
        Path pages = real(out.resolve("feedback"));
        if (real(out).startsWith(read) || read.startsWith(pages)) {
            throw new WrongUsage(
                    "--out",
                    real(out).equals(read)
                            ? say("command.mark.out-among", "answers", InputFile.shown(answers))
                            : say("command.mark.out-within", "answers", InputFile.shown(answers)),
                    say("command.mark.out-within.expected"),
                    say("command.mark.out-within.next", "folder", InputFile.shown(answers.resolveSibling("marks"))));
        }
    }

    /** Where a path leads, as far as it exists: links followed, dots resolved. */
    private static Path real(Path path) {
        Path absolute = path.toAbsolutePath().normalize();
        for (Path there = absolute; there != null; there = there.getParent()) {
            try {
                return there.toRealPath().resolve(there.relativize(absolute)).normalize();
            } catch (IOException missing) {
                // The folder above it may exist.
                continue;
            }
        }
        return absolute;
    }

    private static Optional<Marking.NamedText> text(Path file, String what) {
        return file == null
                ? Optional.empty()
                : Optional.of(new Marking.NamedText(
                        InputFile.shown(file), InputFile.table(file, what).text()));
    }

    private Optional<LocalDateTime> due() {
        if (due == null) {
            return Optional.empty();
        }
        if (received == null) {
            throw new WrongUsage(
                    "--due", say("command.mark.due"), say("command.mark.due.expected"), say("command.mark.due.next"));
        }
        return Optional.of(ReceivedList.time(due)
                .orElseThrow(() -> new WrongUsage(
                        "--due",
                        say("command.mark.time", "time", due),
                        say("command.mark.time.expected"),
                        say("command.mark.time.next"))));
    }

    private void tell(Marking.Marked marked) {
        String[] cameIn = {
            "answers",
            count("command.count.answers", marked.answers()),
            "files",
            count("command.count.files", marked.files()),
            "learners",
            count("command.count.learners", marked.learners())
        };
        streams.line(
                marked.absent() == 0
                        ? say("command.mark.came-in", cameIn)
                        : count("command.mark.came-in-without", marked.absent(), cameIn));
        if (removed > 0) {
            streams.line(count("command.mark.removed", removed));
        }
        if (marked.late() > 0) {
            streams.line(count("command.mark.late", marked.late()));
        }
        if (marked.setAside() > 0) {
            streams.line(count("command.mark.set-aside", marked.setAside(), "file", made("set-aside.csv")));
        }
        if (marked.toDecide() > 0) {
            streams.line(count("command.mark.to-decide", marked.toDecide(), "file", made("decide.csv")));
        }
        tellChanges(marked);
        String first = say("command.label.open-first");
        String show = say("command.label.show");
        String handOut = say("command.label.hand-out");
        String keep = say("command.label.keep");
        LabelColumn labels = LabelColumn.of(first, show, handOut, keep);
        streams.line("");
        streams.line(labels.line(first, made("report.html")));
        streams.line(labels.line(show, made("projector.html")));
        streams.line(labels.line(
                handOut, say("command.mark.hand-out", "pages", made("feedback"), "list", made("send.csv"))));
        streams.line(labels.line(keep, made("marks.csv")));
    }

    private void tellChanges(Marking.Marked marked) {
        if (!marked.corrected().isEmpty()) {
            streams.line(count("command.mark.corrected", marked.corrected().size(), "file", made("corrections.csv")));
            marked.corrected().stream()
                    .limit(MOST_NOTES)
                    .forEach(one -> streams.line("  "
                            + say(
                                    "command.mark.corrected.one-of-them",
                                    "sheet",
                                    one.sheet(),
                                    "question",
                                    one.verdict().question(),
                                    "before",
                                    one.verdict().toldBefore(Languages.ENGLISH),
                                    "now",
                                    one.verdict().toldNow(Languages.ENGLISH))));
        }
        if (before != null) {
            streams.line(
                    marked.changed() == 0
                            ? say("command.mark.unchanged")
                            : count("command.mark.changed", marked.changed(), "file", made("changes.csv")));
        }
    }

    /** A file among the results. */
    private String made(String name) {
        return InputFile.shown(out.resolve(name));
    }

    private void write(Json json, Marking.Marked marked) {
        json.number("learners", marked.learners())
                .number("absent", marked.absent())
                .number("files", marked.files())
                .number("late", marked.late())
                .number("answers", marked.answers())
                .number("set_aside", marked.setAside())
                .number("to_decide", marked.toDecide())
                .number("changed", marked.changed());
        json.objects(
                "corrected",
                marked.corrected(),
                (at, one) -> at.text("sheet_id", one.sheet())
                        .text("question", one.verdict().question())
                        .text("template", one.verdict().template())
                        .text("before", one.verdict().toldBefore(Languages.ENGLISH))
                        .text("now", one.verdict().toldNow(Languages.ENGLISH)));
        json.objects(
                "notes",
                marked.notes(),
                (at, note) -> at.text("place", note.place().toString())
                        .text("problem", note.problem())
                        .text("next", note.nextAction()));
    }
}
