package ampersheet.command;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

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
    private static final int MOST_THREADS = 1_000;

    private final Streams streams;

    @Parameters(paramLabel = "PLAN", descriptionKey = "command.help.plan")
    private Path plan;

    @Option(names = "--roster", required = true, paramLabel = "CLASS.csv", descriptionKey = "command.help.class-list")
    private Path roster;

    @Option(names = "--out", required = true, paramLabel = "DIR", descriptionKey = "command.issue.help.out")
    private Path out;

    @Option(names = "--homework", descriptionKey = "command.issue.help.homework")
    private boolean homework;

    @Option(names = "--pdf", descriptionKey = "command.issue.help.as-pdf")
    private boolean pdf;

    @Option(names = "--drawings", descriptionKey = "command.issue.help.drawings")
    private boolean drawings;

    @Option(names = "--threads", paramLabel = "N", defaultValue = "0", descriptionKey = "command.issue.help.threads")
    private int threads;

    @Option(names = "--slice", paramLabel = "K/N", descriptionKey = "command.issue.help.slice")
    private String slice;

    @Option(names = "--join", paramLabel = "N", descriptionKey = "command.issue.help.join")
    private Integer join;

    @Option(names = "--json", descriptionKey = "command.issue.help.as-json")
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
        if (threads < 0 || threads > MOST_THREADS) {
            throw new WrongUsage(
                    "--threads",
                    say("command.issue.threads", "threads", Integer.toString(threads)),
                    say("command.number.expected", "least", "0", "most", Integer.toString(MOST_THREADS)),
                    say("command.issue.threads.next"));
        }
        Roster learners = RosterFile.read(roster, streams);
        int atATime = threads == 0 ? Runtime.getRuntime().availableProcessors() : threads;
        TemplateLibrary library = templates.library();
        PlanFile from = new PlanFile(plan, week, library, out);
        Optional<Inventory> bins = parts.inventory(plan, from.written());
        Plan read = retake.isGiven()
                ? from.toTakeAgain(retake, learners.lastSeat(), bins.isPresent(), streams)
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
            tell(issued, read.portion().only().isEmpty());
        }
        return CommandTree.FINE;
    }

    /** @throws WrongUsage if the parts do not fit together */
    private Optional<Slice> slice() {
        if (join != null && (slice != null || join < 1 || join > Slice.MOST)) {
            throw new WrongUsage(
                    "--join",
                    slice != null ? say("command.issue.join-or-slice") : count("command.issue.join", join),
                    say("command.issue.join.expected", "most", Integer.toString(Slice.MOST)),
                    say("command.issue.join.next"));
        }
        if (slice == null) {
            return Optional.empty();
        }
        return Optional.of(Slice.read(slice)
                .orElseThrow(() -> new WrongUsage(
                        "--slice",
                        say("command.issue.slice", "slice", slice),
                        say("command.issue.slice.expected"),
                        say("command.issue.slice.next"))));
    }

    private void tell(Slice part, SlicedIssue.Sliced made) {
        if (json) {
            print(Json.of(object -> object.text("slice", part.toString())
                    .number("sheets", made.sheets())
                    .number("files_written", made.written())
                    .flag("was_there", made.wasThere())));
            return;
        }
        String sheets = count("command.count.sheets", made.sheets());
        streams.line(
                made.wasThere()
                        ? say(
                                "command.issue.slice.there",
                                "slice",
                                part.toString(),
                                "folder",
                                InputFile.shown(out),
                                "sheets",
                                sheets)
                        : say(
                                "command.issue.slice.made",
                                "slice",
                                part.toString(),
                                "folder",
                                InputFile.shown(out),
                                "sheets",
                                sheets,
                                "files",
                                count("command.count.files", made.written())));
        String then = say("command.label.all-made");
        streams.line(LabelColumn.of(then)
                .line(then, say("command.issue.slice.join", "slices", Integer.toString(part.of()))));
    }

    private void print(String text) {
        streams.line(text);
    }

    /** @param alike whether every learner has all problems of the plan */
    private void tell(Issue.Issued issued, boolean alike) {
        String[] made = {
            "sheets",
            count("command.count.sheets", issued.sheets()),
            "problems",
            count("command.count.problems", issued.problemsPerSheet()),
            "folder",
            InputFile.shown(out),
            "files",
            count("command.count.files", issued.written())
        };
        streams.line(alike ? say("command.issue.issued", made) : say("command.issue.issued.up-to", made));
        long tried = issued.tallies().values().stream().mapToLong(Tally::tried).sum();
        long refused =
                issued.tallies().values().stream().mapToLong(Tally::refused).sum();
        streams.line(count("command.issue.draws", Math.toIntExact(tried), "refused", Long.toString(refused)));
        for (Map.Entry<Refusal, Long> reason :
                Refusals.byReason(issued.tallies()).entrySet()) {
            streams.line("  " + reason.getValue() + " × " + reason.getKey().sentence(Languages.ENGLISH));
        }
        streams.line("");
        String first = say("command.label.open-first");
        String handOut = say("command.label.hand-out");
        String answerIn = say("command.label.answer-in");
        String keep = say("command.label.keep");
        LabelColumn labels = LabelColumn.of(first, handOut, answerIn, keep);
        streams.line(labels.line(first, InputFile.shown(issued.index())));
        streams.line(labels.line(handOut, InputFile.shown(out.resolve("sheets")) + "/"));
        if (homework) {
            streams.line(labels.line(answerIn, InputFile.shown(out.resolve("homework")) + "/"));
        }
        streams.line(labels.line(
                keep,
                say(
                        "command.issue.keep",
                        "keys",
                        InputFile.shown(out.resolve("keys")),
                        "archive",
                        issued.archive().getFileName().toString())));
    }

    /** What must not be handed out by mistake. */
    private List<Diagnostic> leftOver(Issue.LeftOver left) {
        if (left.removed() && left.files() > 0) {
            streams.line(count("command.issue.removed", left.files()));
        }
        List<Diagnostic> notes = new ArrayList<>();
        if (!left.removed()) {
            left.byIssue()
                    .forEach((issue, files) -> notes.add(Diagnostic.warning(
                            Place.inFile(InputFile.shown(out)),
                            told(left, issue, files),
                            "",
                            say("command.issue.left.next"))));
        }
        return notes;
    }

    private static String told(Issue.LeftOver left, String issue, List<String> files) {
        String first = String.join(", ", files.subList(0, Math.min(MOST_NAMED, files.size())));
        String named = files.size() > MOST_NAMED
                ? say("folder.and-more", "files", first, "more", Integer.toString(files.size() - MOST_NAMED))
                : first;
        if (issue.equals(left.issue())) {
            return count("command.issue.left.same", files.size(), "files", named);
        }
        return Issue.LeftOver.isKnown(issue)
                ? count("command.issue.left.other-issue", files.size(), "issue", issue, "files", named)
                : count("command.issue.left.earlier", files.size(), "files", named);
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
