package ampersheet.marking;

import ampersheet.language.Language;
import ampersheet.marking.Standing.Outcome;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import ampersheet.sheet.MarkingPolicy;
import ampersheet.sheet.Plan;
import ampersheet.sheet.Roster;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** The marks of a class on a page to print and keep: a line for each seat, a column for each problem. */
final class Gradebook {
    static final String FILE = "gradebook.html";

    private final Language language;
    private final ClassResults results;
    private final MarkingPolicy policy;
    private final Privacy privacy;
    private final Map<Integer, String> numbers;

    private Gradebook(ClassResults results, MarkingPolicy policy, Privacy privacy) {
        this.language = results.language();
        this.results = results;
        this.policy = policy;
        this.privacy = privacy;
        this.numbers = results.numbers();
    }

    /** @param statuses of each seat, in the order of the seats */
    static Document compose(Plan plan, ClassResults results, Map<Roster.Seat, Status> statuses, Privacy privacy) {
        Gradebook book = new Gradebook(results, plan.marking(), privacy);
        List<Block> blocks = new ArrayList<>();
        Language language = plan.language();
        blocks.add(new Prose(Language.joined(
                ClassReport.notice(privacy, language),
                language.say("report.gradebook.legend"),
                plan.marking().saysGrades(language).map(Statement::escape).orElse(""),
                statuses.containsValue(Status.UNDECIDED) ? language.say("report.gradebook.undecided") : "")));
        blocks.add(new Table("", book.head(), book.rows(statuses)));
        return new Document(
                Kind.REPORT,
                language,
                language.say("report.gradebook.title", "title", plan.title()),
                language.count("report.gradebook.seats", statuses.size()),
                "",
                plan.paper(),
                blocks);
    }

    private List<String> head() {
        List<String> head = new ArrayList<>(ClassReport.seatHead(privacy, language));
        numbers.forEach((place, number) -> head.add(column(place, number)));
        head.addAll(List.of(language.say("report.head.marks"), "%"));
        if (!policy.grades().isEmpty()) {
            head.add(language.say("report.head.grade"));
        }
        head.add(language.say("report.head.status"));
        return head;
    }

    /** A problem with what it counts, where it counts the same for everybody. */
    private String column(int place, String number) {
        TreeSet<Integer> most = new TreeSet<>();
        for (Standing standing : results.standings()) {
            int here = standing.outcomes().stream()
                    .filter(outcome -> outcome.item().place() == place)
                    .mapToInt(outcome -> outcome.earned().most())
                    .sum();
            if (here > 0) {
                most.add(here);
            }
        }
        return most.size() == 1
                ? language.say(
                        "report.gradebook.column", "problem", number, "marks", Amounts.marks(most.first(), language))
                : number;
    }

    private List<List<Cell>> rows(Map<Roster.Seat, Status> statuses) {
        Map<Integer, Standing> standings = new LinkedHashMap<>();
        results.standings().forEach(standing -> standings.put(standing.seat().number(), standing));
        List<List<Cell>> rows = new ArrayList<>();
        statuses.forEach((seat, status) -> {
            List<String> row = new ArrayList<>(List.of(Integer.toString(seat.number())));
            if (!privacy.isOn()) {
                row.add(seat.name());
            }
            Standing standing = standings.get(seat.number());
            int marks = numbers.size() + (policy.grades().isEmpty() ? 2 : 3);
            for (int i = 0; standing == null && i < marks; i++) {
                row.add("");
            }
            if (standing != null) {
                row.addAll(marks(standing));
            }
            row.add(told(status));
            rows.add(ClassReport.cells(row.toArray(new String[0])));
        });
        return rows;
    }

    private List<String> marks(Standing standing) {
        List<String> cells = new ArrayList<>();
        for (int place : numbers.keySet()) {
            List<Outcome> here = standing.outcomes().stream()
                    .filter(outcome -> outcome.item().place() == place)
                    .toList();
            cells.add(
                    here.isEmpty()
                            ? ""
                            : Amounts.marks(
                                    here.stream()
                                            .mapToInt(
                                                    outcome -> outcome.earned().marks())
                                            .sum(),
                                    language));
        }
        cells.add(Amounts.of(
                Amounts.marks(standing.marks(), language), Amounts.marks(standing.mostMarks(), language), language));
        cells.add(Amounts.tenths(standing.percent(), language));
        policy.grade(standing.percent()).ifPresent(cells::add);
        return cells;
    }

    private String told(Status status) {
        return switch (status) {
            case IN -> language.say("report.status.in");
            case IN_PART -> language.say("report.status.in-part");
            case BLANK -> language.say("report.status.blank");
            case UNDECIDED -> language.say("report.status.undecided");
            case UNREADABLE -> language.say("report.status.unreadable");
            case NOTHING -> language.say("report.status.nothing");
        };
    }
}
