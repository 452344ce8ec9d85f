package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.SheetId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** The instructor's decisions while a class is marked: which fit what came in, and which no longer do. */
final class DecisionBook {
    /** In place of a problem's place in the plan. */
    static final int ANYWHERE = -1;

    private final String list;
    private final List<Decision> decisions;
    /** Lines about other sheets than those at hand: one list holds for all weeks of a course. */
    private final Set<Integer> elsewhere;

    private final TreeSet<Integer> fitting = new TreeSet<>();
    private final Map<Integer, String> misfits = new LinkedHashMap<>();
    private final List<LeftOut> leftOut = new ArrayList<>();

    /** A question that is left out for everyone. */
    private record LeftOut(Decision decision, Standing.Item item) {}

    /** @param list the file it stands in, as its reader knows it */
    private DecisionBook(String list, List<Decision> decisions, Set<Integer> elsewhere) {
        this.list = list;
        this.decisions = List.copyOf(decisions);
        this.elsewhere = elsewhere;
    }

    static DecisionBook none() {
        return new DecisionBook("", List.of(), Set.of());
    }

    /** @param sheets those that are marked */
    static DecisionBook read(String file, String text, ClassSheets sheets) {
        List<Decision> decisions = DecisionsReader.read(file, text);
        TreeSet<Integer> elsewhere = new TreeSet<>();
        decisions.stream()
                .filter(one -> SheetId.set(one.sheet()).isPresent() && !isOf(sheets, one.sheet()))
                .forEach(one -> elsewhere.add(one.line()));
        return new DecisionBook(file, decisions, elsewhere);
    }

    private static boolean isOf(ClassSheets sheets, String id) {
        try {
            sheets.readId(id);
            return true;
        } catch (DiagnosticException other) {
            return false;
        }
    }

    /** The same decisions for a trial, of which nothing is noted. */
    DecisionBook trial() {
        DecisionBook trial = new DecisionBook(list, decisions, elsewhere);
        trial.leftOut.addAll(leftOut);
        return trial;
    }

    boolean isEmpty() {
        return decisions.isEmpty();
    }

    /** Those on other sheets among them. */
    List<Decision> all() {
        return decisions;
    }

    /** What the sheets at hand are marked by, and what should be looked at because it fits nothing any more. */
    List<Decision> ofTheseSheets() {
        return decisions.stream().filter(one -> !isElsewhere(one)).toList();
    }

    /** What was decided of a file may be about an ID of other sheets; if that file is there, it is of these. */
    private boolean isElsewhere(Decision decision) {
        return elsewhere.contains(decision.line()) && !fits(decision);
    }

    boolean fits(Decision decision) {
        return fitting.contains(decision.line());
    }

    /**
     * What was decided of one file's answers to one sheet.
     *
     * @param sheet the ID as written there
     * @param seat 0 where it is not known whose it is
     */
    Optional<Decision> ofFile(FileNote file, String sheet, int seat) {
        Optional<Decision> found = decisions.stream()
                .filter(one -> one.kind().isOfFile())
                .filter(one -> one.file().equals(file.name()) || one.file().equals(file.shown()))
                .filter(one -> one.sheet().isEmpty()
                        ? one.seat() == 0 || seat == 0 || one.seat() == seat
                        : one.sheet().equals(sheet))
                .findFirst();
        found.ifPresent(one -> fitting.add(one.line()));
        return found;
    }

    /**
     * What was decided of the answer at a place.
     *
     * @param typed what stands there now; empty if nothing
     * @param shown the same as tables show it
     */
    Optional<Decision> ofAnswer(int seat, String question, String typed, String shown) {
        for (Decision one : decisions) {
            boolean meant = !one.kind().isOfFile()
                    && one.kind() != Decision.Kind.LEAVE_OUT
                    && !elsewhere.contains(one.line())
                    && one.seat() == seat
                    && one.question().equals(question);
            if (!meant) {
                continue;
            }
            String decided = TypedAnswer.unspaced(one.answer());
            if (decided.isEmpty()
                    || decided.equals(TypedAnswer.unspaced(typed))
                    || decided.equals(TypedAnswer.unspaced(shown))) {
                fitting.add(one.line());
                return Optional.of(one);
            }
            misfits.put(
                    one.line(),
                    typed.isEmpty()
                            ? say("folder.decision.no-answer", "seat", Integer.toString(seat), "question", question)
                            : say(
                                    "folder.decision.other-answer",
                                    "seat",
                                    Integer.toString(seat),
                                    "question",
                                    question));
        }
        return Optional.empty();
    }

    /** Says which question is left out; a question counts as found once it stands on a sheet that is marked. */
    void leaveOut(Decision decision, Standing.Item item) {
        leftOut.add(new LeftOut(decision, item));
    }

    /** Those on files that fit, of one seat. */
    List<Decision> onFilesOf(int seat) {
        return decisions.stream()
                .filter(one -> one.kind().isOfFile() && one.seat() == seat && fits(one))
                .toList();
    }

    void doesNotFit(Decision decision, String why) {
        fitting.remove(decision.line());
        misfits.put(decision.line(), why);
    }

    Optional<Decision> leftOut(Standing.Item item) {
        for (LeftOut one : leftOut) {
            if (one.item().template().equals(item.template())
                    && one.item().step().equals(item.step())
                    && (one.item().place() == ANYWHERE || one.item().place() == item.place())) {
                fitting.add(one.decision().line());
                return Optional.of(one.decision());
            }
        }
        return Optional.empty();
    }

    /** Those that change nothing, because what they were made on is no longer there. */
    List<Diagnostic> misfits() {
        return ofTheseSheets().stream()
                .filter(one -> !fits(one))
                .map(one -> Diagnostic.error(
                        new Place(list, one.line(), 0, ""),
                        say("folder.decision.misfit", "why", misfits.getOrDefault(one.line(), absent(one))),
                        "",
                        say("folder.decision.misfit.next")))
                .toList();
    }

    private static String absent(Decision one) {
        return switch (one.kind()) {
            case COUNTS, DOES_NOT_COUNT -> say("folder.decision.no-file", "file", one.file());
            case LEAVE_OUT -> say("folder.decision.no-question", "question", one.question());
            case ACCEPT, READ_AS, MARK ->
                say("folder.decision.no-answer-from", "seat", Integer.toString(one.seat()), "question", one.question());
        };
    }
}
