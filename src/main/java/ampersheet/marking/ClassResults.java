package ampersheet.marking;

import ampersheet.language.Language;
import ampersheet.marking.Standing.Item;
import ampersheet.marking.Standing.Outcome;
import ampersheet.template.ProblemTemplate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

/** What the standings of a class say about its questions. */
final class ClassResults {
    /** A smaller class leaves so wide an interval that a verdict on a question would be a guess. */
    static final int LEAST_LEARNERS = 20;

    private final List<Standing> standings;
    private final Language language;
    private final Map<String, ProblemTemplate> templates = new TreeMap<>();
    private final Map<Item, ItemScores> items;

    /**
     * @param templates those that may stand on a sheet
     * @param language in which is told of them
     */
    ClassResults(List<ProblemTemplate> templates, List<Standing> standings, Language language) {
        this.standings = List.copyOf(standings);
        this.language = language;
        templates.forEach(template -> this.templates.put(template.name(), template));
        Comparator<Item> inOrderOfThePlan = Comparator.comparingInt(Item::place)
                .thenComparing(Item::template)
                .thenComparingInt(this::rank);
        Map<Item, List<ItemScores.Score>> scores = new TreeMap<>(inOrderOfThePlan);
        Map<Item, Integer> blanks = new TreeMap<>(inOrderOfThePlan);
        items = new TreeMap<>(inOrderOfThePlan);
        for (Standing standing : standings) {
            for (Outcome outcome : standing.outcomes()) {
                List<ItemScores.Score> of = scores.computeIfAbsent(outcome.item(), item -> new ArrayList<>());
                if (outcome.credit() == Credit.BLANK) {
                    blanks.merge(outcome.item(), 1, Integer::sum);
                } else if (outcome.credit().isAnswered()) {
                    of.add(score(standing, outcome));
                }
            }
        }
        scores.forEach((item, of) -> items.put(item, new ItemScores(of, blanks.getOrDefault(item, 0))));
    }

    /** Steps in the order of the working, then choices. */
    private int rank(Item item) {
        ProblemTemplate template = templates.get(item.template());
        List<String> steps =
                template.lines().stream().map(ProblemTemplate.StepLine::id).toList();
        List<String> asks =
                template.asks().stream().map(ProblemTemplate.Ask::of).toList();
        int step = steps.indexOf(item.step());
        return step >= 0 ? step : steps.size() + asks.indexOf(item.step());
    }

    private static ItemScores.Score score(Standing standing, Outcome outcome) {
        int most = standing.mostMarks() - outcome.earned().most();
        double rest =
                most == 0 ? 0 : (double) (standing.marks() - outcome.earned().marks()) / most;
        return new ItemScores.Score(
                outcome.credit().isFull(),
                share(standing),
                rest,
                outcome.cause().map(Cause::id).orElse(""));
    }

    static double share(Standing standing) {
        return standing.mostMarks() == 0 ? 0 : (double) standing.marks() / standing.mostMarks();
    }

    Language language() {
        return language;
    }

    List<Standing> standings() {
        return standings;
    }

    /** In the order of the plan. */
    Map<Item, ItemScores> items() {
        return items;
    }

    /** Whose keys are to be looked at. */
    Map<Item, KeyCheck> keysToCheck() {
        return KeyCheck.of(items);
    }

    String title(String template) {
        return templates.containsKey(template) ? templates.get(template).title() : template;
    }

    /**
     * The name of each question as sheets print it; the title of the problem behind it where a pool gives learners
     * other problems under the same name.
     */
    Map<Item, String> names() {
        Map<Integer, String> numbers = numbers();
        Map<String, Integer> times = new TreeMap<>();
        items.keySet().forEach(item -> times.merge("q" + numbers.get(item.place()) + part(item), 1, Integer::sum));
        Map<Item, String> names = new LinkedHashMap<>();
        items.keySet().forEach(item -> {
            String name = "q" + numbers.get(item.place()) + part(item);
            names.put(item, times.get(name) == 1 ? name : name + ", " + title(item.template()));
        });
        return names;
    }

    /** The numbers of each problem on the sheets, in the order of the plan; of one that comes up again, all. */
    Map<String, String> problemNames() {
        Map<Integer, String> numbers = numbers();
        Map<String, TreeSet<Integer>> places = new LinkedHashMap<>();
        items.keySet()
                .forEach(item -> places.computeIfAbsent(item.template(), name -> new TreeSet<>())
                        .add(item.place()));
        Map<String, String> names = new LinkedHashMap<>();
        places.forEach((template, at) -> names.put(
                template, String.join(", ", at.stream().map(numbers::get).toList())));
        return names;
    }

    /**
     * What sheets number the problem at a place of the plan, worked examples counted. Where topics are mixed and pools
     * reach across them, sheets may differ: {@code 3 or 4}.
     */
    Map<Integer, String> numbers() {
        Map<Integer, TreeSet<Integer>> found = new TreeMap<>();
        for (Standing standing : standings) {
            standing.outcomes()
                    .forEach(outcome -> found.computeIfAbsent(outcome.item().place(), place -> new TreeSet<>())
                            .add(outcome.problem()));
        }
        Map<Integer, String> numbers = new TreeMap<>();
        found.forEach((place, as) -> numbers.put(
                place, language.either(as.stream().map(String::valueOf).toList())));
        return numbers;
    }

    private String part(Item item) {
        ProblemTemplate template = templates.get(item.template());
        for (int i = 0; i < template.asks().size(); i++) {
            if (template.asks().get(i).of().equals(item.step())) {
                return template.asks().size() == 1 ? "" : Character.toString('a' + i);
            }
        }
        for (int i = 0; i < template.lines().size(); i++) {
            if (template.lines().get(i).id().equals(item.step())) {
                return "s" + (i + 1);
            }
        }
        return "";
    }

    /** What a question asks for, in words. */
    String meaning(Item item) {
        ProblemTemplate template = templates.get(item.template());
        return template.lines().stream()
                .filter(line -> line.id().equals(item.step()))
                .findFirst()
                .map(ProblemTemplate.StepLine::meaning)
                .orElseGet(() -> language.say("report.choice"));
    }

    /**
     * Each problem of the plan is one part, whose score is the share of its marks: questions of one problem hang
     * together, and taken singly they would make a test look more reliable than it is.
     */
    Optional<Reliability> reliability() {
        List<Integer> places = List.copyOf(
                new TreeSet<>(items.keySet().stream().map(Item::place).toList()));
        List<double[]> rows = new ArrayList<>();
        for (Standing standing : standings) {
            double[] marks = new double[places.size()];
            int[] most = new int[places.size()];
            for (Outcome outcome : standing.outcomes()) {
                int at = places.indexOf(outcome.item().place());
                marks[at] += outcome.earned().marks();
                most[at] += outcome.earned().most();
            }
            boolean complete = true;
            for (int i = 0; i < most.length; i++) {
                complete &= most[i] > 0;
                marks[i] = most[i] == 0 ? 0 : marks[i] / most[i] / most.length;
            }
            if (complete) {
                rows.add(marks);
            }
        }
        return Reliability.of(rows.toArray(new double[0][]));
    }
}
