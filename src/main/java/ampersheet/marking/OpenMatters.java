package ampersheet.marking;

import ampersheet.language.Language;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import ampersheet.sheet.Roster;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What waits: what only the instructor can decide, from whom what came in, and what she has decided. */
final class OpenMatters {
    /** More would hide the rest of the report; decide.csv has all. */
    private static final int MOST_ROWS = 100;

    private final Seats seats;
    private final Privacy privacy;
    private final Language language;
    private final List<Block> blocks = new ArrayList<>();

    private OpenMatters(Seats seats, Privacy privacy, Language language) {
        this.seats = seats;
        this.privacy = privacy;
        this.language = language;
    }

    /** @param statuses of each seat, in the order of the seats */
    static List<Block> of(
            List<ToDecide> open,
            Map<Roster.Seat, Status> statuses,
            DecisionBook decisions,
            Seats seats,
            Privacy privacy,
            Language language) {
        OpenMatters matters = new OpenMatters(seats, privacy, language);
        matters.decide(open);
        matters.statuses(statuses);
        matters.decided(decisions);
        return matters.blocks;
    }

    private void decide(List<ToDecide> open) {
        if (open.isEmpty()) {
            return;
        }
        blocks.add(new Heading(2, language.say("report.decide")));
        String lines = open.size() > MOST_ROWS
                ? language.say(
                        "report.decide.first-lines",
                        "count",
                        Integer.toString(open.size()),
                        "shown",
                        Integer.toString(MOST_ROWS))
                : language.count("report.decide.lines", open.size());
        String words =
                Stream.of(Decision.Kind.values()).map(Decision.Kind::word).collect(Collectors.joining(", "));
        blocks.add(new Prose(Language.joined(lines, language.say("report.decide.how", "words", words))));
        List<List<Cell>> rows = new ArrayList<>();
        for (ToDecide one : open.subList(0, Math.min(MOST_ROWS, open.size()))) {
            rows.add(cells(
                    one.seat() == 0 ? language.say("report.decide.nobody") : who(one.seat()),
                    one.question().isEmpty() ? language.say("report.decide.hand-in") : one.question(),
                    privacy.text(one.typed()),
                    one.told(language),
                    language.say(one.why()),
                    one.meaningsIn(language)));
        }
        blocks.add(new Table(
                "",
                List.of(
                        language.say("report.head.learner"),
                        language.say("report.head.question"),
                        language.say("report.head.typed"),
                        language.say("report.head.where"),
                        language.say("report.head.why"),
                        language.say("report.head.may-mean")),
                rows));
    }

    private void statuses(Map<Roster.Seat, Status> statuses) {
        StringBuilder list = new StringBuilder();
        for (Status status :
                List.of(Status.NOTHING, Status.UNREADABLE, Status.UNDECIDED, Status.BLANK, Status.IN_PART)) {
            List<String> names = new ArrayList<>();
            statuses.forEach((seat, of) -> {
                if (of == status) {
                    names.add(Statement.escape(who(seat.number())));
                }
            });
            if (!names.isEmpty()) {
                list.append("- **")
                        .append(told(status))
                        .append("** (")
                        .append(names.size())
                        .append("): ")
                        .append(String.join("; ", names))
                        .append('\n');
            }
        }
        int whole = (int) statuses.values().stream().filter(Status.IN::equals).count();
        blocks.add(new Heading(2, language.say("report.handed-in")));
        blocks.add(new Prose(language.count(
                "report.handed-in.whole", whole, "seats", language.count("report.handed-in.seats", statuses.size()))));
        if (!list.isEmpty()) {
            blocks.add(new Prose(list.toString()));
        }
    }

    private String told(Status status) {
        return switch (status) {
            case IN -> language.say("report.handed-in.in");
            case IN_PART -> language.say("report.handed-in.in-part");
            case BLANK -> language.say("report.handed-in.blank");
            case UNDECIDED -> language.say("report.handed-in.undecided");
            case UNREADABLE -> language.say("report.handed-in.unreadable");
            case NOTHING -> language.say("report.handed-in.nothing");
        };
    }

    private void decided(DecisionBook decisions) {
        if (decisions.ofTheseSheets().isEmpty()) {
            return;
        }
        blocks.add(new Heading(2, language.say("report.decided")));
        blocks.add(new Prose(language.say("report.decided.legend")));
        List<List<Cell>> rows = new ArrayList<>();
        for (Decision one : decisions.ofTheseSheets()) {
            rows.add(cells(
                    one.seat() == 0 ? language.say("report.decided.everyone") : who(one.seat()),
                    one.question().isEmpty() ? one.file() : one.question(),
                    privacy.text(one.answer()),
                    one.told(language),
                    privacy.text(one.reason()),
                    decisions.fits(one)
                            ? language.say("report.decided.in-force")
                            : language.say("report.decided.no-longer")));
        }
        blocks.add(new Table(
                "",
                List.of(
                        language.say("report.head.learner"),
                        language.say("report.head.question-or-file"),
                        language.say("report.head.typed"),
                        language.say("report.head.decision"),
                        language.say("report.head.reason"),
                        language.say("report.head.state")),
                rows));
    }

    private String who(int number) {
        return seats.seat(number)
                .map(privacy::seat)
                .orElseGet(() -> language.say("report.seat", "seat", Integer.toString(number)));
    }

    private static List<Cell> cells(String... texts) {
        List<Cell> cells = new ArrayList<>();
        for (String text : texts) {
            cells.add(new Cell(text, ""));
        }
        return cells;
    }
}
