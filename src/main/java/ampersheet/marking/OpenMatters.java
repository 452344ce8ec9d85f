package ampersheet.marking;

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

/** What waits: what only the instructor can decide, from whom what came in, and what she has decided. */
final class OpenMatters {
    /** More would hide the rest of the report; decide.csv has all. */
    private static final int MOST_ROWS = 100;

    private final Seats seats;
    private final Privacy privacy;
    private final List<Block> blocks = new ArrayList<>();

    private OpenMatters(Seats seats, Privacy privacy) {
        this.seats = seats;
        this.privacy = privacy;
    }

    /** @param statuses of each seat, in the order of the seats */
    static List<Block> of(
            List<ToDecide> open,
            Map<Roster.Seat, Status> statuses,
            DecisionBook decisions,
            Seats seats,
            Privacy privacy) {
        OpenMatters matters = new OpenMatters(seats, privacy);
        matters.decide(open);
        matters.statuses(statuses);
        matters.decided(decisions);
        return matters.blocks;
    }

    private void decide(List<ToDecide> open) {
        if (open.isEmpty()) {
            return;
        }
        blocks.add(new Heading(2, "Decide these"));
        blocks.add(new Prose("What nobody else can tell: "
                + Amounts.count(open.size(), "line", "lines") + ", the same as in decide.csv"
                + (open.size() > MOST_ROWS ? ", of which the first " + MOST_ROWS + " stand here" : "")
                + ". Until you decide, none of it earns a mark, and both sides of a contradiction are kept. To decide, "
                + "copy a line of decide.csv to a list of your own, fill in decision, value and reason, and mark again "
                + "with --decisions and that list: accept, read as, mark, leave out, counts, does not count."));
        List<List<Cell>> rows = new ArrayList<>();
        for (ToDecide one : open.subList(0, Math.min(MOST_ROWS, open.size()))) {
            rows.add(cells(
                    one.seat() == 0 ? "?" : who(one.seat()),
                    one.question().isEmpty() ? "hand-in" : one.question(),
                    privacy.text(one.typed()),
                    one.told(),
                    one.why(),
                    one.meanings()));
        }
        blocks.add(new Table("", List.of("Learner", "Question", "Typed", "Where", "Why", "What it may mean"), rows));
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
        long whole = statuses.values().stream().filter(Status.IN::equals).count();
        blocks.add(new Heading(2, "Who handed in"));
        blocks.add(new Prose("Of " + Amounts.count(statuses.size(), "seat", "seats") + " "
                + (whole == 1 ? "one has" : whole + " have") + " every place filled in."));
        if (!list.isEmpty()) {
            blocks.add(new Prose(list.toString()));
        }
    }

    private static String told(Status status) {
        return switch (status) {
            case IN -> "All in";
            case IN_PART -> "In part, with places left open";
            case BLANK -> "Handed in blank";
            case UNDECIDED -> "Undecided, see above";
            case UNREADABLE -> "A file that could not be read";
            case NOTHING -> "Nothing came in";
        };
    }

    private void decided(DecisionBook decisions) {
        if (decisions.isEmpty()) {
            return;
        }
        blocks.add(new Heading(2, "What you decided"));
        blocks.add(new Prose("From your list; each also stands on the page of whom it concerns. What no longer fits "
                + "changes nothing: decide anew, or take the line out."));
        List<List<Cell>> rows = new ArrayList<>();
        for (Decision one : decisions.all()) {
            rows.add(cells(
                    one.seat() == 0 ? "everyone" : who(one.seat()),
                    one.question().isEmpty() ? one.file() : one.question(),
                    privacy.text(one.answer()),
                    one.told(),
                    privacy.text(one.reason()),
                    decisions.fits(one) ? "in force" : "no longer fits"));
        }
        blocks.add(new Table("", List.of("Learner", "Question or file", "Typed", "Decision", "Reason", "State"), rows));
    }

    private String who(int number) {
        String name = seats.seat(number).map(privacy::name).orElse("");
        return "Seat " + number + (name.isEmpty() ? "" : ", " + name);
    }

    private static List<Cell> cells(String... texts) {
        List<Cell> cells = new ArrayList<>();
        for (String text : texts) {
            cells.add(new Cell(text, ""));
        }
        return cells;
    }
}
