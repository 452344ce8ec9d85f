package ampersheet.sheet;

import ampersheet.problem.Caution;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Mistake;
import ampersheet.template.ProblemTemplate.StepLine;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * What whoever runs the evening wants to know before it begins: what to lay out and say, how long it takes, which slips
 * to expect and what to ask then.
 */
public final class HostPage {
    /** Minutes to read a problem and its figure; common practice, no source. */
    private static final int READING = 2;
    /** Minutes to work a line, with its typing into a calculator; common practice, no source. */
    private static final int WORKING = 2;
    /** Minutes to follow a line that is worked; common practice, no source. */
    private static final int FOLLOWING = 1;

    private static final int SLIPS_EACH = 2;

    /** Problems by their place on the sheet, one of each template that stands there for somebody. */
    private final Map<Integer, Map<String, SheetProblem>> places = new LinkedHashMap<>();

    private final Plan plan;
    private int learners;

    public HostPage(Plan plan) {
        this.plan = plan;
    }

    /** One more learner's sheet. */
    public void add(Sheet sheet) {
        learners++;
        for (SheetProblem problem : sheet.problems()) {
            places.computeIfAbsent(problem.number(), first -> new LinkedHashMap<>())
                    .putIfAbsent(problem.template().name(), problem);
        }
    }

    /**
     * The page, for those sheets that were added.
     *
     * @param paper a sentence on what is to be printed
     * @param checkLetters whether the sheets have them
     */
    public Document page(String paper, boolean checkLetters) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Prose(Statement.escape(paper)));
        blocks.add(new Heading(2, "To lay out"));
        blocks.add(new Prose("At each seat: the sheet with its own seat number, a pencil, a calculator. Numbers differ "
                + "from sheet to sheet, so neighbours can talk about the way and not about the result. Keep this "
                + "page and the answers behind the sheets to yourself."));
        blocks.add(new Heading(2, "To say at the start"));
        blocks.add(new Prose(atTheStart(checkLetters)));
        blocks.add(new Heading(2, "How long it takes"));
        blocks.add(timetable());
        blocks.add(new Prose("An estimate, common practice: " + READING + " minutes to read a problem, " + WORKING
                + " for a line to be worked, " + FOLLOWING
                + " for a line that is worked already. Some need half as long, some twice."));
        blocks.add(new Heading(2, "Slips to expect, and what to ask back"));
        blocks.add(slips());
        return new Document(
                Document.Kind.KEY,
                plan.language(),
                "For the host: " + plan.title(),
                learners == 1 ? "1 sheet" : learners + " sheets",
                "",
                plan.paper(),
                blocks);
    }

    private String atTheStart(boolean checkLetters) {
        List<String> points = new ArrayList<>();
        boolean examples = all().stream().anyMatch(place -> place.problem().support() instanceof Support.Full);
        if (examples) {
            points.add("Worked examples are there to be read with a pencil: cover the lines, guess each, look. The "
                    + "problem after an example goes the same way with other numbers.");
        }
        points.add("Keep all digits until the end; write the unit.");
        if (checkLetters) {
            points.add("A check letter beside a box tells whether an answer may be right; the table stands on the last "
                    + "page. Do the first one together.");
        }
        TreeSet<String> cautions = new TreeSet<>();
        all().forEach(place -> place.problem().problem().cautions().stream()
                .flatMap(id -> Caution.named(id).stream())
                .forEach(caution -> cautions.add(caution.heading().toLowerCase(java.util.Locale.ROOT))));
        points.add(
                cautions.isEmpty()
                        ? "Nothing here is built: it is worked on paper."
                        : "These sheets are worked on paper. If a circuit is built: extra-low voltage only, and say the "
                                + "cautions first (" + String.join("; ", cautions) + ").");
        return "- " + String.join("\n- ", points);
    }

    private record Place(int number, SheetProblem problem) {}

    private List<Place> all() {
        List<Place> all = new ArrayList<>();
        places.forEach((number, variants) -> variants.values().forEach(problem -> all.add(new Place(number, problem))));
        return all;
    }

    private Table timetable() {
        List<List<Cell>> rows = new ArrayList<>();
        int from = 0;
        for (Map.Entry<Integer, Map<String, SheetProblem>> place : places.entrySet()) {
            int minutes = place.getValue().values().stream()
                    .mapToInt(HostPage::minutes)
                    .max()
                    .orElse(0);
            SheetProblem any = place.getValue().values().iterator().next();
            rows.add(row(
                    place.getKey().toString(),
                    String.join(
                            " or ",
                            place.getValue().values().stream()
                                    .map(problem -> problem.template().title())
                                    .toList()),
                    kind(any),
                    minutes + " min",
                    clock(from) + " to " + clock(from + minutes)));
            from += minutes;
        }
        return new Table("", List.of("problem", "what it is about", "form", "takes", "from the start"), rows);
    }

    private static String clock(int minutes) {
        return minutes / 60 + ":" + (minutes % 60 < 10 ? "0" : "") + minutes % 60;
    }

    private static String kind(SheetProblem problem) {
        if (problem.support() instanceof Support.Full) {
            return "worked example";
        }
        return problem.support() instanceof Support.Faded ? "blanks to fill in" : "to be worked";
    }

    private static int minutes(SheetProblem problem) {
        int lines = problem.template().lines().size();
        if (problem.support() instanceof Support.Full) {
            return READING + FOLLOWING * lines;
        }
        int blank = problem.support() instanceof Support.Faded
                ? (int) problem.places().stream()
                        .map(key -> key.step())
                        .distinct()
                        .count()
                : lines;
        return READING + WORKING * blank + FOLLOWING * (lines - Math.min(lines, blank));
    }

    private Table slips() {
        List<List<Cell>> rows = new ArrayList<>();
        TreeSet<String> told = new TreeSet<>();
        for (Place place : all()) {
            ProblemTemplate template = place.problem().template();
            if (place.problem().support() instanceof Support.Full || !told.add(template.name())) {
                continue;
            }
            List<Mistake> mistakes = template.mistakes().stream()
                    .filter(mistake -> place.problem().answers().stream()
                            .anyMatch(key -> key.step().equals(mistake.of())))
                    .limit(SLIPS_EACH)
                    .toList();
            for (Mistake mistake : mistakes) {
                rows.add(row(Integer.toString(place.number()), mistake.says(), askBack(template, mistake)));
            }
        }
        return new Table("", List.of("problem", "what the sheet would tell about the slip", "ask back"), rows);
    }

    private static String askBack(ProblemTemplate template, Mistake mistake) {
        Optional<StepLine> line = template.lines().stream()
                .filter(step -> step.id().equals(mistake.of()))
                .findFirst();
        return line.map(step -> "Which rule gives the " + step.meaning() + "? ("
                        + (step.principle().isEmpty() ? "" : step.principle() + ": ")
                        + (step.reasons().isEmpty() ? "" : step.reasons().get(0)) + ")")
                .orElse("");
    }

    private static List<Cell> row(String... texts) {
        return java.util.Arrays.stream(texts).map(text -> new Cell(text, "")).toList();
    }
}
