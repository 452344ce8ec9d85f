package ampersheet.command;

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
    private EraseOptions erase;

    @Option(names = "--json", descriptionKey = "command.mark.help.json")
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
                    "there is no such folder of answers",
                    "a folder with the files that learners sent",
                    "Check the path.");
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
                text(received, "a list of times"),
                due(),
                text(before, "marks of an earlier run").map(text -> EarlierMarks.read(text.file(), text.text())),
                text(decisions, "a list of decisions"),
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
                    .print("and " + count(marked.notes().size() - MOST_NOTES, "more note")
                            + "; --json tells all. Every answer " + "that did not count is in "
                            + InputFile.shown(out.resolve("set-aside.csv")) + ".\n");
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
                                "“" + word + "” is no form of a table of marks",
                                "xlsx, semicolons or bom",
                                "Write one of them, or several with commas between them.")))
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
                    "the results would lie " + (real(out).equals(read) ? "among" : "within") + " the answers, "
                            + InputFile.shown(answers) + ", and be read as answers the next time",
                    "a folder outside the folder of answers",
                    "Give another folder, such as " + InputFile.shown(answers.resolveSibling("marks")) + ".");
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
                    "--due",
                    "nothing tells when the files came in",
                    "--received with a list of times",
                    "Write the list; a file's own date is not trusted, for it changes when the file is copied.");
        }
        return Optional.of(ReceivedList.time(due)
                .orElseThrow(() -> new WrongUsage(
                        "--due",
                        "“" + due + "” is not a date and time",
                        "such as 2026-03-05T18:00",
                        "Write year, month and day, a T, hours and minutes.")));
    }

    private void tell(Marking.Marked marked) {
        streams.line(count(marked.answers(), "answer") + " in " + count(marked.files(), "file") + " from "
                + count(marked.learners(), "learner")
                + (marked.absent() == 0 ? "" : "; nothing from " + count(marked.absent(), "seat")));
        if (removed > 0) {
            streams.line(count(removed, "feedback page") + " of an earlier run removed: nothing came in from "
                    + (removed == 1 ? "that seat" : "those seats") + " now");
        }
        if (marked.late() > 0) {
            streams.line(count(marked.late(), "file") + " late");
        }
        if (marked.setAside() > 0) {
            streams.line(count(marked.setAside(), "answer") + " set aside, in "
                    + InputFile.shown(out.resolve("set-aside.csv")));
        }
        if (marked.toDecide() > 0) {
            streams.line(
                    count(marked.toDecide(), "line") + " to decide, in " + InputFile.shown(out.resolve("decide.csv")));
        }
        if (!marked.corrected().isEmpty()) {
            streams.line(count(marked.corrected().size(), "verdict") + " changed by corrections of the keys, in "
                    + InputFile.shown(out.resolve("corrections.csv")));
            marked.corrected().stream()
                    .limit(MOST_NOTES)
                    .forEach(one -> streams.line(
                            "  " + one.sheet() + " " + one.verdict().question() + ": before "
                                    + one.verdict().toldBefore(Languages.ENGLISH) + ", now "
                                    + one.verdict().toldNow(Languages.ENGLISH)));
        }
        if (before != null) {
            streams.line(
                    marked.changed() == 0
                            ? "No mark changed."
                            : count(marked.changed(), "mark") + " changed, in "
                                    + InputFile.shown(out.resolve("changes.csv")));
        }
        streams.line("");
        streams.line("Open first:  " + InputFile.shown(out.resolve("report.html")));
        streams.line("Show:        " + InputFile.shown(out.resolve("projector.html")));
        streams.line("Hand out:    " + InputFile.shown(out.resolve("feedback")) + "/, to whom by "
                + InputFile.shown(out.resolve("send.csv")));
        streams.line("Keep:        " + InputFile.shown(out.resolve("marks.csv")));
    }

    private static String count(long number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
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
