package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.DesignKey;
import ampersheet.answer.ProblemKey;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.formula.Condition;
import ampersheet.formula.Values;
import ampersheet.problem.AnswerKeys;
import ampersheet.problem.Attempt;
import ampersheet.problem.Refusal;
import ampersheet.problem.Workshop;
import ampersheet.quantity.Quantity;
import ampersheet.sheet.SheetProblem;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Templates that were corrected after the sheets had been issued. The learner answered the numbers on her sheet, so
 * these are worked again by the corrected template; drawing anew would give others. She answered the questions on her
 * sheet, too: what the corrected template asks besides is left out, and an option that it has besides is none she could
 * choose.
 */
public final class Corrections {
    /** Without them a key is not known to be right. */
    private static final Set<Refusal> UNPROVEN = Set.of(
            Refusal.ROUTES_DISAGREE,
            Refusal.MODEL_UNSOLVED,
            Refusal.NO_CASE,
            Refusal.NOT_A_NUMBER,
            Refusal.ABOVE_EXTRA_LOW_VOLTAGE);

    private static final String OTHER_QUESTIONS = say("folder.correction.other-questions");

    private final TemplateLibrary library;
    private final boolean keepsIssued;
    private final Map<String, Workshop> workshops = new TreeMap<>();

    /** What the corrected templates cannot mark is left to be marked by hand. */
    public Corrections(TemplateLibrary library) {
        this(library, false);
    }

    private Corrections(TemplateLibrary library, boolean keepsIssued) {
        this.library = library;
        this.keepsIssued = keepsIssued;
    }

    /** What the corrected templates cannot mark is marked by the key that was issued, and told. */
    public static Corrections orElseAsIssued(TemplateLibrary library) {
        return new Corrections(library, true);
    }

    /** What a problem becomes. */
    public sealed interface Corrected {
        record Same() implements Corrected {}

        /**
         * @param key by which the sheet's own questions are judged
         * @param places of the sheet, with what is expected there now
         * @param kept questions whose issued key stays, because no option of the sheet is right by the corrected one; a
         *     sentence each
         */
        record Anew(SheetProblem problem, ProblemKey key, List<AnswerKey> places, List<String> kept)
                implements Corrected {
            public Anew {
                places = List.copyOf(places);
                kept = List.copyOf(kept);
            }
        }

        /** @param why one sentence */
        record AsIssued(String why) implements Corrected {}

        /** @param why one sentence */
        record ByHand(String why) implements Corrected {}
    }

    public Corrected of(SheetProblem issued) {
        String name = issued.template().name();
        if (!library.has(name)) {
            return not(say("folder.correction.no-template", "template", name));
        }
        ProblemTemplate template;
        try {
            template = library.template(name, issued.plan().language());
        } catch (DiagnosticException broken) {
            return not(say(
                    "folder.correction.unread",
                    "why",
                    broken.diagnostics().get(0).problem()));
        }
        if (template.fingerprint().equals(issued.template().fingerprint())) {
            return new Corrected.Same();
        }
        Optional<Values> givens = givens(issued, template);
        if (givens.isEmpty()) {
            return not(say("folder.correction.other-givens"));
        }
        Attempt attempt =
                workshops.computeIfAbsent(name, n -> new Workshop(template)).workChosen(givens.get());
        if (attempt instanceof Attempt.Refused refused) {
            return not(say("folder.correction.refused", "why", refused.detail()));
        }
        Attempt.Worked worked = (Attempt.Worked) attempt;
        Optional<Attempt.Refused> unproven = worked.notes().stream()
                .filter(note -> UNPROVEN.contains(note.reason()))
                .findFirst();
        if (unproven.isPresent()) {
            return not(say("folder.correction.unproven", "why", unproven.get().detail()));
        }
        return applied(
                issued,
                new SheetProblem(issued.number(), issued.support(), issued.example(), issued.plan(), worked.problem()));
    }

    private Corrected not(String why) {
        return keepsIssued ? new Corrected.AsIssued(why) : new Corrected.ByHand(why);
    }

    /** Finds for every place of the sheet what the corrected template expects there. */
    private Corrected applied(SheetProblem issued, SheetProblem anew) {
        if (!inTheSameOrder(issued, anew)) {
            return not(OTHER_QUESTIONS);
        }
        Map<String, AnswerKey> keys = new LinkedHashMap<>();
        List<String> kept = new ArrayList<>();
        for (AnswerKey printed : issued.key().answers()) {
            boolean place =
                    issued.places().stream().anyMatch(one -> one.question().equals(printed.question()));
            Optional<AnswerKey> now = anew.keyOf(printed.step(), printed.question())
                    .filter(key -> key.unit().dimension().equals(printed.unit().dimension()))
                    .filter(key -> key.acceptance() instanceof Acceptance.Choice
                            == printed.acceptance() instanceof Acceptance.Choice);
            if (now.isPresent() && printed.acceptance() instanceof Acceptance.Choice offered) {
                Optional<AnswerKey> among =
                        amongOffered(now.get(), offered, choice(issued, printed.step()), choice(anew, printed.step()));
                String none =
                        say("folder.correction.no-option", "question", printed.question(), "option", option(now.get()));
                if (among.isEmpty() && place && !keepsIssued) {
                    return not(none);
                } else if (among.isEmpty() && place) {
                    kept.add(none + " " + say("folder.correction.kept", "option", option(printed)));
                }
                now = among.isEmpty() && place ? Optional.of(printed) : among;
            }
            if (now.isPresent()) {
                keys.put(printed.question(), now.get());
            } else if (place) {
                return not(OTHER_QUESTIONS);
            }
        }
        List<DesignKey> designs = AnswerKeys.designs(anew.problem());
        List<String> steps = keys.values().stream().map(AnswerKey::step).toList();
        if (designs.stream().anyMatch(design -> !steps.containsAll(design.steps()))) {
            return not(OTHER_QUESTIONS);
        }
        List<String> worked = anew.template().lines().stream()
                .map(ProblemTemplate.StepLine::id)
                .toList();
        List<AnswerKey> inOrder = new ArrayList<>(keys.values());
        inOrder.sort((one, other) -> Integer.compare(rank(worked, one), rank(worked, other)));
        return new Corrected.Anew(
                anew,
                new ProblemKey(
                        inOrder,
                        anew.problem().givens(),
                        anew.template().working(),
                        designs,
                        Map.of(),
                        anew.plan().language(),
                        anew.plan().decimal()),
                issued.places().stream()
                        .map(place -> keys.get(place.question()))
                        .toList(),
                kept);
    }

    private static int rank(List<String> worked, AnswerKey key) {
        int at = worked.indexOf(key.step());
        return at < 0 ? worked.size() : at;
    }

    /** Questions may have come in between, but none changed places: then they have another sense than their names. */
    private static boolean inTheSameOrder(SheetProblem issued, SheetProblem anew) {
        List<String> now =
                anew.template().asks().stream().map(ProblemTemplate.Ask::of).toList();
        int last = -1;
        for (ProblemTemplate.Ask printed : issued.template().asks()) {
            int at = now.indexOf(printed.of());
            if (at >= 0 && at < last) {
                return false;
            }
            last = Math.max(last, at);
        }
        return true;
    }

    /**
     * The key among the options that the sheet offers. An option is the same by its words; where these were changed, by
     * the condition under which it is right.
     */
    private static Optional<AnswerKey> amongOffered(
            AnswerKey now,
            Acceptance.Choice offered,
            List<ProblemTemplate.ChoiceOption> before,
            List<ProblemTemplate.ChoiceOption> after) {
        List<String> texts =
                after.stream().map(ProblemTemplate.ChoiceOption::text).toList();
        List<Condition> conditions =
                after.stream().map(ProblemTemplate.ChoiceOption::when).toList();
        List<Acceptance.Option> printed = new ArrayList<>();
        int right = -1;
        for (int i = 0; i < before.size(); i++) {
            int sameWords = texts.indexOf(before.get(i).text());
            int at = sameWords >= 0
                    ? sameWords
                    : conditions.indexOf(before.get(i).when());
            printed.add(
                    at < 0
                            ? offered.options().get(i)
                            : new Acceptance.Option(
                                    before.get(i).text(), after.get(at).otherwise()));
            right = at == now.rightOption() ? i : right;
        }
        return right < 0
                ? Optional.empty()
                : Optional.of(new AnswerKey(
                        now.question(),
                        now.step(),
                        right,
                        now.unit(),
                        now.figures(),
                        now.unitPrinted(),
                        new Acceptance.Choice(printed),
                        now.mistakes()));
    }

    private static List<ProblemTemplate.ChoiceOption> choice(SheetProblem problem, String step) {
        return problem.template().asks().stream()
                .filter(ask -> ask.of().equals(step))
                .map(ask -> ((ProblemTemplate.ChoiceAsk) ask).options())
                .findFirst()
                .orElseThrow();
    }

    private static String option(AnswerKey key) {
        return ((Acceptance.Choice) key.acceptance())
                .options()
                .get(key.rightOption())
                .text();
    }

    /** The sheet's own numbers; constants that the correction brought in are taken from it. */
    private static Optional<Values> givens(SheetProblem issued, ProblemTemplate template) {
        Values shown = issued.problem().givens();
        Map<String, Quantity> quantities = new LinkedHashMap<>();
        Map<String, String> words = new LinkedHashMap<>();
        for (ProblemTemplate.Given given : template.givens()) {
            if (given instanceof ProblemTemplate.QuantityGiven quantity) {
                Quantity value = shown.quantities().get(given.name());
                if (value == null || !value.dimension().equals(quantity.unit().dimension())) {
                    return Optional.empty();
                }
                quantities.put(given.name(), value);
            } else if (given instanceof ProblemTemplate.WordGiven word
                    && shown.words().containsKey(given.name())
                    && word.values().contains(shown.words().get(given.name()))) {
                words.put(given.name(), shown.words().get(given.name()));
            } else {
                return Optional.empty();
            }
        }
        for (ProblemTemplate.Constant constant : template.constants()) {
            quantities.put(constant.name(), constant(shown, constant));
        }
        return Optional.of(Values.of(quantities, words));
    }

    /** What the sheet shows stays, as long as it is the same kind of quantity. */
    private static Quantity constant(Values shown, ProblemTemplate.Constant constant) {
        Quantity known = shown.quantities().get(constant.name());
        return known != null && known.dimension().equals(constant.unit().dimension())
                ? known
                : new Quantity(constant.si(), constant.unit().dimension());
    }
}
