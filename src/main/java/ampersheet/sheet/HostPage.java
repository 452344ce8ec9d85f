package ampersheet.sheet;

import ampersheet.answer.AnswerKey;
import ampersheet.language.Language;
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
    private final Language language;
    private int learners;

    public HostPage(Plan plan) {
        this.plan = plan;
        this.language = plan.language();
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
        blocks.add(new Heading(2, language.say("sheet.host.lay-out.heading")));
        blocks.add(new Prose(language.say("sheet.host.lay-out")));
        blocks.add(new Heading(2, language.say("sheet.host.say.heading")));
        blocks.add(new Prose(atTheStart(checkLetters)));
        blocks.add(new Heading(2, language.say("sheet.host.time.heading")));
        blocks.add(timetable());
        blocks.add(new Prose(language.say(
                "sheet.host.time.about",
                "welcome",
                Integer.toString(WELCOME),
                "reading",
                Integer.toString(Minutes.READING),
                "working",
                Integer.toString(Minutes.WORKING),
                "following",
                Integer.toString(Minutes.FOLLOWING))));
        cautions().ifPresent(said -> {
            blocks.add(new Heading(2, language.say("sheet.host.cautions.heading")));
            blocks.add(new Prose(said));
        });
        blocks.add(new Heading(2, language.say("sheet.host.slips.heading")));
        blocks.add(slips());
        return new Document(
                Document.Kind.KEY,
                language,
                language.say("sheet.host.title", "title", plan.title()),
                language.count("sheet.head.sheets", learners),
                "",
                plan.paper(),
                blocks);
    }

    private String atTheStart(boolean checkLetters) {
        List<String> points = new ArrayList<>();
        if (all().stream().anyMatch(place -> place.any().support() instanceof Support.Full)) {
            points.add(language.say("sheet.host.say.examples"));
        }
        points.add(language.say("sheet.host.say.digits"));
        if (checkLetters && plan.lettered() != Plan.Lettered.NONE) {
            points.add(language.say("sheet.host.say.letters"));
        }
        return "- " + String.join("\n- ", points);
    }

    /** What to do about each hazard, with the problems that have it; empty if there is none. */
    private Optional<String> cautions() {
        Map<Caution, TreeSet<Integer>> problems = new EnumMap<>(Caution.class);
        all().forEach(place -> place.seats().values().stream()
                .flatMap(problem -> problem.problem().cautions().stream())
                .flatMap(id -> Caution.named(id).stream())
                .forEach(caution -> problems.computeIfAbsent(caution, first -> new TreeSet<>())
                        .add(place.number())));
        if (problems.isEmpty()) {
            return Optional.empty();
        }
        List<String> points = new ArrayList<>();
        problems.forEach((caution, numbers) -> points.add(language.count(
                "sheet.host.caution",
                numbers.size(),
                "hazard",
                caution.heading(language),
                "problems",
                listed(numbers),
                "action",
                Statement.escape(caution.action(language)))));
        return Optional.of(language.say("sheet.host.cautions") + "\n\n- " + String.join("\n- ", points));
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
                rows.add(row("", language.say("sheet.host.time.break"), "", minutes(BREAK), span(from, BREAK)));
                from += BREAK;
                sitting = 0;
            }
            rows.add(row(
                    Integer.toString(number),
                    OneOrOther.or(
                            here.stream().map(one -> title(one, here.size())).toList(), language),
                    form(here.get(0).any()),
                    minutes(minutes),
                    span(from, minutes)));
            from += minutes;
            sitting += minutes;
        }
        List<String> head = List.of(
                language.say("sheet.host.time.problem"),
                language.say("sheet.host.time.title"),
                language.say("sheet.host.time.form"),
                language.say("sheet.host.time.takes"),
                language.say("sheet.host.time.clock"));
        return new Table("", head, rows);
    }

    /** Whether the problem before this one is its worked example: nobody wants a break between them. */
    private boolean twin(int number) {
        return places.containsKey(number - 1)
                && places.get(number - 1).keySet().equals(places.get(number).keySet());
    }

    private String title(Standing one, int ofSo) {
        boolean named = ofSo > 1 && learners <= LISTED;
        String title = one.template().title();
        Set<Integer> seats = one.seats().keySet();
        return named
                ? language.count("sheet.host.at-seats", seats.size(), "title", title, "seats", listed(seats))
                : title;
    }

    private static String listed(Set<Integer> numbers) {
        return String.join(", ", numbers.stream().map(String::valueOf).toList());
    }

    private String minutes(int minutes) {
        return language.say("sheet.host.time.minutes", "minutes", Integer.toString(minutes));
    }

    private String span(int from, int minutes) {
        return language.say("sheet.host.time.from-to", "from", clock(from), "to", clock(from + minutes));
    }

    private static String clock(int minutes) {
        return minutes / 60 + ":" + (minutes % 60 < 10 ? "0" : "") + minutes % 60;
    }

    private String form(SheetProblem problem) {
        if (problem.support() instanceof Support.Full) {
            return language.say("sheet.host.form.example");
        }
        return problem.support() instanceof Support.Faded
                ? language.say("sheet.host.form.faded")
                : language.say("sheet.host.form.bare");
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
        List<String> head = List.of(
                language.say("sheet.host.slips.question"),
                language.say("sheet.host.slips.writes"),
                language.say("sheet.host.slips.slip"),
                language.say("sheet.host.slips.ask"));
        return new Table("", head, rows);
    }

    /** What the slip gives with each learner's numbers. */
    private String values(Standing here, Mistake mistake) {
        List<String> values = new ArrayList<>();
        here.seats()
                .forEach((seat, problem) -> problem.places().stream()
                        .filter(key -> key.step().equals(mistake.of()))
                        .forEach(key -> key.mistakes().stream()
                                .filter(known -> known.explanation().equals(mistake.says()))
                                .forEach(known -> values.add(language.say(
                                        "sheet.host.slips.value",
                                        "seat",
                                        Integer.toString(seat),
                                        "value",
                                        ProblemText.mistaken(key, known, problem.writer()))))));
        return String.join("; ", values);
    }

    /** For the line that went wrong first. */
    private String askBack(ProblemTemplate template, Mistake mistake) {
        return template.lines().stream()
                .filter(step -> mistake.instead().containsKey(step.id()))
                .findFirst()
                .or(() -> template.lines().stream()
                        .filter(step -> step.id().equals(mistake.of()))
                        .findFirst())
                .map(this::question)
                .orElse("");
    }

    private String question(StepLine step) {
        String reason = step.reasons().isEmpty() ? "" : step.reasons().get(0);
        return step.principle().isEmpty()
                ? language.say("sheet.host.ask", "what", step.meaning(), "reason", reason)
                : language.say(
                        "sheet.host.ask-by-principle",
                        "what",
                        step.meaning(),
                        "principle",
                        language.name(step.principle()),
                        "reason",
                        reason);
    }

    private static List<Cell> row(String... texts) {
        return Arrays.stream(texts).map(text -> new Cell(text, "")).toList();
    }
}
