package ampersheet.render.qti;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.render.qti.Processing.Decision;
import java.util.List;

/**
 * One item as values, before it is written in one version of the format or another.
 *
 * @param item what is shown
 * @param places where responses go and what is said to each
 * @param outcomes identifiers besides the score and its most
 * @param decisions how responses become outcomes
 */
record ItemModel(ExchangeItem item, List<Place> places, List<String> outcomes, List<Decision> decisions) {
    static final String SOLUTION = "SOLUTION";
    static final String SHOWN = "SHOWN";

    ItemModel {
        places = List.copyOf(places);
        outcomes = List.copyOf(outcomes);
        decisions = List.copyOf(decisions);
    }

    /**
     * A place for one response.
     *
     * @param response identifier of what is typed or chosen
     * @param feedback identifier of the outcome that says what is said of it
     * @param correct as the format writes it
     */
    record Place(AnswerKey key, String response, String feedback, String correct, List<Said> said) {
        Place {
            said = List.copyOf(said);
        }

        boolean isChoice() {
            return key.acceptance() instanceof Acceptance.Choice;
        }
    }

    /** What is said when the outcome has this identifier. */
    record Said(String identifier, String words) {}

    /** Identifier of an option of a choice. */
    static String option(int index) {
        return "OPTION_" + (index + 1);
    }

    /** The place of a question, or of a blank step, of that name. */
    Place place(String question) {
        return places.stream()
                .filter(place -> place.key().question().equals(question))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no place is called " + question));
    }
}
