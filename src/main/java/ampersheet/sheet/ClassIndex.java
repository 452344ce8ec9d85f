package ampersheet.sheet;

import ampersheet.problem.Caution;
import ampersheet.problem.Refusal;
import ampersheet.problem.Tally;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/** The instructor's page of a class: who has which sheet, all answers at a glance, and what was refused on the way. */
public final class ClassIndex {
    private ClassIndex() {}

    /**
     * One learner's line.
     *
     * @param sheetLink relative to the index
     * @param keyLink relative to the index
     * @param problems what the line says of each problem, in the order of the sheet
     * @param cautions ids of the boxes on the sheet
     */
    public record Line(
            Roster.Seat seat,
            SheetId id,
            String sheetLink,
            String keyLink,
            List<ProblemAnswers> problems,
            List<String> cautions) {
        public Line {
            problems = List.copyOf(problems);
            cautions = List.copyOf(cautions);
        }
    }

    /** @param answers as a right answer is written, with the name of its question */
    public record ProblemAnswers(List<String> answers) {
        public ProblemAnswers {
            answers = List.copyOf(answers);
        }
    }

    public static Line line(Roster.Seat seat, Sheet sheet, String sheetLink, String keyLink) {
        List<ProblemAnswers> problems = new ArrayList<>();
        SortedSet<String> cautions = new TreeSet<>();
        for (SheetProblem problem : sheet.problems()) {
            cautions.addAll(problem.problem().cautions());
            problems.add(new ProblemAnswers(problem.places().stream()
                    .map(key -> key.question() + ": " + ProblemText.answer(key, problem.writer()))
                    .toList()));
        }
        return new Line(seat, sheet.id(), sheetLink, keyLink, problems, List.copyOf(cautions));
    }

    public static Document compose(ProblemSet set, List<Line> lines, Map<String, Tally> tallies) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Prose(
                "For the instructor: this page holds answers. Hand out the folder *sheets*; keep this page and the "
                        + "folder *keys*."));
        blocks.add(classTable(lines));
        blocks.add(answersTable(lines));
        String with = set.plan().file()
                + set.parts().map(bins -> " --parts " + bins.file()).orElse("");
        blocks.add(new Heading(2, "Checking answers"));
        blocks.add(new Prose(
                "The sheet ID at the head of each sheet is enough, with the plan, to check typed answers and to "
                        + "make sheet and key again:\n\n- `check "
                        + lines.get(0).id() + " --plan " + with + "`\n- `key "
                        + lines.get(0).id() + " --plan " + with + "`"));
        cautions(lines).ifPresent(blocks::add);
        blocks.add(templatesTable(set, tallies));
        blocks.add(new Prose(
                "A draw is refused before anyone sees it when its numbers break a rule of the template, when a "
                        + "known mistake would come too close to the right answer, or when the two routes "
                        + "to an answer disagree."));
        return new Document(
                Kind.INDEX,
                set.plan().language(),
                set.plan().title(),
                lines.size() == 1 ? "1 sheet" : lines.size() + " sheets",
                "",
                set.plan().paper(),
                blocks);
    }

    private static Table classTable(List<Line> lines) {
        List<List<Cell>> rows = new ArrayList<>();
        for (Line line : lines) {
            rows.add(List.of(
                    text(Integer.toString(line.seat().number())),
                    text(line.seat().name()),
                    text(line.id().toString()),
                    new Cell("sheet", line.sheetLink()),
                    new Cell("key", line.keyLink())));
        }
        return new Table("Class", List.of("Seat", "Name", "Sheet ID", "Sheet", "Key"), rows);
    }

    /** Worked examples leave nothing open and have no column. */
    private static Table answersTable(List<Line> lines) {
        int problems = lines.get(0).problems().size();
        List<Integer> open = new ArrayList<>();
        for (int i = 0; i < problems; i++) {
            int at = i;
            if (lines.stream()
                    .anyMatch(line -> !line.problems().get(at).answers().isEmpty())) {
                open.add(i);
            }
        }
        List<String> head = new ArrayList<>(List.of("Seat"));
        open.forEach(i -> head.add("Problem " + (i + 1)));
        List<List<Cell>> rows = new ArrayList<>();
        for (Line line : lines) {
            List<Cell> row =
                    new ArrayList<>(List.of(text(Integer.toString(line.seat().number()))));
            open.forEach(
                    i -> row.add(text(String.join("; ", line.problems().get(i).answers()))));
            rows.add(row);
        }
        return new Table("Answers at a glance", head, rows);
    }

    private static Optional<Prose> cautions(List<Line> lines) {
        SortedSet<String> ids = new TreeSet<>();
        lines.forEach(line -> ids.addAll(line.cautions()));
        List<String> headings = new ArrayList<>();
        for (Caution caution : Caution.values()) {
            if (ids.contains(caution.id())) {
                headings.add("- " + caution.heading());
            }
        }
        return headings.isEmpty()
                ? Optional.empty()
                : Optional.of(new Prose("These sheets carry cautions on:\n\n" + String.join("\n", headings)));
    }

    private static Table templatesTable(ProblemSet set, Map<String, Tally> tallies) {
        List<List<Cell>> rows = new ArrayList<>();
        set.sources().forEach((source, template) -> {
            Tally tally = tallies.get(source);
            List<String> reasons = new ArrayList<>();
            for (Refusal reason : Refusal.values()) {
                if (tally.refused(reason) > 0) {
                    reasons.add(tally.refused(reason) + " × " + reason.sentence());
                }
            }
            rows.add(List.of(
                    text(template.title()),
                    text(source),
                    text(Integer.toString(template.level())),
                    text(Long.toString(tally.tried())),
                    text(Long.toString(tally.refused())),
                    text(reasons.isEmpty() ? "–" : String.join("; ", reasons))));
        });
        return new Table(
                "Templates and refused draws",
                List.of("Problem", "Template", "Level", "Draws tried", "Refused", "Why"),
                rows);
    }

    private static Cell text(String text) {
        return new Cell(text, "");
    }
}
