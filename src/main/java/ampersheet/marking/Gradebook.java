package ampersheet.marking;

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

    private final ClassResults results;
    private final MarkingPolicy policy;
    private final Privacy privacy;
    private final Map<Integer, String> numbers;

    private Gradebook(ClassResults results, MarkingPolicy policy, Privacy privacy) {
        this.results = results;
        this.policy = policy;
        this.privacy = privacy;
        this.numbers = results.numbers();
    }

    /** @param statuses of each seat, in the order of the seats */
    static Document compose(Plan plan, ClassResults results, Map<Roster.Seat, Status> statuses, Privacy privacy) {
        Gradebook book = new Gradebook(results, plan.marking(), privacy);
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Prose("For the instructor: this page holds marks" + (privacy.isOn() ? "" : " and names")
                + ". The numbered columns are the problems, as on the sheets, with what each counts in brackets."
                + plan.marking()
                        .saysGrades(plan.language())
                        .map(said -> " " + Statement.escape(said))
                        .orElse("")
                + (statuses.containsValue(Status.UNDECIDED)
                        ? " What is undecided earns nothing until you decide."
                        : "")));
        blocks.add(new Table("", book.head(), book.rows(statuses)));
        return new Document(
                Kind.REPORT,
                plan.language(),
                "Gradebook: " + plan.title(),
                Amounts.count(statuses.size(), "seat", "seats"),
                "",
                plan.paper(),
                blocks);
    }

    private List<String> head() {
        List<String> head = new ArrayList<>(privacy.isOn() ? List.of("Seat") : List.of("Seat", "Name"));
        numbers.forEach((place, number) -> head.add(number + of(place)));
        head.addAll(List.of("Marks", "%"));
        if (!policy.grades().isEmpty()) {
            head.add("Grade");
        }
        head.add("Status");
        return head;
    }

    /** What a problem counts, where it counts the same for everybody. */
    private String of(int place) {
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
        return most.size() == 1 ? " (" + Amounts.marks(most.first()) + ")" : "";
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
            row.add(status.word());
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
                            : Amounts.marks(here.stream()
                                    .mapToInt(outcome -> outcome.earned().marks())
                                    .sum()));
        }
        cells.add(Amounts.marks(standing.marks()) + " of " + Amounts.marks(standing.mostMarks()));
        cells.add(MarkingPolicy.tenths(standing.percent()));
        policy.grade(standing.percent()).ifPresent(cells::add);
        return cells;
    }
}
