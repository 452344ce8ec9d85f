package ampersheet.practice;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.Rung;
import ampersheet.formula.Step;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * One hint: the next that tells something new to whoever stands at the first place that is not right. It starts from
 * what was typed, as far as the verdict beside does not say as much; then come, for each step on the way there that no
 * right answer has settled, the rule's name, the formula, the formula with numbers, the line. Where the example stands
 * beside, its line takes the place of rule and formula. Where the verdict knows what is wrong in a line, that line
 * comes first, and from where the verdict ended.
 *
 * @param kind what it tells
 * @param about for what help is recorded
 * @param level how far that help goes with it
 * @param step its number, from 1; 0 for none
 * @param text in words where it starts from what was typed
 */
public record Hint(Kind kind, String about, int level, int step, String text) {
    /** From the least to the most. */
    public enum Kind {
        TYPED,
        EXAMPLE_LINE,
        RULE,
        FORMULA,
        NUMBERS,
        LINE;

        /** As the page finds what belongs to it. */
        public String word() {
            return switch (this) {
                case TYPED -> "typed";
                case EXAMPLE_LINE -> "example";
                case RULE -> "rule";
                case FORMULA -> "formula";
                case NUMBERS -> "numbers";
                case LINE -> "line";
            };
        }
    }

    private static final String TYPED_INTO = "typed into ";

    /** The place whose text it starts from; empty for a hint about a step. */
    public String place() {
        return kind == Kind.TYPED ? about.substring(TYPED_INTO.length()) : "";
    }

    /**
     * @param checked how the places stand with what is typed now
     * @param worked numbers of the steps whose lines are shown anyway
     */
    static Optional<Hint> next(ProblemKey key, Attempt attempt, Checked checked, List<Integer> worked) {
        Optional<Checked.Told> stop = checked.stopped();
        if (stop.isEmpty()) {
            return Optional.empty();
        }
        AnswerKey answer = answer(key, stop.get().question());
        Optional<Hint> typed = fromTyped(key, attempt, answer, stop.get());
        if (typed.isPresent()
                && attempt.help().getOrDefault(typed.get().about(), 0)
                        < typed.get().level()) {
            return typed;
        }
        int from = levelBehind(stop.get().rung());
        List<Integer> steps = onTheWay(key, answer, checked, worked);
        if (from > 0 && !steps.isEmpty()) {
            steps.add(0, steps.remove(steps.size() - 1));
        }
        for (int step : steps) {
            Optional<Hint> ofStep = ofStep(key, attempt, step, step == steps.get(0) ? from : 0);
            if (ofStep.isPresent()) {
                return ofStep;
            }
        }
        return Optional.empty();
    }

    /** What a verdict has told of a line as much as the hints up to here do; 0 where the fault may lie before it. */
    private static int levelBehind(Rung rung) {
        return switch (rung) {
            case KNOWN_MISTAKE, RECIPROCAL -> level(Kind.RULE);
            case POWER_OF_TEN, SIGN, TOO_COARSE, OTHER_SCALE -> level(Kind.FORMULA);
            default -> 0;
        };
    }

    /**
     * The hints that an attempt has had: those that start from what stands in a place still, as far as no verdict has
     * said it since; then those about steps, in the order of the steps.
     */
    static List<Hint> taken(ProblemKey key, Attempt attempt, Checked checked) {
        List<Hint> taken = new ArrayList<>();
        for (Checked.Told place : checked.places()) {
            if (attempt.help().containsKey(TYPED_INTO + place.question())) {
                fromTyped(key, attempt, answer(key, place.question()), place)
                        .filter(hint -> attempt.help().get(hint.about()) == hint.level())
                        .ifPresent(taken::add);
            }
        }
        for (int step = 1; step <= key.working().steps().size(); step++) {
            int had = attempt.help().getOrDefault(about(step), 0);
            for (Kind kind : kinds(key, attempt, step)) {
                if (level(kind) <= had) {
                    taken.add(new Hint(kind, about(step), level(kind), step, ""));
                }
            }
        }
        return taken;
    }

    private static AnswerKey answer(ProblemKey key, String question) {
        for (AnswerKey answer : key.answers()) {
            if (answer.question().equals(question)) {
                return answer;
            }
        }
        throw new IllegalArgumentException("no question " + question);
    }

    private static Optional<Hint> fromTyped(ProblemKey key, Attempt attempt, AnswerKey answer, Checked.Told told) {
        Attempt.Typed typed = attempt.typed().get(answer.question());
        if (typed == null || told.blank()) {
            return Optional.empty();
        }
        String about = TYPED_INTO + answer.question();
        return TypedHint.of(key, answer, attempt, told)
                .map(text -> new Hint(Kind.TYPED, about, typed.at().count(), 0, text));
    }

    private static Optional<Hint> ofStep(ProblemKey key, Attempt attempt, int step, int behind) {
        int had = attempt.help().getOrDefault(about(step), 0);
        List<Kind> kinds = kinds(key, attempt, step);
        had = kinds.contains(Kind.EXAMPLE_LINE) ? had : Math.max(had, behind);
        for (Kind kind : kinds) {
            if (level(kind) > had) {
                return Optional.of(new Hint(kind, about(step), level(kind), step, ""));
            }
        }
        return Optional.empty();
    }

    /** A step of several cases may have another one in the example: its line there would mislead. */
    private static List<Kind> kinds(ProblemKey key, Attempt attempt, int step) {
        boolean oneCase = key.working().steps().get(step - 1).cases().size() == 1;
        return attempt.form().kind() == Form.Kind.FULL && oneCase
                ? List.of(Kind.EXAMPLE_LINE, Kind.NUMBERS, Kind.LINE)
                : List.of(Kind.RULE, Kind.FORMULA, Kind.NUMBERS, Kind.LINE);
    }

    private static int level(Kind kind) {
        return switch (kind) {
            case TYPED -> 0;
            case EXAMPLE_LINE, RULE -> 1;
            case FORMULA -> 2;
            case NUMBERS -> 3;
            case LINE -> 4;
        };
    }

    private static String about(int step) {
        return "step " + step;
    }

    /**
     * Numbers of the steps that lead to an answer, its own last, but for those that are right or lead to what is; all
     * for what is chosen.
     */
    private static List<Integer> onTheWay(ProblemKey key, AnswerKey answer, Checked checked, List<Integer> worked) {
        List<Step> steps = key.working().steps();
        Set<String> needed = new LinkedHashSet<>();
        boolean choice = answer.acceptance() instanceof Acceptance.Choice;
        needed.add(answer.step());
        for (int i = steps.size() - 1; i >= 0; i--) {
            if (choice || needed.contains(steps.get(i).id())) {
                needed.add(steps.get(i).id());
                needed.addAll(steps.get(i).uses());
            }
        }
        Set<String> right = new LinkedHashSet<>();
        for (Checked.Told place : checked.places()) {
            if (place.kind() == Checked.Kind.RIGHT) {
                right.add(answer(key, place.question()).step());
            }
        }
        for (int i = steps.size() - 1; i >= 0; i--) {
            if (right.contains(steps.get(i).id())) {
                right.addAll(steps.get(i).uses());
            }
        }
        List<Integer> numbers = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            String id = steps.get(i).id();
            if (needed.contains(id) && !right.contains(id) && !worked.contains(i + 1)) {
                numbers.add(i + 1);
            }
        }
        return numbers;
    }
}
