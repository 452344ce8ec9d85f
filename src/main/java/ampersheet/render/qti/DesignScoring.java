package ampersheet.render.qti;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.RightDesigns;
import ampersheet.render.qti.ItemModel.Place;
import ampersheet.render.qti.Processing.Branch;
import ampersheet.render.qti.Processing.Check;
import ampersheet.render.qti.Processing.Decision;
import ampersheet.render.qti.Processing.Effect;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * A design whose right choices can be listed. Which of them was made is found first and kept in an outcome of its own;
 * blanks, and what follows from them, are judged by that.
 */
final class DesignScoring {
    /** What may be said to a blank, besides that there is nothing and that it is not recognised. */
    static final Set<Feedback> SAID = Set.of(Feedback.INCOMPLETE, Feedback.CORRECT, Feedback.CRITERION_MISSED);

    private static final String NONE = "NONE";
    private static final String YES = "YES";
    private static final String NO = "NO";

    private final ExchangeItem item;
    private final RightDesigns design;
    private final List<Place> blanks;
    private final String choice;

    private DesignScoring(ExchangeItem item, RightDesigns design, List<Place> blanks, int number) {
        this.item = item;
        this.design = design;
        this.blanks = List.copyOf(blanks);
        this.choice = "DESIGN_" + number;
    }

    /** Of every design whose blanks are open in the item. */
    static List<DesignScoring> of(ExchangeItem item, List<Place> places) {
        List<DesignScoring> open = new ArrayList<>();
        for (RightDesigns design : item.asked().designs()) {
            List<Place> blanks = new ArrayList<>();
            for (String step : design.design().steps()) {
                places.stream().filter(place -> place.key().step().equals(step)).forEach(blanks::add);
            }
            if (blanks.size() == design.design().steps().size()) {
                open.add(new DesignScoring(item, design, blanks, open.size() + 1));
            }
        }
        return open;
    }

    private static String allowed(Place blank) {
        return blank.response().replace("RESPONSE", "ALLOWED");
    }

    private static String right(int number) {
        return "RIGHT_" + (number + 1);
    }

    List<String> outcomes() {
        List<String> outcomes = new ArrayList<>(List.of(choice));
        blanks.forEach(blank -> outcomes.add(allowed(blank)));
        return outcomes;
    }

    /** Which choice was made, and whether each value may be chosen at all. */
    List<Decision> decisions() {
        List<Decision> decisions = new ArrayList<>();
        List<Branch> choices = new ArrayList<>();
        for (int i = 0; i < design.choices().size(); i++) {
            RightDesigns.Choice made = design.choices().get(i);
            List<Check> values = new ArrayList<>();
            blanks.forEach(blank ->
                    values.add(exactly(blank, made.chosen().get(blank.key().step()))));
            choices.add(new Branch(new Check.All(values), new Effect.Says(choice, right(i))));
        }
        decisions.add(new Decision(choices, List.of(new Effect.Says(choice, NONE))));
        for (Place blank : blanks) {
            List<Check> members = ((Acceptance.Designed) blank.key().acceptance())
                    .members().stream().map(si -> exactly(blank, si)).toList();
            decisions.add(new Decision(
                    List.of(new Branch(Check.anyOf(members), new Effect.Says(allowed(blank), YES))),
                    List.of(new Effect.Says(allowed(blank), NO))));
        }
        return decisions;
    }

    private static Check exactly(Place blank, double si) {
        return ItemScoring.within(blank, List.of(ScoringRules.exactly(blank.key(), si)));
    }

    /** Of one of its blanks; nothing for any other place. */
    List<Branch> blank(Place place, double credit) {
        if (!blanks.contains(place)) {
            return List.of();
        }
        List<Check> others = blanks.stream()
                .filter(blank -> !blank.equals(place))
                .<Check>map(blank -> new Check.Is(allowed(blank), NO))
                .toList();
        List<Branch> branches = new ArrayList<>();
        branches.add(
                ItemScoring.branch(new Check.Not(new Check.Is(choice, NONE)), place, Feedback.CORRECT.name(), credit));
        branches.add(ItemScoring.branch(new Check.Is(allowed(place), NO), place, Feedback.UNEXPLAINED.name(), 0));
        if (!others.isEmpty()) {
            branches.add(ItemScoring.branch(Check.anyOf(others), place, Feedback.INCOMPLETE.name(), 0));
        }
        branches.add(ItemScoring.branch(new Check.Is(allowed(place), YES), place, Feedback.CRITERION_MISSED.name(), 0));
        return branches;
    }

    /**
     * Of a place whose answer follows from the design, where another choice was made than the key's: only that one's
     * own answer is told, since mistakes are modelled for the key's numbers.
     */
    List<Branch> following(Place place, ScoringRules.Credit credit) {
        String step = place.key().step();
        if (!item.asked()
                .key()
                .working()
                .following(Set.copyOf(design.design().steps()))
                .contains(step)) {
            return List.of();
        }
        List<Branch> branches = new ArrayList<>();
        List<Check> others = new ArrayList<>();
        for (int i = 0; i < design.choices().size(); i++) {
            AnswerKey following = place.key()
                    .following(design.choices().get(i).worked().quantity(step).value());
            if (following.equals(place.key())) {
                continue;
            }
            Check made = new Check.Is(choice, right(i));
            others.add(made);
            for (ScoringRules.Rule rule : ScoringRules.earning(item.asked().key(), following, credit)) {
                branches.add(ItemScoring.branch(
                        new Check.All(List.of(made, ItemScoring.within(place, rule.anyOf()))),
                        place,
                        rule.feedback(),
                        rule.credit()));
            }
        }
        if (!others.isEmpty()) {
            branches.add(ItemScoring.branch(Check.anyOf(others), place, Feedback.UNEXPLAINED.name(), 0));
        }
        return branches;
    }
}
