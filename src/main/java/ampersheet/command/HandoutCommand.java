package ampersheet.command;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.issue.BenchCardFile;
import ampersheet.issue.Handouts;
import ampersheet.issue.Output;
import ampersheet.issue.PaperCount;
import ampersheet.problem.Inventory;
import ampersheet.render.pdf.Profile;
import ampersheet.sheet.Document;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetId;
import ampersheet.source.Languages;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "handout",
        sortOptions = false,
        description = "command.handout.help",
        footer = {"", "command.handout.footer"})
final class HandoutCommand implements Callable<Integer> {
    private final Streams streams;

    @Parameters(paramLabel = "PLAN", descriptionKey = "command.help.plan")
    private Path plan;

    @ArgGroup(multiplicity = "1")
    private Learners learners;

    /** Either a number or a list. */
    static final class Learners {
        @Option(names = "--copies", paramLabel = "N", descriptionKey = "command.handout.help.copies")
        private Integer copies;

        @Option(names = "--roster", paramLabel = "CLASS.csv", descriptionKey = "command.help.class-list")
        private Path roster;
    }

    @Option(names = "--out", required = true, paramLabel = "FILE.pdf", descriptionKey = "command.handout.help.out")
    private Path out;

    @Option(
            names = "--paper",
            paramLabel = "PAPER",
            converter = PaperName.class,
            descriptionKey = "command.handout.help.paper")
    private Optional<Document.Paper> paper = Optional.empty();

    @Option(
            names = "--profile",
            paramLabel = "PROFILE",
            defaultValue = "COMPACT",
            descriptionKey = "command.handout.help.profile")
    private Profile profile;

    @Option(names = "--keys", paramLabel = "WHERE", defaultValue = "GRID", descriptionKey = "command.handout.help.keys")
    private Handouts.Keys keys;

    @Option(names = "--cards", descriptionKey = "command.handout.help.cards")
    private boolean cards;

    @Option(names = "--booklet", descriptionKey = "command.handout.help.booklet")
    private boolean booklet;

    @Option(names = "--shared-examples", descriptionKey = "command.handout.help.shared-examples")
    private boolean sharedExamples;

    @Option(names = "--no-host", descriptionKey = "command.handout.help.no-host")
    private boolean noHost;

    @Option(names = "--only-count", descriptionKey = "command.handout.help.only-count")
    private boolean onlyCount;

    @Option(names = "--no-check-letters", descriptionKey = "command.handout.help.no-check-letters")
    private boolean noCheckLetters;

    @Option(names = "--json", descriptionKey = "command.handout.help.as-json")
    private boolean json;

    @Mixin
    private FontOption font;

    @Mixin
    private WeekOption week;

    @Mixin
    private RetakeOption retake;

    @Mixin
    private OutputOptions output;

    @Mixin
    private PartsOption parts;

    @Mixin
    private TemplateOptions templates;

    @Mixin
    HelpOptions help;

    HandoutCommand(Streams streams) {
        this.streams = streams;
    }

    @Override
    public Integer call() {
        if (cards && onlyCount) {
            throw new WrongUsage(
                    "--only-count",
                    say("command.handout.only-count"),
                    say("command.handout.only-count.expected"),
                    say("command.leave-one-out.next"));
        }
        refuseOtherBooklets();
        TemplateLibrary library = templates.library();
        PlanFile from = new PlanFile(plan, week, library, out);
        Optional<Inventory> bins = parts.inventory(plan, from.written());
        Roster learners = roster();
        Plan read = plan(from, library, bins, learners);
        Document.Paper leaf = paper.orElse(read.paper());
        Handouts.Wish wish = new Handouts.Wish(
                booklet ? leaf.folded() : leaf, profile, keys, !noCheckLetters, !noHost, sharedExamples, font.read());
        ProblemSet set = ProblemSet.of(read, library, bins);
        Output.Terms terms = output.terms(
                streams,
                false,
                Stream.concat(
                                Stream.of(plan, this.learners.roster, parts.file(plan, from.written()), font.file()),
                                retake.files().stream())
                        .toArray(Path[]::new));
        if (cards) {
            new CardsPrinted(streams, BenchCardFile.print(set, learners, out, wish, terms)).tell(json);
            return CommandTree.FINE;
        }
        Handouts.Printed printed = Handouts.print(set, learners, out, wish, terms, this::goOn);
        printed.left()
                .ifPresent(keys -> streams.err()
                        .print(Diagnostic.warning(
                                        Place.inFile(InputFile.shown(keys)),
                                        say("command.handout.keys"),
                                        "",
                                        say("command.handout.keys.next"))
                                .print()));
        if (json) {
            streams.line(Json.of(json -> json.number("sheets", printed.sheets())
                    .number("sides", printed.sides())
                    .number("files_written", printed.written())
                    .texts(
                            "files",
                            printed.files().stream().map(InputFile::shown).toList())
                    .text("answer_grid", InputFile.shown(printed.grid()))
                    .text("archive", InputFile.shown(printed.archive()))));
        } else if (!onlyCount) {
            tell(printed);
        }
        return CommandTree.FINE;
    }

    private Plan plan(PlanFile from, TemplateLibrary library, Optional<Inventory> bins, Roster learners) {
        return retake.isGiven()
                ? from.toTakeAgain(retake, learners.lastSeat(), bins.isPresent(), streams)
                : from.toHandOut(
                        streams,
                        titled -> Files.exists(Handouts.archiveBeside(out, ProblemSet.of(titled, library, bins))));
    }

    /** @param what was printed, and how many of it */
    static String printed(String what, int sides, int files) {
        return say(
                "command.printed",
                "what",
                what,
                "sides",
                count("command.count.sides", sides),
                "files",
                count("command.count.files", files));
    }

    private void tell(Handouts.Printed printed) {
        streams.line(printed(count("command.count.sheets", printed.sheets()), printed.sides(), printed.written()));
        printed.files().forEach(file -> streams.line("  " + InputFile.shown(file)));
        streams.line("  " + InputFile.shown(printed.grid()) + "   " + say("command.handout.grid"));
        streams.line("  " + InputFile.shown(printed.archive()) + "   " + say("command.handout.archive"));
        streams.line(booklet ? say("command.handout.print-booklets") : say("command.handout.print"));
    }

    private void refuseOtherBooklets() {
        if (booklet && cards) {
            throw new WrongUsage(
                    "--booklet",
                    say("command.handout.booklet-or-cards"),
                    say("command.handout.booklet-or-cards.expected"),
                    say("command.leave-one-out.next"));
        }
        if (booklet && profile != Profile.COMPACT) {
            throw new WrongUsage(
                    "--booklet",
                    say("command.handout.booklet-profile"),
                    say("command.handout.booklet-profile.expected"),
                    say("command.leave-one-out.next"));
        }
    }

    private boolean goOn(PaperCount paper) {
        if (!json) {
            streams.line(paper.sentence(Languages.ENGLISH));
            paper.saving().ifPresent(streams::line);
        }
        return !onlyCount;
    }

    private Roster roster() {
        if (learners.roster != null) {
            return RosterFile.read(learners.roster, streams);
        }
        if (learners.copies < 1 || learners.copies > SheetId.LAST_SEAT) {
            throw new WrongUsage(
                    "--copies",
                    say("command.handout.copies", "copies", learners.copies.toString()),
                    say("command.number.expected", "least", "1", "most", Integer.toString(SheetId.LAST_SEAT)),
                    say("command.handout.copies.next"));
        }
        List<Roster.Seat> seats = new ArrayList<>();
        for (int seat = 1; seat <= learners.copies; seat++) {
            seats.add(new Roster.Seat(seat, ""));
        }
        return new Roster(seats);
    }
}
