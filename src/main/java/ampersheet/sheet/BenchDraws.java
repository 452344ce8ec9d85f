package ampersheet.sheet;

import ampersheet.bench.BenchCircuit;
import ampersheet.bench.Drawer;
import ampersheet.bench.NotLaidOut;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.formula.Values;
import ampersheet.language.Language;
import ampersheet.problem.Draws;
import ampersheet.problem.Problem;
import ampersheet.template.ProblemTemplate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Draws of one template for cards: such that no sheet of the class shows, and only those that can be laid out. Every
 * learner gets others.
 */
final class BenchDraws {
    /** Of so many draws in a row one can be laid out, or the template is left out. */
    private static final int TRIES = 30;

    private final Draws draws;
    private final Drawer drawer;
    private final List<Values> onSheets;
    private final Language language;
    private final Map<NotLaidOut.Reason, Integer> refused = new EnumMap<>(NotLaidOut.Reason.class);
    private final Map<NotLaidOut.Reason, String> told = new EnumMap<>(NotLaidOut.Reason.class);
    private int next;
    private Optional<String> given = Optional.empty();

    /**
     * @param draws in another order than the sheets have them
     * @param onSheets numbers that learners have before them
     */
    BenchDraws(Draws draws, Drawer drawer, List<Values> onSheets, Language language) {
        this.draws = draws;
        this.drawer = drawer;
        this.onSheets = List.copyOf(onSheets);
        this.language = language;
        try {
            BenchCircuit.requireForTheBench(template());
        } catch (NotLaidOut whateverItsNumbers) {
            given = Optional.of(told(whateverItsNumbers));
        }
    }

    ProblemTemplate template() {
        return draws.template();
    }

    /** Why there was no card the last time; a clause. */
    Optional<String> given() {
        return given;
    }

    /** The next that can be laid out, with parts from what is left in the bins; empty if there is none. */
    Optional<BenchCircuit> next() {
        for (int tries = 0; tries < TRIES && given.isEmpty(); tries++) {
            Problem problem;
            try {
                problem = draws.draw(next++);
            } catch (DiagnosticException exhausted) {
                give(language.say("sheet.leaf.because.no-draw-left"));
                break;
            }
            if (onSheets.contains(problem.givens())) {
                continue;
            }
            try {
                BenchCircuit circuit = BenchCircuit.of(problem, drawer);
                drawer.take(circuit);
                return Optional.of(circuit);
            } catch (NotLaidOut reason) {
                refused.merge(reason.reason(), 1, Integer::sum);
                told.putIfAbsent(reason.reason(), told(reason));
            }
        }
        give(language.say("sheet.leaf.because.all-on-sheets"));
        return Optional.empty();
    }

    /** Later seats would find none either. */
    private void give(String otherwise) {
        if (given.isEmpty()) {
            given = Optional.of(refused.entrySet().stream()
                    .max(Map.Entry.comparingByValue())
                    .map(most -> told.get(most.getKey()))
                    .orElse(otherwise));
        }
    }

    /** With the names that stand in the figure. */
    private String told(NotLaidOut why) {
        Map<String, String> captions = BenchWords.captions(template());
        return why.told(template().language(), part -> captions.getOrDefault(part, part));
    }
}
