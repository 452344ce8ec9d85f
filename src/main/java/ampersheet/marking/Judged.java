package ampersheet.marking;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.Judge;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.Rung;
import ampersheet.answer.Verdict;
import ampersheet.language.Saying;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The verdicts on the answers to one problem, each said of what was typed, though it may have been read as the
 * instructor or the other answers of its writer tell.
 */
final class Judged {
    private final ProblemKey key;
    private final Map<String, String> typed;
    private final Map<String, String> read;
    private final Map<String, CommaReading> settled = new LinkedHashMap<>();
    private final Map<String, List<Saying>> meanings = new LinkedHashMap<>();
    private Map<String, Verdict> verdicts;

    /**
     * Judges them.
     *
     * @param typed by question
     * @param readAs what the instructor says some of them mean
     * @param beside what the writer of an answer wrote elsewhere, by question
     */
    Judged(ProblemKey key, Map<String, String> typed, Map<String, String> readAs, Map<String, List<String>> beside) {
        this.key = key;
        this.typed = typed;
        this.read = new LinkedHashMap<>(typed);
        this.read.putAll(readAs);
        this.verdicts = verdicts(read);
        for (AnswerKey answer : key.answers()) {
            String question = answer.question();
            if (verdicts.get(question).rung() == Rung.AMBIGUOUS
                    && !(answer.acceptance() instanceof Acceptance.Choice)) {
                readComma(question, CommaReading.shownBy(beside.getOrDefault(question, List.of()), key.decimal()));
            }
        }
    }

    private static Map<String, Verdict> verdicts(ProblemKey key, Map<String, String> read) {
        Map<String, Verdict> verdicts = new LinkedHashMap<>();
        Judge.judge(key, read).forEach(verdict -> verdicts.put(verdict.question(), verdict));
        return verdicts;
    }

    private Map<String, Verdict> verdicts(Map<String, String> of) {
        return verdicts(key, of);
    }

    /**
     * Where the other reading would earn more, a person should look: the evidence is about a habit, and habits slip.
     */
    private void readComma(String question, Optional<CommaReading> shown) {
        List<Saying> told = new ArrayList<>();
        Map<CommaReading, Map<String, Verdict>> by = new LinkedHashMap<>();
        for (CommaReading reading : CommaReading.values()) {
            Map<String, String> so = new LinkedHashMap<>(read);
            so.put(question, reading.of(read.get(question), key.decimal()));
            by.put(reading, verdicts(so));
            Verdict verdict = by.get(reading).get(question);
            told.add(
                    Credit.of(verdict).isFull()
                            ? Saying.of("report.decide.meaning-right", "value", verdict.understood())
                            : Saying.of("report.decide.meaning-not-right", "value", verdict.understood()));
        }
        meanings.put(question, told);
        if (shown.isEmpty()
                || earned(by.get(shown.get()), question)
                        < earned(by.get(shown.get().other()), question)) {
            return;
        }
        settled.put(question, shown.get());
        read.put(question, shown.get().of(read.get(question), key.decimal()));
        verdicts = by.get(shown.get());
    }

    private static int earned(Map<String, Verdict> verdicts, String question) {
        return Earned.usual(Credit.of(verdicts.get(question))).marks();
    }

    /** Said of what was typed. */
    Verdict verdict(String question) {
        Verdict of = verdicts.get(question);
        String as = typed.get(question);
        return as == null || as.equals(read.get(question))
                ? of
                : new Verdict(
                        of.question(), as, of.rung(), of.understood(), of.message(), of.mistake(), of.carriedFrom());
    }

    /** How the comma of an answer was read, where its writer's other answers tell. */
    Optional<CommaReading> settled(String question) {
        return Optional.ofNullable(settled.get(question));
    }

    /** What an answer with such a comma may mean; empty for others. */
    List<Saying> meanings(String question) {
        return meanings.getOrDefault(question, List.of());
    }
}
