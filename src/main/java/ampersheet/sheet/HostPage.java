package ampersheet.sheet;

import ampersheet.answer.AnswerKey;
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
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What whoever runs the evening wants to know before it begins: what to lay out and say, how long it takes, which slips
 * to expect and what to ask then.
 */
public final class HostPage {
    /** Minutes before the first problem: the welcome, how a sheet is read; common practice, no source. */
    private static final int WELCOME = 5;
    /** After so many minutes a break is due; common practice, no source. */
    private static final int SITTING = 50;

    private static final int BREAK = 10;
    private static final int SLIPS_EACH = 2;
    /** Of so many learners the values that a slip gives are listed. */
    private static final int LISTED = 12;

    /** Problems by their place on the sheet, by template, by seat. */
    private final Map<Integer, Map<String, Map<Integer, SheetProblem>>> places = new LinkedHashMap<>();

    private final Plan plan;
    private int learners;

    public HostPage(Plan plan) {
        this.plan = plan;
    }

    /** One more learner's sheet. */
    public void add(Sheet sheet) {
        learners++;
        for (SheetProblem problem : sheet.problems()) {
            Map<Integer, SheetProblem> seats = places.computeIfAbsent(problem.number(), first -> new LinkedHashMap<>())
                    .computeIfAbsent(problem.template().name(), first -> new LinkedHashMap<>());
            if (seats.size() < LISTED) {
                seats.put(sheet.id().seat(), problem);
            }
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
                + "page and the answers to yourself."));
        blocks.add(new Heading(2, "To say at the start"));
        blocks.add(new Prose(atTheStart(checkLetters)));
        blocks.add(new Heading(2, "How long it takes"));
        blocks.add(timetable());
        blocks.add(new Prose("An estimate, common practice: " + WELCOME + " minutes for the start, " + Minutes.READING
                + " to read a problem, " + Minutes.WORKING + " for a line to be worked, " + Minutes.FOLLOWING
                + " for a line that is worked already. Some need half as long, some twice: who is fast helps a "
                + "neighbour, and if time is short the last problems are left for home."));
        cautions().ifPresent(said -> {
            blocks.add(new Heading(2, "If a circuit is built"));
            blocks.add(new Prose(said));
        });
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
        if (all().stream().anyMatch(place -> place.any().support() instanceof Support.Full)) {
            points.add("Worked examples are there to be read with a pencil: cover the lines, guess each, look. The "
                    + "problem after an example goes the same way with other numbers.");
        }
        points.add("Keep all digits until the end; write the unit.");
        if (checkLetters && plan.lettered() != Plan.Lettered.NONE) {
            points.add(
                    "A letter beside a box tells whether an answer may be right; how to find one's own stands behind "
                            + "the last problem. Go through the example there together.");
        }
        return "- " + String.join("\n- ", points);
    }

    /** What to do about each hazard, with the problems that have it; empty if there is none. */
    private Optional<String> cautions() {
        Map<Caution, TreeSet<Integer>> problems = new EnumMap<>(Caution.class);
        all().forEach(place -> place.any().problem().cautions().stream()
                .flatMap(id -> Caution.named(id).stream())
                .forEach(caution -> problems.computeIfAbsent(caution, first -> new TreeSet<>())
                        .add(place.number())));
        if (problems.isEmpty()) {
            return Optional.empty();
        }
        List<String> points = new ArrayList<>();
        problems.forEach((caution, numbers) -> points.add("**" + caution.heading(plan.language()) + "** (problem"
                + (numbers.size() == 1 ? " " : "s ")
                + String.join(", ", numbers.stream().map(String::valueOf).toList()) + "): "
                + Statement.escape(caution.action(plan.language()))));
        return Optional.of(
                "These sheets are worked on paper. Whoever builds: extra-low voltage only, and say first what stands "
                        + "here.\n\n- " + String.join("\n- ", points));
    }

    /** What stands under a number for some or all. */
    private record Standing(int number, Map<Integer, SheetProblem> seats) {
        SheetProblem any() {
            return seats.values().iterator().next();
        }

        ProblemTemplate template() {
            return any().template();
        }
    }

    private List<Standing> all() {
        List<Standing> all = new ArrayList<>();
        places.forEach(
                (number, templates) -> templates.values().forEach(seats -> all.add(new Standing(number, seats))));
        return all;
    }

    private Table timetable() {
        List<List<Cell>> rows = new ArrayList<>();
        int from = WELCOME;
        int sitting = WELCOME;
        for (int number : places.keySet()) {
            List<Standing> here =
                    all().stream().filter(one -> one.number() == number).toList();
            int minutes =
                    here.stream().mapToInt(one -> Minutes.of(one.any())).max().orElse(0);
            if (sitting + minutes > SITTING && !(here.get(0).any().support() instanceof Support.Bare && twin(number))) {
                rows.add(row("", "a break", "", BREAK + " min", clock(from) + " to " + clock(from + BREAK)));
                from += BREAK;
                sitting = 0;
            }
            rows.add(row(
                    Integer.toString(number),
                    String.join(
                            " or ",
                            here.stream().map(one -> title(one, here.size())).toList()),
                    kind(here.get(0).any()),
                    minutes + " min",
                    clock(from) + " to " + clock(from + minutes)));
            from += minutes;
            sitting += minutes;
        }
        return new Table("", List.of("problem", "what it is about", "form", "takes", "from the start"), rows);
    }

    /** Whether the problem before this one is its worked example: nobody wants a break between them. */
    private boolean twin(int number) {
        return places.containsKey(number - 1)
                && places.get(number - 1).keySet().equals(places.get(number).keySet());
    }

    private String title(Standing one, int ofSo) {
        boolean named = ofSo > 1 && learners <= LISTED;
        return one.template().title() + (named ? " (" + seats(one.seats().keySet()) + ")" : "");
    }

    private static String seats(Set<Integer> seats) {
        return (seats.size() == 1 ? "seat " : "seats ")
                + String.join(", ", seats.stream().map(String::valueOf).toList());
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

    private Table slips() {
        List<List<Cell>> rows = new ArrayList<>();
        for (Standing here : all()) {
            if (here.any().support() instanceof Support.Full) {
                continue;
            }
            int told = 0;
            for (Mistake mistake : here.template().mistakes()) {
                Optional<AnswerKey> asked = here.any().places().stream()
                        .filter(key -> key.step().equals(mistake.of()))
                        .findFirst();
                String values = learners <= LISTED ? values(here, mistake) : "";
                boolean possible = learners > LISTED || !values.isEmpty();
                if (asked.isPresent() && told < SLIPS_EACH && possible) {
                    told++;
                    rows.add(row(asked.get().question(), values, mistake.says(), askBack(here.template(), mistake)));
                }
            }
        }
        return new Table("", List.of("question", "who writes", "has made this slip", "ask back"), rows);
    }

    /** What the slip gives with each learner's numbers. */
    private static String values(Standing here, Mistake mistake) {
        List<String> values = new ArrayList<>();
        here.seats()
                .forEach((seat, problem) -> problem.places().stream()
                        .filter(key -> key.step().equals(mistake.of()))
                        .forEach(key -> key.mistakes().stream()
                                .filter(known -> known.explanation().equals(mistake.says()))
                                .forEach(known -> values.add(
                                        "seat " + seat + ": " + ProblemText.mistaken(key, known, problem.writer())))));
        return String.join("; ", values);
    }

    /** For the line that went wrong first. */
    private static String askBack(ProblemTemplate template, Mistake mistake) {
        return template.lines().stream()
                .filter(step -> mistake.instead().containsKey(step.id()))
                .findFirst()
                .or(() -> template.lines().stream()
                        .filter(step -> step.id().equals(mistake.of()))
                        .findFirst())
                .map(HostPage::question)
                .orElse("");
    }

    private static String question(StepLine step) {
        return "How do you find the " + step.meaning() + "? ("
                + (step.principle().isEmpty() ? "" : step.principle() + ": ")
                + (step.reasons().isEmpty() ? "" : step.reasons().get(0)) + ")";
    }

    private static List<Cell> row(String... texts) {
        return Arrays.stream(texts).map(text -> new Cell(text, "")).toList();
    }
}
