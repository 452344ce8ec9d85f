package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.answer.AnswerKey;
import ampersheet.answer.ProblemKey;
import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.marking.Corrections;
import ampersheet.marking.Corrections.Corrected;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetId;
import ampersheet.sheet.SheetProblem;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Which sheet is meant: its ID and what it was issued with. */
@Command
final class SheetOptions {
    @Mixin
    private IssuedWithOption issuedWith;

    /**
     * A sheet with the keys by which it is judged.
     *
     * @param issued as it was printed
     * @param remarks what an instructor should know before she trusts the keys
     */
    record KeyedSheet(
            Sheet issued, List<KeyedProblem> problems, List<ClassSheets.LostProblem> lost, List<Diagnostic> remarks) {
        /** Problems with the working that leads to the key. */
        Sheet corrected() {
            return new Sheet(
                    issued.id(),
                    issued.plan(),
                    problems.stream().map(KeyedProblem::working).toList(),
                    issued.parts());
        }

        List<AnswerKey> places() {
            return problems.stream()
                    .flatMap(problem -> problem.places().stream())
                    .toList();
        }

        boolean hasQuestion(String question) {
            return problems.stream().anyMatch(problem -> problem.has(question));
        }
    }

    /**
     * @param issued as it was printed
     * @param working the same, or worked by the corrected template
     * @param key by which the questions of the sheet are judged
     * @param places of the sheet, with what is expected there
     * @param corrected whether the template has changed since
     * @param notJudged why no key is at hand; empty if there is one
     */
    record KeyedProblem(
            SheetProblem issued,
            SheetProblem working,
            ProblemKey key,
            List<AnswerKey> places,
            boolean corrected,
            Optional<String> notJudged) {
        boolean has(String question) {
            return key.answers().stream().anyMatch(answer -> answer.question().equals(question));
        }

        static KeyedProblem same(SheetProblem problem) {
            return new KeyedProblem(problem, problem, problem.key(), problem.places(), false, Optional.empty());
        }
    }

    /** The files that are read. */
    List<Path> files() {
        return issuedWith.files();
    }

    /** @throws WrongUsage if the ID is none of the sheets issued */
    KeyedSheet sheet(String typedId) {
        IssuedWithOption.Issued from = issuedWith.read();
        SheetId id;
        try {
            id = from.sheets().readId(typedId);
        } catch (DiagnosticException refused) {
            throw new WrongUsage(refused.diagnostics());
        }
        ClassSheets.IssuedSheet sheet = from.sheets().issued(id.seat());
        List<Diagnostic> remarks = new ArrayList<>(sheet.remarks());
        List<KeyedProblem> problems = sheet.sheet().problems().stream()
                .map(problem -> from.corrections()
                        .map(by -> keyed(problem, by, id, remarks))
                        .orElseGet(() -> KeyedProblem.same(problem)))
                .toList();
        return new KeyedSheet(sheet.sheet(), problems, sheet.lost(), remarks);
    }

    private static KeyedProblem keyed(SheetProblem problem, Corrections by, SheetId id, List<Diagnostic> remarks) {
        Corrected corrected = by.of(problem);
        Place place = Place.inFile(say("command.sheet", "sheet", id.toString()));
        String number = Integer.toString(problem.number());
        String template = problem.template().name();
        if (corrected instanceof Corrected.Anew anew) {
            anew.kept()
                    .forEach(why -> remarks.add(Diagnostic.warning(
                            place,
                            say("command.key.kept", "number", number, "template", template, "why", why),
                            "",
                            say("command.key.kept.next"))));
            return new KeyedProblem(problem, anew.problem(), anew.key(), anew.places(), true, Optional.empty());
        } else if (corrected instanceof Corrected.AsIssued kept) {
            remarks.add(Diagnostic.warning(
                    place,
                    say("command.key.as-issued", "number", number, "template", template, "why", kept.why()),
                    "",
                    say("command.key.as-issued.next")));
            return KeyedProblem.same(problem);
        } else if (corrected instanceof Corrected.ByHand hand) {
            remarks.add(Diagnostic.error(
                    place,
                    say("command.key.by-hand", "number", number, "template", template, "why", hand.why()),
                    "",
                    say("command.key.by-hand.next")));
            return new KeyedProblem(problem, problem, problem.key(), problem.places(), false, Optional.of(hand.why()));
        }
        return KeyedProblem.same(problem);
    }
}
