package ampersheet.marking;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.Verdict;
import ampersheet.sheet.SheetProblem;
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

    /** Empty where the answer is right, cannot be read, or is not explained. */
    static Optional<Cause> of(SheetProblem problem, AnswerKey key, Verdict verdict) {
        return switch (verdict.rung()) {
            case KNOWN_MISTAKE -> Optional.of(modelled(problem, key, verdict));
            case CRITERION_MISSED ->
                Optional.of(criterion(problem, key, verdict.mistake().orElseThrow()));
            case WRONG_DIMENSION -> slip("another quantity", "The answer's unit belongs to another quantity.");
            case UNIT_MISSING -> slip("unit missing", "The number is right, but its unit is missing.");
            case OTHER_SCALE -> slip("K for °C", "The number is right for °C, but K stands behind it.");
            case RISE_OR_TEMPERATURE ->
                slip("rise or temperature", "A rise and a temperature, or their zeros, were mixed up.");
            case OTHER_QUANTITY ->
                slip("another quantity's value", "The value belongs to another quantity of the problem.");
            case EXACT_OR_FITTED ->
                slip(
                        "calculated or fitted",
                        "The calculated value stands where the fitted one counts, or the" + " reverse.");
            case WRONG_PAIR -> slip("wrong pair", "The voltage of one part was multiplied by the current of another.");
            case CARRIED_MISTAKE ->
                slip("carried mistake", "The value follows from a known mistake in an earlier question.");
            case MISPLACED_GIVEN ->
                slip("left out or misplaced", "A given was left out, or another one was put in its place.");
            case NEAR_MISS ->
                slip("near miss", "The value is near: rounded on the way, or something small was left out.");
            case TOO_COARSE -> slip("rounded too far", "The method looks right, but the number is rounded too far.");
            case POWER_OF_TEN -> slip("power of ten", "The digits are right, but not the power of ten.");
            case SIGN -> slip("sign", "The size is right, but not the sign.");
            case RECIPROCAL -> slip("upside down", "A division is upside down.");
            case CONSISTENT_WITH_EARLIER ->
                verdict.carriedFrom().isEmpty()
                        ? slip("rounded on the way", "A rounded value was used to go on with.")
                        : Optional.empty();
            case BLANK, UNREADABLE, AMBIGUOUS, INCOMPLETE, CORRECT, UNEXPLAINED -> Optional.empty();
        };
    }

    private static Cause modelled(SheetProblem problem, AnswerKey key, Verdict verdict) {
        String id = verdict.mistake().orElseThrow();
        return key.acceptance() instanceof Acceptance.Choice
                ? new Cause(
                        problem.template().name() + " " + key.step() + " " + id,
                        "chose “" + verdict.understood() + "”",
                        verdict.message(),
                        true)
                : new Cause(id, id.replace('-', ' '), verdict.message(), true);
    }

    /** Without the learner's own values, which differ from one to the next. */
    private static Cause criterion(SheetProblem problem, AnswerKey key, String id) {
        String says = problem.template().designs().stream()
                .filter(design -> design.steps().contains(key.step()))
                .flatMap(design -> design.criteria().stream())
                .filter(criterion -> criterion.id().equals(id))
                .map(ProblemTemplate.Criterion::says)
                .findFirst()
                .orElseThrow();
        return new Cause(problem.template().name() + " " + id, id.replace('-', ' '), says, true);
    }

    private static Optional<Cause> slip(String label, String says) {
        return Optional.of(new Cause("slip: " + label, label, says, false));
    }
}
