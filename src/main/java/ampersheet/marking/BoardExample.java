package ampersheet.marking;

import ampersheet.answer.AnswerKey;
import ampersheet.answer.KnownMistake;
import ampersheet.marking.Standing.Item;
import ampersheet.problem.Difficulty;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Roster;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetProblem;
import ampersheet.sheet.Support;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What to show the class: a problem with the numbers of one seat. Whoever sits there has it right, where anybody has,
 * so that nobody's mistake stands on the board; of several, the numbers that are easiest to follow.
 *
 * @param sheet whose numbers
 * @param mistake with its value for these numbers; empty where nothing explains what went wrong
 * @param exampleBefore number of the worked example of it on every sheet; 0 if there is none
 */
record BoardExample(
        Sheet sheet, SheetProblem problem, AnswerKey key, Optional<KnownMistake> mistake, int exampleBefore) {
    /** Sheets that are looked at; making each costs as much as marking one. */
    private static final int MOST_LOOKED_AT = 5;

    /** Empty where the keys at hand have no such question. */
    static Optional<BoardExample> find(
            TakeUp thing, List<Standing> standings, ClassSheets sheets, Optional<Corrections> corrections) {
        List<Roster.Seat> right = seats(thing.item(), standings, true);
        List<Roster.Seat> look = right.isEmpty() ? seats(thing.item(), standings, false) : right;
        List<BoardExample> found = new ArrayList<>();
        for (Roster.Seat seat : look.subList(0, Math.min(MOST_LOOKED_AT, look.size()))) {
            of(thing, sheets.issued(seat.number()), corrections).ifPresent(found::add);
        }
        return found.stream()
                .min(Comparator.comparing((BoardExample one) ->
                                thing.cause().isPresent() && one.mistake().isEmpty())
                        .thenComparing(BoardExample::effort));
    }

    private static List<Roster.Seat> seats(Item item, List<Standing> standings, boolean right) {
        return standings.stream()
                .filter(standing -> standing.outcomes().stream()
                        .anyMatch(
                                outcome -> outcome.item().equals(item) && (!right || outcome.credit() == Credit.RIGHT)))
                .map(Standing::seat)
                .toList();
    }

    private static Optional<BoardExample> of(
            TakeUp thing, ClassSheets.IssuedSheet issued, Optional<Corrections> corrections) {
        List<SheetProblem> problems = issued.sheet().problems();
        for (int i = 0; i < problems.size(); i++) {
            boolean here = issued.places().get(i) == thing.item().place()
                    && problems.get(i).template().name().equals(thing.item().template());
            if (here) {
                int before = i > 0
                                && problems.get(i - 1).example()
                                && problems.get(i - 1)
                                        .template()
                                        .name()
                                        .equals(thing.item().template())
                        ? problems.get(i - 1).number()
                        : 0;
                return corrected(problems.get(i), corrections)
                        .flatMap(problem -> of(thing, issued.sheet(), problem, before));
            }
        }
        return Optional.empty();
    }

    /** As it is marked; empty if it is marked by hand. */
    private static Optional<SheetProblem> corrected(SheetProblem issued, Optional<Corrections> corrections) {
        if (corrections.isEmpty()) {
            return Optional.of(issued);
        }
        Corrections.Corrected now = corrections.get().of(issued);
        if (now instanceof Corrections.Corrected.Anew anew) {
            return Optional.of(anew.problem());
        }
        return now instanceof Corrections.Corrected.ByHand ? Optional.empty() : Optional.of(issued);
    }

    private static Optional<BoardExample> of(TakeUp thing, Sheet sheet, SheetProblem problem, int before) {
        return problem.places().stream()
                .filter(key -> key.step().equals(thing.item().step()))
                .findFirst()
                .map(key -> new BoardExample(
                        sheet,
                        problem,
                        key,
                        key.mistakes().stream()
                                .filter(mistake -> thing.cause()
                                        .filter(cause -> cause.id().equals(mistake.id()))
                                        .isPresent())
                                .findFirst(),
                        before));
    }

    private int effort() {
        return Difficulty.of(problem.problem()).points();
    }

    /** The lines of the working where the mistake is made, and the one that is asked for; none for a choice. */
    List<StepBlock> lines() {
        Set<String> steps = new LinkedHashSet<>();
        mistake.ifPresent(made -> problem.template().mistakes().stream()
                .filter(one -> one.id().equals(made.id()) && one.of().equals(key.step()))
                .forEach(one -> steps.addAll(one.instead().keySet())));
        steps.add(key.step());
        return steps.stream()
                .map(step -> Composer.workedLine(problem, step))
                .flatMap(Optional::stream)
                .toList();
    }

    /** The problem worked in full, as sheets show an example. */
    List<Block> worked() {
        SheetProblem inFull =
                new SheetProblem(problem.number(), new Support.Full(), true, problem.plan(), problem.problem());
        return Composer.sheet(new Sheet(sheet.id(), sheet.plan(), List.of(inFull), Optional.empty()), "")
                .blocks()
                .stream()
                .filter(ProblemBlock.class::isInstance)
                .toList();
    }
}
