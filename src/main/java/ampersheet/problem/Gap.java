package ampersheet.problem;

import ampersheet.answer.KnownMistake;
import ampersheet.problem.Problem.Answer;
import ampersheet.template.ProblemTemplate.Proof;
import java.util.List;
import java.util.Map;

/** Compares the two routes: relative to the first where that is not zero, otherwise absolutely. */
final class Gap {
    /** Arithmetic alone accounts for this much between a count and the same count. */
    private static final double ARITHMETIC = 1e-9;

    private Gap() {}

    static Answer exact(String of, double first, double second, Map<String, List<KnownMistake>> mistakes) {
        return answer(of, first, second, ARITHMETIC, 0, mistakes);
    }

    static Answer within(Proof proof, double first, double second, Map<String, List<KnownMistake>> mistakes) {
        return answer(proof.of(), first, second, proof.within(), proof.floor(), mistakes);
    }

    private static Answer answer(
            String of,
            double first,
            double second,
            double relative,
            double floor,
            Map<String, List<KnownMistake>> mistakes) {
        double apart = Math.abs(first - second);
        double size = Math.abs(first);
        double gap = size > 0 ? apart / size : apart;
        double allowed = size > 0 ? Math.max(relative, floor / size) : Math.max(floor, ARITHMETIC);
        return new Answer(of, first, second, gap, allowed, gap <= allowed, mistakes.getOrDefault(of, List.of()));
    }
}
