package ampersheet.marking;

import ampersheet.marking.Standing.Item;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.Document.Table;
import ampersheet.sheet.Plan;
import ampersheet.sheet.Roster;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What to do in the next lesson: at most three things to take up again, with whom, by which rule, and what to show; and
 * the page to show it from, on which nobody is named.
 */
final class Tomorrow {
    static final String PROJECTOR = "projector.html";
    /** More names are a list to look up, and marks.csv is one. */
    private static final int MOST_NAMES = 40;

    private final ClassResults results;
    private final Privacy privacy;
    private final Map<Item, String> names;
    private final List<TakeUp> things;
    private final List<Optional<BoardExample>> examples = new ArrayList<>();

    private Tomorrow(ClassResults results, Privacy privacy) {
        this.results = results;
        this.privacy = privacy;
        this.names = results.names();
        this.things = TakeUp.of(results);
    }

    static Tomorrow of(ClassResults results, ClassSheets sheets, Optional<Corrections> corrections, Privacy privacy) {
        Tomorrow tomorrow = new Tomorrow(results, privacy);
        tomorrow.things.forEach(
                thing -> tomorrow.examples.add(BoardExample.find(thing, results.standings(), sheets, corrections)));
        return tomorrow;
    }

    // For the instructor

    /** The beginning of the report. */
    List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Heading(2, "What to do tomorrow"));
        suspicious().ifPresent(blocks::add);
        if (things.isEmpty()) {
            blocks.add(new Prose("No mistake was met by several learners; nothing needs to be taken up with all."));
            return blocks;
        }
        blocks.add(new Prose((things.size() == 1
                        ? "One thing to take up again."
                        : (things.size() == 2 ? "Two" : "Three") + " things to take up again.")
                + " What to show stands in full, and without a name, on " + PROJECTOR + "."));
        for (int i = 0; i < things.size(); i++) {
            thing(i, blocks);
        }
        groups(blocks);
        return blocks;
    }

    /** Nobody should show a class a key that may be wrong. */
    private Optional<Block> suspicious() {
        Map<Item, KeyCheck> found = results.keysToCheck();
        if (found.isEmpty()) {
            return Optional.empty();
        }
        List<String> told = new ArrayList<>();
        found.forEach((item, check) -> told.add("**" + names.get(item) + "** (" + check.reason() + ")"));
        return Optional.of(new Prose("Before you show anything, work these yourself, because their keys may be wrong: "
                + String.join("; ", told) + "."));
    }

    private void thing(int i, List<Block> blocks) {
        TakeUp thing = things.get(i);
        List<Roster.Seat> learners = thing.learners();
        blocks.add(new Heading(3, i + 1 + ". " + title(thing) + ": " + howMany(thing)));
        StringBuilder list = new StringBuilder();
        thing.cause().ifPresent(cause -> line(list, "What learners are told", Statement.escape(cause.says())));
        line(list, "Where", where(thing));
        line(list, "Who", who(learners));
        examples.get(i).ifPresent(example -> {
            rule(example).ifPresent(rule -> line(list, "The rule behind it", rule));
            line(list, "Show", shown(example, true) + comesOut(example) + onSheets(example));
        });
        int right = results.items().get(thing.item()).facility().of();
        if (thing.cause().isPresent() && learners.size() > right) {
            line(
                    list,
                    "Look first",
                    "more learners do this than are right at " + names.get(thing.item())
                            + "; work it once yourself, in case they are right and the key is not");
        }
        blocks.add(new Prose(list.toString()));
        examples.get(i)
                .map(BoardExample::lines)
                .filter(lines -> !lines.isEmpty())
                .ifPresent(lines ->
                        blocks.add(new Steps(lines.size() == 1 ? "The line to show" : "The lines to show", lines)));
    }

    private static void line(StringBuilder list, String head, String text) {
        list.append("- **").append(head).append(":** ").append(text);
        list.append(text.endsWith(".") ? "\n" : ".\n");
    }

    private String title(TakeUp thing) {
        return thing.cause()
                .map(cause -> first(cause.label()))
                .orElse("Wrong in ways that no known mistake explains, " + names.get(thing.item()));
    }

    private static String first(String label) {
        return label.substring(0, 1).toUpperCase(Locale.ROOT) + label.substring(1);
    }

    private String howMany(TakeUp thing) {
        return thing.answers().size() + " of "
                + Amounts.count(results.standings().size(), "learner", "learners");
    }

    private String where(TakeUp thing) {
        return String.join(
                "; ",
                thing.where().stream()
                        .map(item -> "**" + names.get(item) + "**, the " + results.meaning(item) + " ("
                                + Statement.escape(results.title(item.template())) + ")")
                        .toList());
    }

    private String who(List<Roster.Seat> learners) {
        List<String> told = learners.stream()
                .limit(MOST_NAMES)
                .map(seat -> Statement.escape(privacy.seat(seat)))
                .toList();
        return String.join("; ", told)
                + (learners.size() > MOST_NAMES ? "; and " + (learners.size() - MOST_NAMES) + " more" : "");
    }

    /** That of the line where the mistake is made. */
    private static Optional<String> rule(BoardExample example) {
        return example.lines().stream().findFirst().map(line -> {
            String principle =
                    line.principle().isEmpty() ? "" : "*" + Statement.escape(first(line.principle())) + "*: ";
            return principle + Statement.escape(line.reason());
        });
    }

    private String shown(BoardExample example, boolean whose) {
        return "problem " + example.problem().number()
                + (whose
                        ? " with the numbers of seat " + example.sheet().id().seat() + " (sheet "
                                + example.sheet().id() + ")"
                        : " with these numbers");
    }

    private static String comesOut(BoardExample example) {
        String right = ": right is " + Statement.escape(Composer.answer(example.problem(), example.key()));
        return right
                + example.mistake()
                        .map(mistake -> ", and with the mistake "
                                + Statement.escape(example.problem().mistaken(example.key(), mistake))
                                + " comes out")
                        .orElse("");
    }

    private static String onSheets(BoardExample example) {
        return example.exampleBefore() == 0
                ? ""
                : ". Problem " + example.exampleBefore() + " on every learner's sheet is one like it, worked in full";
    }

    private void groups(List<Block> blocks) {
        List<List<Roster.Seat>> groups = TakeUp.groups(things);
        List<List<Cell>> rows = new ArrayList<>();
        Set<Integer> grouped = new TreeSet<>();
        for (int i = 0; i < groups.size(); i++) {
            List<Roster.Seat> group = groups.get(i);
            group.forEach(seat -> grouped.add(seat.number()));
            rows.add(List.of(
                    new Cell(i + 1 + ". " + title(things.get(i)), ""),
                    new Cell(Integer.toString(group.size()), ""),
                    new Cell(String.join("; ", group.stream().map(privacy::seat).toList()), "")));
        }
        List<String> others = results.standings().stream()
                .map(Standing::seat)
                .filter(seat -> !grouped.contains(seat.number()))
                .map(privacy::seat)
                .toList();
        if (!others.isEmpty()) {
            rows.add(List.of(
                    new Cell("none of these mistakes", ""),
                    new Cell(Integer.toString(others.size()), ""),
                    new Cell(String.join("; ", others), "")));
        }
        blocks.add(new Table(
                "Groups by mistake, each learner in one; who made several stands with the one made by most",
                List.of("Group", "Learners", "Who"),
                rows));
    }

    // For the class

    /** The page to show: no name, no seat, nobody's marks. */
    Document projector(Plan plan) {
        List<Block> blocks = new ArrayList<>();
        if (things.isEmpty()) {
            blocks.add(new Prose("Nothing was wrong that several of you met."));
        }
        for (int i = 0; i < things.size(); i++) {
            TakeUp thing = things.get(i);
            blocks.add(new Heading(2, i + 1 + ". " + onBoard(thing)));
            blocks.add(new Prose(thing.cause()
                            .map(cause ->
                                    "Whoever makes this slip is told: *" + Statement.escape(cause.says()) + "*\n\n")
                            .orElse("")
                    + "Made by " + howMany(thing) + "."));
            examples.get(i).ifPresent(example -> {
                rule(example).ifPresent(rule -> blocks.add(new Prose("**The rule:** " + rule)));
                blocks.addAll(example.worked());
                blocks.add(new Prose("In " + shown(example, false) + comesOut(example) + "."));
            });
        }
        return new Document(
                Kind.REPORT,
                plan.language(),
                "Once more: " + plan.title(),
                "common slips, and how it goes",
                "",
                plan.paper(),
                blocks);
    }

    private String onBoard(TakeUp thing) {
        return thing.cause()
                .map(cause -> first(cause.label()))
                .orElse(first(results.meaning(thing.item())) + " (" + names.get(thing.item()) + ")");
    }
}
