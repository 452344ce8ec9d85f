package ampersheet.marking;

import ampersheet.language.Language;
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

    private final Language language;
    private final ClassResults results;
    private final Privacy privacy;
    private final Map<Item, String> names;
    private final List<TakeUp> things;
    private final List<Optional<BoardExample>> examples = new ArrayList<>();

    private Tomorrow(ClassResults results, Privacy privacy) {
        this.language = results.language();
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
        blocks.add(new Heading(2, language.say("report.tomorrow")));
        suspicious().ifPresent(blocks::add);
        if (things.isEmpty()) {
            blocks.add(new Prose(language.say("report.tomorrow.nothing")));
            return blocks;
        }
        blocks.add(new Prose(Language.joined(count(), language.say("report.tomorrow.projector", "file", PROJECTOR))));
        for (int i = 0; i < things.size(); i++) {
            thing(i, blocks);
        }
        groups(blocks);
        return blocks;
    }

    private String count() {
        return switch (things.size()) {
            case 1 -> language.say("report.tomorrow.one-thing");
            case 2 -> language.say("report.tomorrow.two-things");
            default -> language.say("report.tomorrow.three-things");
        };
    }

    /** Nobody should show a class a key that may be wrong. */
    private Optional<Block> suspicious() {
        Map<Item, KeyCheck> found = results.keysToCheck();
        if (found.isEmpty()) {
            return Optional.empty();
        }
        List<String> told = new ArrayList<>();
        found.forEach((item, check) -> told.add(language.say(
                "report.tomorrow.check-key", "question", names.get(item), "reason", language.say(check.reason()))));
        return Optional.of(new Prose(language.say("report.tomorrow.check-keys", "questions", String.join("; ", told))));
    }

    private void thing(int i, List<Block> blocks) {
        TakeUp thing = things.get(i);
        List<Roster.Seat> learners = thing.learners();
        blocks.add(new Heading(
                3,
                i + 1 + ". "
                        + language.count(
                                "report.tomorrow.thing",
                                results.standings().size(),
                                "title",
                                title(thing),
                                "some",
                                Integer.toString(learners.size()))));
        StringBuilder list = new StringBuilder();
        thing.cause()
                .ifPresent(cause ->
                        line(list, language.say("report.tomorrow.told", "says", Statement.escape(cause.says()))));
        line(list, language.say("report.tomorrow.where", "questions", where(thing)));
        line(list, language.say("report.tomorrow.who", "learners", who(learners)));
        examples.get(i).ifPresent(example -> {
            rule(example).ifPresent(rule -> line(list, language.say("report.tomorrow.rule", "rule", rule)));
            line(list, show(example));
        });
        int right = results.items().get(thing.item()).facility().of();
        if (thing.cause().isPresent() && thing.there() > right) {
            line(list, language.say("report.tomorrow.look-first", "question", names.get(thing.item())));
        }
        blocks.add(new Prose(list.toString()));
        examples.get(i)
                .map(BoardExample::lines)
                .filter(lines -> !lines.isEmpty())
                .ifPresent(
                        lines -> blocks.add(new Steps(language.count("report.tomorrow.lines", lines.size()), lines)));
    }

    private static void line(StringBuilder list, String text) {
        list.append("- ").append(ended(text)).append('\n');
    }

    /** With a full stop, if it has none. */
    private static String ended(String text) {
        return text.endsWith(".") ? text : text + ".";
    }

    private String title(TakeUp thing) {
        return thing.cause()
                .map(cause -> first(cause.label()))
                .orElseGet(() -> language.say("report.tomorrow.unexplained", "question", names.get(thing.item())));
    }

    private static String first(String label) {
        return label.substring(0, 1).toUpperCase(Locale.ROOT) + label.substring(1);
    }

    private String where(TakeUp thing) {
        return String.join(
                "; ",
                thing.where().stream()
                        .map(item -> language.say(
                                "report.tomorrow.question",
                                "question",
                                names.get(item),
                                "meaning",
                                results.meaning(item),
                                "title",
                                Statement.escape(results.title(item.template()))))
                        .toList());
    }

    private String who(List<Roster.Seat> learners) {
        List<String> told = new ArrayList<>(learners.stream()
                .limit(MOST_NAMES)
                .map(seat -> Statement.escape(privacy.seat(seat)))
                .toList());
        if (learners.size() > MOST_NAMES) {
            told.add(language.count("report.tomorrow.more", learners.size() - MOST_NAMES));
        }
        return String.join("; ", told);
    }

    /** That of the line where the mistake is made. */
    private static Optional<String> rule(BoardExample example) {
        return example.lines().stream().findFirst().map(line -> {
            String principle =
                    line.principle().isEmpty() ? "" : "*" + Statement.escape(first(line.principle())) + "*: ";
            return principle + Statement.escape(line.reason());
        });
    }

    private String show(BoardExample example) {
        String[] filled = {
            "problem", Integer.toString(example.problem().number()),
            "seat", Integer.toString(example.sheet().id().seat()),
            "sheet", example.sheet().id().toString(),
            "right", right(example),
            "mistaken", mistaken(example)
        };
        String shown = example.mistake().isEmpty()
                ? language.say("report.tomorrow.show", filled)
                : language.say("report.tomorrow.show-mistake", filled);
        return example.exampleBefore() == 0
                ? shown
                : Language.joined(
                        ended(shown),
                        language.say("report.tomorrow.example", "problem", Integer.toString(example.exampleBefore())));
    }

    private static String right(BoardExample example) {
        return Statement.escape(Composer.answer(example.problem(), example.key()));
    }

    /** What comes out with the mistake; empty if none is known. */
    private static String mistaken(BoardExample example) {
        return example.mistake()
                .map(mistake -> Statement.escape(example.problem().mistaken(example.key(), mistake)))
                .orElse("");
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
                    new Cell(language.say("report.tomorrow.other-learners"), ""),
                    new Cell(Integer.toString(others.size()), ""),
                    new Cell(String.join("; ", others), "")));
        }
        blocks.add(new Table(
                language.say("report.tomorrow.groups"),
                List.of(
                        language.say("report.head.group"),
                        language.say("report.head.learners"),
                        language.say("report.head.who")),
                rows));
    }

    // For the class

    /** The page to show: no name, no seat, nobody's marks. */
    Document projector(Plan plan) {
        List<Block> blocks = new ArrayList<>();
        if (things.isEmpty()) {
            blocks.add(new Prose(language.say("report.projector.nothing")));
        }
        for (int i = 0; i < things.size(); i++) {
            TakeUp thing = things.get(i);
            blocks.add(new Heading(2, i + 1 + ". " + onBoard(thing)));
            String madeBy = language.count(
                    "report.projector.made-by",
                    results.standings().size(),
                    "some",
                    Integer.toString(thing.answers().size()));
            blocks.add(new Prose(thing.cause()
                            .map(cause -> language.say("report.projector.told", "says", Statement.escape(cause.says()))
                                    + "\n\n")
                            .orElse("")
                    + madeBy));
            examples.get(i).ifPresent(example -> {
                rule(example)
                        .ifPresent(rule -> blocks.add(new Prose(language.say("report.projector.rule", "rule", rule))));
                blocks.addAll(example.worked());
                blocks.add(new Prose(shown(example)));
            });
        }
        return new Document(
                Kind.REPORT,
                plan.language(),
                language.say("report.projector.title", "title", plan.title()),
                language.say("report.projector.subtitle"),
                "",
                plan.paper(),
                blocks);
    }

    private String shown(BoardExample example) {
        String problem = Integer.toString(example.problem().number());
        return example.mistake().isEmpty()
                ? language.say("report.projector.shown", "problem", problem, "right", right(example))
                : language.say(
                        "report.projector.shown-mistake",
                        "problem",
                        problem,
                        "right",
                        right(example),
                        "mistaken",
                        mistaken(example));
    }

    private String onBoard(TakeUp thing) {
        return thing.cause()
                .map(cause -> first(cause.label()))
                .orElseGet(() -> language.say(
                        "report.projector.question",
                        "meaning",
                        first(results.meaning(thing.item())),
                        "question",
                        names.get(thing.item())));
    }
}
