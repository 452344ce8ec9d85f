package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.answer.AnswerKey;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.Rung;
import ampersheet.answer.Verdict;
import ampersheet.language.Saying;
import ampersheet.marking.MarkedSheet.From;
import ampersheet.marking.MarkedSheet.MarkedAnswer;
import ampersheet.sheet.MarkingPolicy;
import ampersheet.sheet.Roster;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetProblem;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Marks the problems of one sheet: the engine's verdicts, and what the instructor decided against them. */
final class ProblemMarker {
    private final Roster.Seat seat;
    private final Sheet sheet;
    private final SheetAnswers answers;
    private final DecisionBook decisions;
    private final Privacy privacy;
    private final Map<String, String> typed;
    private final Map<String, List<String>> beside = new LinkedHashMap<>();
    private final List<ToDecide> toDecide = new ArrayList<>();

    ProblemMarker(Roster.Seat seat, Sheet sheet, SheetAnswers answers, DecisionBook decisions, Privacy privacy) {
        this.seat = seat;
        this.sheet = sheet;
        this.answers = answers;
        this.decisions = decisions;
        this.privacy = privacy;
        this.typed = answers.typed();
        for (String question : typed.keySet()) {
            HandIn from = answers.at(question).orElseThrow().from();
            beside.put(
                    question,
                    typed.keySet().stream()
                            .filter(other -> !other.equals(question)
                                    && answers.at(other).orElseThrow().from() == from)
                            .map(typed::get)
                            .toList());
        }
    }

    Sheet sheet() {
        return sheet;
    }

    /** Answers that nobody could read and nobody has decided. */
    List<ToDecide> toDecide() {
        return List.copyOf(toDecide);
    }

    /**
     * The answers to one problem.
     *
     * @param place of the problem in the plan's list
     * @param issued the problem with the key before it was corrected
     */
    List<MarkedAnswer> mark(
            SheetProblem problem, int place, ProblemKey key, List<AnswerKey> places, Optional<SheetProblem> issued) {
        Map<String, Decision> decided = new LinkedHashMap<>();
        Map<String, String> readAs = new LinkedHashMap<>();
        for (AnswerKey at : places) {
            decided(at, new Standing.Item(place, problem.template().name(), at.step()))
                    .ifPresent(decision -> decided.put(at.question(), decision));
        }
        decided.entrySet().removeIf(entry -> !isReadable(key, entry.getKey(), entry.getValue()));
        decided.forEach((question, decision) -> {
            if (decision.kind() == Decision.Kind.READ_AS) {
                readAs.put(question, decision.value());
            }
        });
        Judged judged = new Judged(key, typed, readAs, beside);
        Judged before = issued.map(with -> new Judged(with.key(), typed, readAs, beside))
                .orElse(judged);
        List<MarkedAnswer> marked = new ArrayList<>();
        for (AnswerKey at : places) {
            String question = at.question();
            Verdict verdict = judged.verdict(question);
            Optional<Decision> decision = Optional.ofNullable(decided.get(question));
            Credit credit = credit(verdict, decision);
            Optional<SheetAnswers.Taken> taken = answers.at(question);
            taken.filter(from -> !from.answer().isBlank())
                    .ifPresent(from -> from.file().countMarked());
            if (credit == Credit.UNREADABLE && decision.isEmpty()) {
                tell(at, verdict, judged.meanings(question));
            }
            marked.add(new MarkedAnswer(
                    at,
                    new Standing.Item(place, problem.template().name(), at.step()),
                    verdict,
                    credit,
                    earned(credit, verdict, problem.template().name(), at.step()),
                    credit == Credit.of(verdict)
                            ? Cause.of(problem, at, verdict, sheet.plan().language())
                            : Optional.empty(),
                    ChangedVerdict.between(question, problem.template().name(), before.verdict(question), verdict),
                    taken.map(
                            from -> new From(from.file(), from.answer().place().line())),
                    judged.settled(question),
                    decision));
        }
        return marked;
    }

    /** Whether an answer can be read as the instructor says; if not, she is told, and it stays as it was typed. */
    private boolean isReadable(ProblemKey key, String question, Decision decision) {
        if (decision.kind() != Decision.Kind.READ_AS) {
            return true;
        }
        Judged so = new Judged(key, typed, Map.of(question, decision.value()), Map.of());
        boolean readable = Credit.of(so.verdict(question)) != Credit.UNREADABLE;
        if (!readable) {
            decisions.doesNotFit(
                    decision, say("folder.decision.value.unread", "value", decision.value(), "question", question));
        }
        return readable;
    }

    private Optional<Decision> decided(AnswerKey at, Standing.Item item) {
        Optional<Decision> forAll = decisions.leftOut(item);
        if (forAll.isPresent() || decisions.isEmpty()) {
            return forAll;
        }
        List<String> stands = answers.isUndecided(at.question())
                ? answers.contradicting(at.question())
                : List.of(typed.getOrDefault(at.question(), ""));
        return stands.stream()
                .map(text -> decisions.ofAnswer(seat.number(), at.question(), text, privacy.text(text)))
                .flatMap(Optional::stream)
                .findFirst();
    }

    private Earned earned(Credit credit, Verdict verdict, String template, String step) {
        MarkingPolicy policy = sheet.plan().marking();
        long late = answers.at(verdict.question())
                .map(taken -> taken.file().minutesLate())
                .orElse(0L);
        return Earned.of(
                credit,
                credit == Credit.of(verdict) ? verdict.rung() : Rung.CORRECT,
                policy,
                policy.marks(template, step),
                late);
    }

    private Credit credit(Verdict verdict, Optional<Decision> decision) {
        if (decision.isPresent()) {
            Decision.Kind kind = decision.get().kind();
            if (kind == Decision.Kind.ACCEPT || kind == Decision.Kind.MARK) {
                return decision.get().credit();
            }
        }
        boolean open = decision.isEmpty() && answers.isUndecided(verdict.question());
        return open ? Credit.UNDECIDED : Credit.of(verdict);
    }

    private void tell(AnswerKey at, Verdict verdict, List<Saying> meanings) {
        Optional<SheetAnswers.Taken> taken = answers.at(verdict.question());
        toDecide.add(new ToDecide(
                List.of(seat.number()),
                sheet.id().toString(),
                ToDecide.Asked.of(sheet, at),
                verdict.asTyped(),
                taken.map(from -> from.file().shown()).orElse(""),
                taken.map(from -> from.answer().place().line()).orElse(0),
                verdict.rung() == Rung.AMBIGUOUS
                        ? Saying.of("report.decide.two-ways")
                        : FileFault.asItIs(privacy.said(verdict)),
                meanings));
    }
}
