package ampersheet.command;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.issue.Issue;
import ampersheet.issue.Output;
import ampersheet.issue.Slice;
import ampersheet.issue.SlicedIssue;
import ampersheet.problem.Inventory;
import ampersheet.problem.Refusal;
import ampersheet.problem.Tally;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.source.Languages;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "issue",
        sortOptions = false,
        description = "command.issue.help",
        footer = {"", "command.issue.footer.files", "", "command.issue.footer.repeats"})
final class IssueCommand implements Callable<Integer> {
    private static final int MOST_NAMED = 4;

    private final Streams streams;

    @Parameters(paramLabel = "PLAN", descriptionKey = "command.help.plan")
    private Path plan;

    @Option(names = "--roster", required = true, paramLabel = "CLASS.csv", descriptionKey = "command.help.class-list")
    private Path roster;

    @Option(names = "--out", required = true, paramLabel = "DIR", descriptionKey = "command.issue.help.out")
    private Path out;

    @Option(names = "--homework", descriptionKey = "command.issue.help.homework")
    private boolean homework;

    @Option(names = "--pdf", descriptionKey = "command.issue.help.pdf")
    private boolean pdf;

    @Option(names = "--drawings", descriptionKey = "command.issue.help.drawings")
    private boolean drawings;

    @Option(names = "--threads", paramLabel = "N", defaultValue = "0", descriptionKey = "command.issue.help.threads")
    private int threads;

    @Option(names = "--slice", paramLabel = "K/N", descriptionKey = "command.issue.help.slice")
    private String slice;

    @Option(names = "--join", paramLabel = "N", descriptionKey = "command.issue.help.join")
    private Integer join;

    @Option(names = "--json", descriptionKey = "command.issue.help.json")
    private boolean json;

    @Option(names = "--clean", descriptionKey = "command.issue.help.clean")
    private boolean clean;

    @Mixin
    private WeekOption week;

    @Mixin
    private RetakeOption retake;

    @Mixin
    private OutputOptions output;

    @Mixin
    private FontOption font;

    @Mixin
    private PartsOption parts;

    @Mixin
    private TemplateOptions templates;

    @Mixin
    HelpOptions help;

    IssueCommand(Streams streams) {
        this.streams = streams;
    }

    @Override
    public Integer call() {
        if (threads < 0 || threads > 1_000) {
            throw new WrongUsage(
                    "--threads",
                    threads + " sheets cannot be made at a time",
                    "a number from 0 to 1000",
                    "Leave it out to use all processors.");
        }
        Roster learners = RosterFile.read(roster, streams);
        int atATime = threads == 0 ? Runtime.getRuntime().availableProcessors() : threads;
        TemplateLibrary library = templates.library();
        PlanFile from = new PlanFile(plan, week, library);
        Optional<Inventory> bins = parts.inventory(plan, from.written());
        Plan read = retake.isGiven()
                ? from.toTakeAgain(retake, learners.lastSeat(), streams)
                : from.toHandOut(
                        streams, titled -> Files.exists(Issue.archive(ProblemSet.of(titled, library, bins), out)));
        Optional<Slice> part = slice();
        ProblemSet set = ProblemSet.of(read, library, bins);
        Issue.Besides besides = new Issue.Besides(homework, pdf, drawings, font.read());
        Output.Terms terms = output.terms(
                streams,
                clean,
                Stream.concat(
                                Stream.of(plan, roster, parts.file(plan, from.written()), font.file()),
                                retake.files().stream())
                        .toArray(Path[]::new));
        SlicedIssue sliced = new SlicedIssue(set, learners, out, besides, terms);
        if (part.isPresent()) {
            tell(part.get(), sliced.write(part.get(), atATime));
            return CommandTree.FINE;
        }
        Issue.Issued issued =
                join == null ? Issue.issue(set, learners, out, atATime, besides, terms) : sliced.join(join);
        leftOver(issued.left()).forEach(note -> streams.err().print(note.print()));
        if (json) {
            print(Json.of(json -> write(json, issued)));
        } else {
            tell(issued, read.portion().only().isEmpty() ? "" : "up to ");
        }
        return CommandTree.FINE;
    }

    /** @throws WrongUsage if the parts do not fit together */
    private Optional<Slice> slice() {
        if (join != null && (slice != null || join < 1 || join > Slice.MOST)) {
            throw new WrongUsage(
                    "--join",
                    slice != null ? "--slice makes a part, and --join puts them together" : join + " slices",
                    "one of the two; --join with a number from 1 to " + Slice.MOST,
                    "Run each slice first, then the same command with --join alone.");
        }
        if (slice == null) {
            return Optional.empty();
        }
        return Optional.of(Slice.read(slice)
                .orElseThrow(() -> new WrongUsage(
                        "--slice",
                        "\"" + slice + "\" names no slice",
                        "K/N, such as 3/10: the third of ten",
                        "Write a K from 1 to N.")));
    }

    private void tell(Slice part, SlicedIssue.Sliced made) {
        if (json) {
            print(Json.of(object -> object.text("slice", part.toString())
                    .number("sheets", made.sheets())
                    .number("files_written", made.written())
                    .flag("was_there", made.wasThere())));
            return;
        }
        streams.line("Slice " + part + " in " + InputFile.shown(out) + ": "
                + count(made.sheets(), "sheet")
                + (made.wasThere()
                        ? " there and right"
                        : " with keys (" + count(made.written(), "file") + " written)"));
        streams.line("When all are made:  the same command with --join " + part.of() + " instead of --slice");
    }

    private void print(String text) {
        streams.line(text);
    }

    private void tell(Issue.Issued issued, String upTo) {
        streams.line(count(issued.sheets(), "sheet") + " of " + upTo + count(issued.problemsPerSheet(), "problem")
                + ", each with its " + "key, in " + InputFile.shown(out) + " (" + count(issued.written(), "file")
                + " written)");
        long tried = issued.tallies().values().stream().mapToLong(Tally::tried).sum();
        long refused =
                issued.tallies().values().stream().mapToLong(Tally::refused).sum();
        streams.line(count(tried, "draw") + " tried, " + refused + " refused");
        for (Map.Entry<Refusal, Long> reason :
                Refusals.byReason(issued.tallies()).entrySet()) {
            streams.line("  " + reason.getValue() + " × " + reason.getKey().sentence(Languages.ENGLISH));
        }
        streams.line("");
        streams.line("Open first:  " + InputFile.shown(issued.index()));
        streams.line("Hand out:    " + InputFile.shown(out.resolve("sheets")) + "/");
        if (homework) {
            streams.line("Answer in:   " + InputFile.shown(out.resolve("homework")) + "/");
        }
        streams.line("Keep:        " + InputFile.shown(out.resolve("keys")) + "/, with its archive "
                + issued.archive().getFileName());
    }

    /** What must not be handed out by mistake. */
    private List<Diagnostic> leftOver(Issue.LeftOver left) {
        if (left.removed() && left.files() > 0) {
            streams.line(count(left.files(), "file") + " of earlier runs removed");
        }
        List<Diagnostic> notes = new ArrayList<>();
        if (!left.removed()) {
            left.byIssue().forEach((issue, files) -> {
                boolean same = issue.equals(left.issue());
                String which = same
                        ? "of this same issue, not written now"
                        : Issue.LeftOver.isKnown(issue)
                                ? "of another issue, whose sheet IDs begin with " + issue
                                : "of an earlier run";
                notes.add(Diagnostic.warning(
                        Place.inFile(InputFile.shown(out)),
                        "here " + (files.size() == 1 ? "is " : "are ")
                                + count(files.size(), "file") + " " + which + ": "
                                + String.join(", ", files.subList(0, Math.min(MOST_NAMED, files.size())))
                                + (files.size() > MOST_NAMED ? " and " + (files.size() - MOST_NAMED) + " more" : ""),
                        "",
                        "Hand out none of them by mistake; the same command with --clean removes them. "
                                + "manifest.csv tells of each."));
            });
        }
        return notes;
    }

    private static String count(long number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }

    private void write(Json json, Issue.Issued issued) {
        json.number("sheets", issued.sheets())
                .number("problems_per_sheet", issued.problemsPerSheet())
                .number("files_written", issued.written())
                .text("index", InputFile.shown(issued.index()))
                .text("archive", InputFile.shown(issued.archive()))
                .texts(
                        "left_over",
                        issued.left().byIssue().values().stream()
                                .flatMap(List::stream)
                                .toList())
                .flag("left_over_removed", issued.left().removed());
        List<Map.Entry<String, Tally>> tallies =
                new ArrayList<>(issued.tallies().entrySet());
        json.objects(
                "templates",
                tallies,
                (at, entry) -> Refusals.write(at.text("template", entry.getKey()), entry.getValue()));
    }
}
