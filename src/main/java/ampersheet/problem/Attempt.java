package ampersheet.problem;

import java.util.List;

/** What became of one combination of givens. */
public sealed interface Attempt {

    /**
     * A problem that was worked by both routes.
     *
     * @param supporting proven steps that are not asked but that a model or another proof takes as a value, in the
     *     order of the template's proofs
     * @param notes what a draw with these givens would have been refused for; always empty for a draw
     */
    record Worked(Problem problem, List<Problem.Answer> supporting, List<Refused> notes) implements Attempt {
        public Worked {
            supporting = List.copyOf(supporting);
            notes = List.copyOf(notes);
        }
    }

    /** @param detail one sentence with this draw's numbers */
    record Refused(Refusal reason, String detail) implements Attempt {}
}
