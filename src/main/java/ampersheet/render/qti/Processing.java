package ampersheet.render.qti;

import java.util.List;

/**
 * How responses become outcomes, as values. Numbers are compared with plain numbers and nothing else: what a platform
 * makes of tolerances, of correct responses and of attributes that may be left out is no matter then.
 */
final class Processing {
    private Processing() {}

    /** What is asked of responses, and of outcomes that were set before. */
    sealed interface Check {
        /** Nothing was typed. */
        record Open(String response) implements Check {}

        /** Ends included. */
        record Within(String response, double least, double most) implements Check {}

        /** A choice, or an outcome, is this identifier. */
        record Is(String variable, String value) implements Check {}

        /** As often as that, this time included. */
        record Tried(int times) implements Check {}

        record Not(Check check) implements Check {}

        record All(List<Check> checks) implements Check {
            public All {
                checks = List.copyOf(checks);
            }
        }

        record Any(List<Check> checks) implements Check {
            public Any {
                checks = List.copyOf(checks);
            }
        }

        /** One that holds if any of them does; a single one stands by itself. */
        static Check anyOf(List<? extends Check> checks) {
            return checks.size() == 1 ? checks.get(0) : new Any(List.copyOf(checks));
        }
    }

    /** What follows. */
    sealed interface Effect {
        /** An outcome becomes this identifier. */
        record Says(String outcome, String value) implements Effect {}

        /** So much is added to the score. */
        record Earns(double credit) implements Effect {}
    }

    record Branch(Check when, List<Effect> then) {
        Branch {
            then = List.copyOf(then);
        }

        Branch(Check when, Effect then) {
            this(when, List.of(then));
        }
    }

    /** The first branch that holds, else what is said otherwise, which may be nothing. */
    record Decision(List<Branch> branches, List<Effect> otherwise) {
        Decision {
            branches = List.copyOf(branches);
            otherwise = List.copyOf(otherwise);
        }
    }
}
