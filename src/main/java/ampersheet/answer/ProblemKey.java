package ampersheet.answer;

import ampersheet.formula.Values;
import ampersheet.formula.Working;
import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityWriter;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Everything needed to judge the answers of one problem.
 *
 * @param answers in the order asked
 * @param givens the drawn numbers
 * @param working the steps, from which a later answer is worked again with the learner's own earlier value
 * @param designs the design tasks whose blanks are among the answers
 * @param meanings what givens and steps are, as in "the supply voltage", by name; where one has none, its name is told
 * @param language of the meanings and of all that is said
 * @param decimal how numbers are written in what is said
 */
public record ProblemKey(
        List<AnswerKey> answers,
        Values givens,
        Working working,
        List<DesignKey> designs,
        Map<String, String> meanings,
        Language language,
        DecimalMarker decimal) {
    public ProblemKey {
        answers = List.copyOf(answers);
        designs = List.copyOf(designs);
        meanings = Collections.unmodifiableMap(new LinkedHashMap<>(meanings));
    }

    /** Nothing has a meaning but its name, and the decimal marker is a point. */
    public ProblemKey(
            List<AnswerKey> answers, Values givens, Working working, List<DesignKey> designs, Language language) {
        this(answers, givens, working, designs, Map.of(), language, DecimalMarker.POINT);
    }

    /** How a given or a step is called in a sentence. */
    String the(String name) {
        String meaning = meanings.get(name);
        return meaning == null ? name : language.say("common.the", "what", meaning);
    }

    Sentences sentences() {
        return new Sentences(language);
    }

    QuantityWriter writer() {
        return new QuantityWriter(decimal);
    }
}
