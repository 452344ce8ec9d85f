package ampersheet.render.qti;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.language.Language;
import ampersheet.render.qti.ExchangeItem.Asked;
import ampersheet.render.qti.ItemModel.Place;
import ampersheet.render.qti.ItemModel.Said;
import ampersheet.render.qti.Processing.Branch;
import ampersheet.render.qti.Processing.Check;
import ampersheet.render.qti.Processing.Decision;
import ampersheet.render.qti.Processing.Effect;
import java.util.ArrayList;
import java.util.List;

/** Makes the model of an item: what each response earns and what is said of it, as the judge would have it. */
final class ItemScoring {
    private final ExchangeItem item;
    private final Asked asked;
    private final ExchangeSession session;
    private final List<Place> places = new ArrayList<>();
    private final List<String> outcomes = new ArrayList<>();
    private final List<Decision> decisions = new ArrayList<>();

    private ItemScoring(ExchangeItem item, ExchangeSession session) {
        this.item = item;
        this.asked = item.asked();
        this.session = session;
    }

    static ItemModel model(ExchangeItem item, ExchangeSession session) {
        return new ItemScoring(item, session).model();
    }

    private ItemModel model() {
        for (int i = 0; i < asked.places().size(); i++) {
            places.add(place(i));
        }
        places.forEach(place -> outcomes.add(place.feedback()));
        List<DesignScoring> designs = DesignScoring.of(item, places);
        designs.forEach(design -> {
            outcomes.addAll(design.outcomes());
            decisions.addAll(design.decisions());
        });
        for (int i = 0; i < places.size(); i++) {
            decisions.add(decision(i, designs));
        }
        outcomes.add(ItemModel.SOLUTION);
        decisions.add(solution());
        return new ItemModel(item, places, outcomes, decisions);
    }

    private Place place(int index) {
        AnswerKey key = asked.places().get(index);
        String letter = ExchangeItem.letter(index);
        return new Place(
                key,
                "RESPONSE_" + letter,
                "FEEDBACK_" + letter,
                key.acceptance() instanceof Acceptance.Choice
                        ? ItemModel.option(key.rightOption())
                        : ProcessingMarkup.plain(ScoringRules.printed(key, key.expected())),
                said(index, key));
    }

    private ScoringRules.Credit credit(int index) {
        return new ScoringRules.Credit(asked.right(index), asked.coarse(index));
    }

    // What is said

    private List<Said> said(int index, AnswerKey key) {
        Language language = item.about().language();
        List<Said> said = new ArrayList<>();
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            said.add(new Said(Feedback.BLANK.name(), Feedback.BLANK.says(key, language)));
            said.add(new Said(Feedback.CORRECT.name(), Feedback.CORRECT.says(key, language)));
            for (int i = 0; i < choice.options().size(); i++) {
                if (i != key.rightOption()) {
                    String says = choice.options().get(i).explanation();
                    said.add(new Said(
                            ItemModel.option(i), says.isEmpty() ? Feedback.UNEXPLAINED.says(key, language) : says));
                }
            }
            return said;
        }
        boolean designed = key.acceptance() instanceof Acceptance.Designed;
        List<ScoringRules.Rule> rules = designed ? List.of() : ScoringRules.of(asked.key(), key, credit(index));
        for (Feedback feedback : Feedback.values()) {
            boolean comes = feedback == Feedback.BLANK
                    || feedback == Feedback.UNEXPLAINED
                    || designed && DesignScoring.SAID.contains(feedback)
                    || rules.stream().anyMatch(rule -> rule.feedback().equals(feedback.name()));
            if (comes) {
                said.add(new Said(feedback.name(), feedback.says(key, language)));
            }
        }
        for (int i = 0; i < key.mistakes().size(); i++) {
            said.add(new Said(ScoringRules.mistake(i), key.mistakes().get(i).explanation()));
        }
        return said;
    }

    // What it earns

    /** Nothing typed comes first: every comparison with it would fail, and an open place is no mistake. */
    private Decision decision(int index, List<DesignScoring> designs) {
        Place place = places.get(index);
        List<Branch> branches = new ArrayList<>();
        branches.add(new Branch(new Check.Open(place.response()), says(place, Feedback.BLANK.name())));
        if (place.key().acceptance() instanceof Acceptance.Choice choice) {
            for (int i = 0; i < choice.options().size(); i++) {
                boolean right = i == place.key().rightOption();
                branches.add(branch(
                        new Check.Is(place.response(), ItemModel.option(i)),
                        place,
                        right ? Feedback.CORRECT.name() : ItemModel.option(i),
                        right ? asked.right(index) : 0));
            }
        } else if (place.key().acceptance() instanceof Acceptance.Designed) {
            for (DesignScoring design : designs) {
                branches.addAll(design.blank(place, asked.right(index)));
            }
        } else {
            designs.forEach(design -> branches.addAll(design.following(place, credit(index))));
            ScoringRules.of(asked.key(), place.key(), credit(index))
                    .forEach(rule ->
                            branches.add(branch(within(place, rule.anyOf()), place, rule.feedback(), rule.credit())));
        }
        return new Decision(branches, List.of(says(place, Feedback.UNEXPLAINED.name())));
    }

    static Check within(Place place, List<ScoringRules.Band> anyOf) {
        return Check.anyOf(anyOf.stream()
                .map(band -> new Check.Within(place.response(), band.least(), band.most()))
                .toList());
    }

    static Branch branch(Check when, Place place, String said, double credit) {
        return new Branch(
                when, credit > 0 ? List.of(new Effect.Earns(credit), says(place, said)) : List.of(says(place, said)));
    }

    private static Effect says(Place place, String said) {
        return new Effect.Says(place.feedback(), said);
    }

    /**
     * With one attempt once nothing is left open; with several once everything is right, or with the last of them, so
     * that nobody copies the answers from the working.
     */
    private Decision solution() {
        List<Check> answered = new ArrayList<>();
        places.forEach(place -> answered.add(new Check.Not(new Check.Open(place.response()))));
        if (session.attempts() != 1) {
            List<Check> right = new ArrayList<>();
            places.forEach(place -> right.add(new Check.Is(place.feedback(), Feedback.CORRECT.name())));
            Check all = new Check.All(right);
            answered.add(
                    session.isUnlimited() ? all : new Check.Any(List.of(all, new Check.Tried(session.attempts()))));
        }
        return new Decision(
                List.of(new Branch(new Check.All(answered), new Effect.Says(ItemModel.SOLUTION, ItemModel.SHOWN))),
                List.of());
    }
}
