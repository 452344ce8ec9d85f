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
import java.util.TreeSet;
import java.util.regex.MatchResult;

/** The instructor's decisions while a class is marked: which fit what came in, and which no longer do. */
final class DecisionBook {
    /** In place of a problem's place in the plan. */
    static final int ANYWHERE = -1;

    private final String list;
    private final List<Decision> decisions;
    private final Map<Integer, Scope> scopes;

    private final TreeSet<Integer> fitting = new TreeSet<>();
    private final Map<Integer, String> misfits = new LinkedHashMap<>();
    private final List<LeftOut> leftOut = new ArrayList<>();

    /** A question that is left out for everyone. */
    private record LeftOut(Decision decision, Standing.Item item) {}

    /** Which sheets a line is about: one list holds for all weeks of a course. */
    private enum Scope {
        THESE,
        /** About a hand-in under an ID of other sheets: if that is there, it is of these. */
        WHERE_FOUND,
        OTHERS,
        /** It does not say, and may be about others. */
        UNTOLD
    }

    /** @param list the file it stands in, as its reader knows it */
    private DecisionBook(String list, List<Decision> decisions, Map<Integer, Scope> scopes) {
        this.list = list;
        this.decisions = List.copyOf(decisions);
        this.scopes = scopes;
    }

    static DecisionBook none() {
        return new DecisionBook("", List.of(), Map.of());
    }

    /**
     * Reads them.
     *
     * @param sheets those that are marked
     * @param amongOthers whether the class is known to have been given other sheets as well
     */
    static DecisionBook read(String file, String text, ClassSheets sheets, boolean amongOthers) {
        List<Decision> decisions = DecisionsReader.read(file, text);
        boolean others = amongOthers
                || !sheets.plan().portion().isWhole()
                || decisions.stream().flatMap(one -> one.set().stream()).anyMatch(code -> !code.equals(sheets.code()));
        Map<Integer, Scope> scopes = new LinkedHashMap<>();
        decisions.forEach(one -> scopes.put(one.line(), scope(one, sheets, others)));
        DecisionBook book = new DecisionBook(file, decisions, scopes);
        scopes.forEach((line, scope) -> {
            if (scope == Scope.UNTOLD) {
                book.misfits.put(line, say("folder.decision.no-sheet"));
            }
        });
        return book;
    }

    private static Scope scope(Decision one, ClassSheets sheets, boolean others) {
        boolean byId = SheetId.set(one.sheet()).isPresent();
        if (one.set().isPresent()) {
            boolean these = one.set().get().equals(sheets.code())
                    && (!one.issue().isEmpty() || !byId || isOf(sheets, one.sheet()));
            return these ? Scope.THESE : Scope.OTHERS;
        }
        if (byId && !isOf(sheets, one.sheet())) {
            return others && one.kind() == Decision.Kind.COUNTS ? Scope.OTHERS : Scope.WHERE_FOUND;
        }
        boolean told = byId
                || one.kind() == Decision.Kind.DOES_NOT_COUNT
                || one.kind() == Decision.Kind.COUNTS && isNearTo(one.seat(), sheets, one.sheet());
        return others && !told ? Scope.UNTOLD : Scope.THESE;
    }

    private static boolean isOf(ClassSheets sheets, String id) {
        try {
            sheets.readId(id);
            return true;
        } catch (DiagnosticException other) {
            return false;
        }
    }

    /** Whether an ID is that of a seat but for a slip. */
    private static boolean isNearTo(int seat, ClassSheets sheets, String id) {
        try {
            return sheets.readId(id).seat() == seat;
        } catch (DiagnosticException refused) {
            return SheetId.PRINTED
                    .matcher(refused.diagnostics().get(0).nextAction())
                    .results()
                    .map(MatchResult::group)
                    .anyMatch(near -> isOf(sheets, near) && sheets.readId(near).seat() == seat);
        }
    }

    /** The same decisions for a trial, of which nothing is noted. */
    DecisionBook trial() {
        DecisionBook trial = new DecisionBook(list, decisions, scopes);
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

    private boolean isElsewhere(Decision decision) {
        Scope scope = scopes.get(decision.line());
        return scope == Scope.OTHERS || scope == Scope.WHERE_FOUND && !fits(decision);
    }

    /** Whether it may change something of the sheets at hand. */
    boolean holds(Decision decision) {
        Scope scope = scopes.get(decision.line());
        return scope == Scope.THESE || scope == Scope.WHERE_FOUND;
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
                .filter(one -> one.kind().isOfFile() && holds(one))
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
                    && holds(one)
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
