package ampersheet.marking;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.Verdict;
import ampersheet.language.Language;
import ampersheet.sheet.SheetProblem;
import ampersheet.source.Languages;
import ampersheet.template.ProblemTemplate;
import java.util.Optional;

/**
 * What probably led to an answer that is not right. The same id in two problems means the same cause: a modelled
 * mistake keeps its id across templates, a slip has one for all of them, an option belongs to its question alone.
 *
 * @param label a few words for a table
 * @param says to the learner, one or two sentences
 * @param modelled whether the template models it, as opposed to a slip that can happen in any problem
 */
record Cause(String id, String label, String says, boolean modelled) {
    private static final int LONGEST_LABEL = 70;

    /** Empty where the answer is right, cannot be read, or is not explained. */
    static Optional<Cause> of(SheetProblem problem, AnswerKey key, Verdict verdict, Language language) {
        return switch (verdict.rung()) {
            case KNOWN_MISTAKE -> Optional.of(modelled(problem, key, verdict, language));
            case CRITERION_MISSED ->
                Optional.of(criterion(problem, key, verdict.mistake().orElseThrow(), language));
            default -> slip(verdict).map(slip -> slip.cause(language));
        };
    }

    private static Optional<Slip> slip(Verdict verdict) {
        return switch (verdict.rung()) {
            case WRONG_DIMENSION -> Optional.of(Slip.OTHER_DIMENSION);
            case UNIT_MISSING -> Optional.of(Slip.UNIT_MISSING);
            case OTHER_SCALE -> Optional.of(Slip.OTHER_SCALE);
            case RISE_OR_TEMPERATURE -> Optional.of(Slip.RISE_OR_TEMPERATURE);
            case OTHER_QUANTITY -> Optional.of(Slip.OTHER_VALUE);
            case EXACT_OR_FITTED -> Optional.of(Slip.EXACT_OR_FITTED);
            case WRONG_PAIR -> Optional.of(Slip.WRONG_PAIR);
            case CARRIED_MISTAKE -> Optional.of(Slip.CARRIED_MISTAKE);
            case MISPLACED_GIVEN -> Optional.of(Slip.MISPLACED);
            case NEAR_MISS -> Optional.of(Slip.NEAR_MISS);
            case TOO_COARSE -> Optional.of(Slip.TOO_COARSE);
            case POWER_OF_TEN -> Optional.of(Slip.POWER_OF_TEN);
            case SIGN -> Optional.of(Slip.SIGN);
            case RECIPROCAL -> Optional.of(Slip.RECIPROCAL);
            case CONSISTENT_WITH_EARLIER ->
                verdict.carriedFrom().isEmpty() ? Optional.of(Slip.ROUNDED) : Optional.empty();
            case BLANK, UNREADABLE, AMBIGUOUS, INCOMPLETE, CORRECT, UNEXPLAINED, KNOWN_MISTAKE, CRITERION_MISSED ->
                Optional.empty();
        };
    }

    private static Cause modelled(SheetProblem problem, AnswerKey key, Verdict verdict, Language language) {
        String id = verdict.mistake().orElseThrow();
        return key.acceptance() instanceof Acceptance.Choice
                ? new Cause(
                        problem.template().name() + " " + key.step() + " " + id,
                        language.say("report.cause.chosen", "option", verdict.understood()),
                        verdict.message(),
                        true)
                : new Cause(id, label(id, verdict.message(), language), verdict.message(), true);
    }

    /** Without the learner's own values, which differ from one to the next. */
    private static Cause criterion(SheetProblem problem, AnswerKey key, String id, Language language) {
        String says = problem.template().designs().stream()
                .filter(design -> design.steps().contains(key.step()))
                .flatMap(design -> design.criteria().stream())
                .filter(criterion -> criterion.id().equals(id))
                .map(ProblemTemplate.Criterion::says)
                .findFirst()
                .orElseThrow();
        return new Cause(problem.template().name() + " " + id, label(id, says, language), says, true);
    }

    /**
     * The name that its id is; in another language its name there or, where it has none, the beginning of what is said.
     */
    private static String label(String id, String says, Language language) {
        if (language.equals(Languages.ENGLISH)) {
            return id.replace('-', ' ');
        } else if (!language.mistake(id).isEmpty()) {
            return language.mistake(id);
        }
        int end = says.indexOf(". ");
        String first = end < 0 ? says : says.substring(0, end);
        int blank = first.length() <= LONGEST_LABEL ? -1 : first.lastIndexOf(' ', LONGEST_LABEL);
        return blank < 0 ? first : first.substring(0, blank) + " …";
    }
}
