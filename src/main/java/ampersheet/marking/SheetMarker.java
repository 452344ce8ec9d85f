package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.answer.AnswerKey;
import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.language.Language;
import ampersheet.language.Saying;
import ampersheet.marking.MarkedSheet.MarkedAnswer;
import ampersheet.marking.MarkedSheet.MarkedProblem;
import ampersheet.problem.Difficulty;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.FingerprintText;
import ampersheet.sheet.MarkingPolicy;
import ampersheet.sheet.Roster;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetProblem;
import ampersheet.source.Told;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Marks one sheet after the other. */
final class SheetMarker {
    private static final int SHEETS_TOLD = 5;

    private final ClassSheets sheets;
    private final Optional<Corrections> corrections;
    private final DecisionBook decisions;
    private final Privacy privacy;
    private final List<ToDecide> toDecide = new ArrayList<>();
    private final List<SetAside> setAside = new ArrayList<>();
    private final List<Diagnostic> notes = new ArrayList<>();
    private final List<ChangedVerdict.Of> changed = new ArrayList<>();
    /** Sheets on which an issued key stays, by template and reason. */
    private final Map<List<String>, List<String>> kept = new LinkedHashMap<>();

    SheetMarker(ClassSheets sheets, Optional<Corrections> corrections, DecisionBook decisions, Privacy privacy) {
        this.sheets = sheets;
        this.corrections = corrections;
        this.decisions = decisions;
        this.privacy = privacy;
    }

    /** Answers and hand-ins that only the instructor can decide. */
    List<ToDecide> toDecide() {
        return List.copyOf(toDecide);
    }

    /** Answers for which there was no place or that another took. */
    List<SetAside> setAside() {
        return List.copyOf(setAside);
    }

    /** Problems that a corrected template leaves without a key, and what else is to be known of the keys. */
    List<Diagnostic> notes() {
        List<Diagnostic> all = new ArrayList<>(notes.stream().distinct().toList());
        kept.forEach((why, on) -> all.add(Diagnostic.warning(
                Place.inFile(why.get(0)),
                byIssuedKey(on) + " " + why.get(1),
                "",
                say("folder.marking.issued-key.next"))));
        return all;
    }

    private static String byIssuedKey(List<String> sheets) {
        int all = sheets.size();
        String told = String.join(", ", sheets.subList(0, Math.min(all, SHEETS_TOLD)));
        return all > SHEETS_TOLD
                ? say("folder.marking.issued-key.many", "count", Integer.toString(all), "sheets", told)
                : Told.count("folder.marking.issued-key", all, "sheets", told);
    }

    /** Answers that a correction makes worth more or less. */
    List<ChangedVerdict.Of> changed() {
        return List.copyOf(changed);
    }

    MarkedSheet mark(Roster.Seat seat, List<HandIn> handIns) {
        ClassSheets.IssuedSheet of = sheets.issued(seat.number());
        List<HandIn> counting = handIns;
        if (sheets.plan().marking().rounds() == MarkingPolicy.Rounds.BEST && handIns.size() > 1) {
            counting = HandInRounds.best(
                    handIns,
                    upTo -> new SheetMarker(sheets, corrections, decisions.trial(), privacy)
                            .mark(seat, of, upTo)
                            .standing()
                            .marks());
            for (HandIn one : handIns) {
                if (!counting.contains(one)) {
                    one.all().forEach(answer -> setAside.add(SetAside.worse(answer)));
                    one.file()
                            .add(FileFault.warning(
                                    one.first().place(),
                                    Saying.of(
                                            "report.file.better-before",
                                            "sheet",
                                            of.sheet().id().toString()),
                                    say("folder.hand-in.worse.next")));
                }
            }
        }
        return mark(seat, of, counting);
    }

    private MarkedSheet mark(Roster.Seat seat, ClassSheets.IssuedSheet of, List<HandIn> handIns) {
        Sheet sheet = of.sheet();
        notes.addAll(of.remarks());
        SheetAnswers answers = new SheetAnswers(
                sheet,
                of.lost().stream().flatMap(lost -> lost.questions().stream()).toList(),
                handIns);
        setAside.addAll(answers.setAside());
        toDecide.addAll(answers.toDecide().stream()
                .filter(one -> one.question().isEmpty() || !isDecided(seat, one))
                .toList());
        ProblemMarker marker = new ProblemMarker(seat, sheet, answers, decisions, privacy);
        List<MarkedProblem> problems = new ArrayList<>();
        List<Standing.Outcome> outcomes = new ArrayList<>();
        for (int i = 0; i < sheet.problems().size(); i++) {
            SheetProblem issued = sheet.problems().get(i);
            if (!issued.places().isEmpty()) {
                MarkedProblem marked = mark(issued, of.places().get(i), answers, marker);
                problems.add(marked);
                outcomes(marked, sheet.plan().language(), outcomes);
                marked.answers()
                        .forEach(answer -> answer.changed()
                                .ifPresent(change -> changed.add(
                                        new ChangedVerdict.Of(seat, sheet.id().toString(), change))));
            }
        }
        toDecide.addAll(marker.toDecide());
        return new MarkedSheet(seat, sheet, problems, of.lost(), new Standing(seat, sheet.id(), outcomes));
    }

    private boolean isDecided(Roster.Seat seat, ToDecide one) {
        return decisions
                .ofAnswer(seat.number(), one.question(), one.typed(), privacy.text(one.typed()))
                .isPresent();
    }

    private MarkedProblem mark(SheetProblem issued, int place, SheetAnswers answers, ProblemMarker marker) {
        Sheet sheet = marker.sheet();
        Corrections.Corrected corrected =
                corrections.isPresent() ? corrections.get().of(issued) : new Corrections.Corrected.Same();
        if (corrected instanceof Corrections.Corrected.ByHand hand) {
            notes.add(Diagnostic.error(
                    Place.inFile(say("plan.sheet", "sheet", sheet.id().toString())),
                    say("folder.marking.not-anew", "number", Integer.toString(issued.number())) + " " + hand.why(),
                    "",
                    say("folder.marking.not-anew.next")));
            for (AnswerKey key : issued.places()) {
                answers.at(key.question())
                        .filter(taken -> !taken.answer().text().isEmpty())
                        .ifPresent(taken -> setAside.add(SetAside.byHand(taken.answer())));
            }
            return new MarkedProblem(issued, place, List.of(), Optional.of(hand.why()));
        }
        if (corrected instanceof Corrections.Corrected.AsIssued asIssued) {
            keep(issued, sheet, asIssued.why());
        }
        if (corrected instanceof Corrections.Corrected.Anew anew) {
            anew.kept().forEach(why -> keep(issued, sheet, why));
            return new MarkedProblem(
                    anew.problem(),
                    place,
                    marker.mark(anew.problem(), place, anew.key(), anew.places(), Optional.of(issued)),
                    Optional.empty());
        }
        return new MarkedProblem(
                issued,
                place,
                marker.mark(issued, place, issued.key(), issued.places(), Optional.empty()),
                Optional.empty());
    }

    private void keep(SheetProblem issued, Sheet sheet, String why) {
        kept.computeIfAbsent(List.of(issued.template().name(), why), same -> new ArrayList<>())
                .add(say(
                        "folder.marking.issued-key.where",
                        "sheet",
                        sheet.id().toString(),
                        "number",
                        Integer.toString(issued.number())));
    }

    private static void outcomes(MarkedProblem marked, Language language, List<Standing.Outcome> outcomes) {
        SheetProblem problem = marked.problem();
        String difficulty =
                marked.answers().isEmpty() ? "" : FingerprintText.shared(Difficulty.of(problem.problem()), language);
        for (MarkedAnswer answer : marked.answers()) {
            if (!answer.counts()) {
                continue;
            }
            outcomes.add(new Standing.Outcome(
                    answer.item(),
                    problem.number(),
                    answer.credit(),
                    answer.earned(),
                    answer.cause(),
                    difficulty,
                    answer.isLate()));
        }
    }
}
