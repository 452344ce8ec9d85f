package ampersheet.marking;

import ampersheet.answer.Acceptance;
import ampersheet.answer.Rung;
import ampersheet.answer.Verdict;
import ampersheet.marking.MarkedSheet.MarkedAnswer;
import ampersheet.marking.MarkedSheet.MarkedProblem;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.MarkingPolicy;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.List;

/**
 * What a learner gets back: what was right, what probably went wrong and why, and the line that would have been right.
 */
final class FeedbackPage {
    private static final String RULES =
            "A right answer counts one mark. So does one that follows rightly from an earlier "
                    + "answer of yours, even if that one was wrong: a slip is paid for once. A right number "
                    + "without its unit, or rounded "
                    + "too far, counts half.";

    private FeedbackPage() {}

    /**
     * Composes it.
     *
     * @param name printed in the heading; may be empty
     * @param onFiles what the instructor decided of this learner's files
     */
    static Document compose(MarkedSheet marked, String name, List<Decision> onFiles, Privacy privacy) {
        Standing standing = marked.standing();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Prose("**" + Amounts.marks(standing.marks()) + " of " + Amounts.marks(standing.mostMarks())
                + " marks" + grade(standing, marked.sheet().plan().marking()) + ".** " + counts(standing)));
        open(standing, blocks);
        onFiles.forEach(decision -> blocks.add(new Prose("**Your instructor decided** which hand-in counts, because: "
                + Statement.escape(privacy.text(decision.reason())) + ".")));
        patterns(standing, blocks);
        blocks.add(new Prose(
                marked.sheet().plan().marking().isUsual()
                        ? RULES
                        : marked.sheet().plan().marking().says(marked.sheet())));
        marked.problems().forEach(problem -> blocks.add(problem(problem, privacy)));
        marked.lost()
                .forEach(lost -> blocks.add(new ProblemBlock(
                        Integer.toString(lost.number()),
                        lost.template(),
                        List.of("marked by hand"),
                        List.of(new Prose("This problem is marked by hand.")))));
        String seat = "Seat " + marked.seat().number();
        return new Document(
                Kind.FEEDBACK,
                marked.sheet().plan().language(),
                "Feedback: " + marked.sheet().plan().title(),
                name.isEmpty() ? seat : name + " · " + seat,
                marked.sheet().id().toString(),
                marked.sheet().plan().paper(),
                blocks);
    }

    private static String grade(Standing standing, MarkingPolicy policy) {
        return policy.grade(standing.percent())
                .map(grade ->
                        " (" + MarkingPolicy.tenths(standing.percent()) + "\u00A0%), grade " + Statement.escape(grade))
                .orElse("");
    }

    private static void open(Standing standing, List<Block> blocks) {
        long undecided = standing.count(Credit.UNDECIDED);
        if (undecided > 0) {
            blocks.add(new Prose("**Not final.** What came in under this sheet contradicts itself in "
                    + Amounts.count(undecided, "place", "places")
                    + ", and nothing tells which is the newer. Your instructor decides; until then these places earn "
                    + "nothing."));
        }
        if (Status.of(standing) == Status.BLANK) {
            blocks.add(new Prose("This sheet was handed in blank."));
        }
    }

    private static String counts(Standing standing) {
        List<String> parts = new ArrayList<>();
        add(parts, standing.count(Credit.RIGHT), "right");
        add(parts, standing.count(Credit.CARRIED), "right from an earlier answer of yours");
        add(parts, standing.count(Credit.HALF), "half right");
        add(parts, standing.count(Credit.WRONG), "wrong");
        add(parts, standing.count(Credit.UNREADABLE), "not readable");
        add(parts, standing.count(Credit.UNDECIDED), "not decided");
        add(parts, standing.count(Credit.BLANK), "left open");
        String late = standing.late() == 0
                ? ""
                : " " + Amounts.count(standing.late(), "answer", "answers") + " came in late.";
        return parts.isEmpty()
                ? late.strip()
                : "Of " + standing.outcomes().size() + " places: " + String.join(", ", parts) + "." + late;
    }

    private static void add(List<String> parts, long count, String what) {
        if (count > 0) {
            parts.add(count + " " + what);
        }
    }

    /** Once is a guess; the same cause in two problems is worth a word before everything else. */
    private static void patterns(Standing standing, List<Block> blocks) {
        List<Diagnosis> patterns =
                Diagnosis.of(standing).stream().filter(Diagnosis::isPattern).toList();
        if (patterns.isEmpty()) {
            return;
        }
        blocks.add(new Heading(2, "The same in more than one problem"));
        StringBuilder list = new StringBuilder();
        for (Diagnosis pattern : patterns) {
            list.append("- In problems ")
                    .append(joined(pattern.problems()))
                    .append(": ")
                    .append(Statement.escape(pattern.cause().says()))
                    .append('\n');
        }
        blocks.add(new Prose(list.toString()));
    }

    static String joined(List<Integer> problems) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < problems.size(); i++) {
            out.append(i == 0 ? "" : i == problems.size() - 1 ? " and " : ", ").append(problems.get(i));
        }
        return out.toString();
    }

    private static ProblemBlock problem(MarkedProblem marked, Privacy privacy) {
        List<Block> blocks = new ArrayList<>();
        marked.byHand().ifPresent(why -> blocks.add(new Prose("This problem is marked by hand.")));
        for (MarkedAnswer answer : marked.answers()) {
            answer(marked, answer, privacy, blocks);
        }
        List<String> tags = marked.byHand().isPresent()
                ? List.of("marked by hand")
                : List.of(Amounts.marks(marked.marks()) + " of " + Amounts.marks(marked.mostMarks()) + " marks");
        return new ProblemBlock(
                Integer.toString(marked.problem().number()),
                marked.problem().template().title(),
                tags,
                blocks);
    }

    private static void answer(MarkedProblem marked, MarkedAnswer answer, Privacy privacy, List<Block> blocks) {
        Verdict verdict = answer.verdict();
        String question =
                "**" + answer.key().question() + "** " + marked.problem().prompt(answer.key());
        blocks.add(new Prose(question + "\n\n" + said(answer, privacy)));
        if (verdict.isRight() || answer.credit() == Credit.UNDECIDED) {
            return;
        }
        Composer.workedLine(marked.problem(), answer.key())
                .ifPresentOrElse(
                        line -> blocks.add(
                                new Steps("The worked line of " + answer.key().question(), List.of(line))),
                        () -> blocks.add(new Prose("The right option: **"
                                + Statement.escape(Composer.answer(marked.problem(), answer.key())) + "**")));
    }

    private static String said(MarkedAnswer answer, Privacy privacy) {
        Verdict verdict = answer.verdict();
        if (answer.credit() == Credit.UNDECIDED) {
            return "*Not decided.* Two hand-ins say different things here, and nothing tells which is the newer.";
        }
        String decided = answer.decided()
                .map(decision -> " **Your instructor decided:** " + Statement.escape(decision.told()) + ", because: "
                        + Statement.escape(privacy.text(decision.reason())) + ".")
                .orElse("");
        if (verdict.rung() == Rung.BLANK) {
            return "*Left open.* An open place is no mistake; it only earns no mark." + decided;
        }
        String typed = privacy.typed(verdict);
        String read =
                verdict.understood().isEmpty() || unspaced(verdict.understood()).equals(unspaced(typed))
                        ? ""
                        : ", read as " + Statement.escape(verdict.understood());
        String corrected = answer.changed()
                .map(change -> " The key to this question was corrected after your sheet had been "
                        + "printed; by the earlier one your answer was taken as " + change.toldBefore() + ".")
                .orElse("");
        String late = answer.isLate() ? " It came in late." : "";
        String comma = answer.comma()
                .map(reading -> reading == CommaReading.DECIMAL
                        ? " (the comma as the decimal marker, as in your other answers)"
                        : " (the comma as a mark between thousands, since your other answers have a decimal point)")
                .orElse("");
        boolean guess =
                verdict.rung() == Rung.KNOWN_MISTAKE && !(answer.key().acceptance() instanceof Acceptance.Choice);
        return "You wrote **" + Statement.escape(typed) + "**" + read + comma + ". "
                + (answer.counts() ? earned(answer) : "*Does not count.*") + " "
                + (guess ? "*Probably:* " : "") + Statement.escape(privacy.said(verdict)) + corrected + late + decided;
    }

    private static String unspaced(String text) {
        StringBuilder out = new StringBuilder();
        text.codePoints()
                .filter(c -> !Character.isWhitespace(c) && !Character.isSpaceChar(c))
                .forEach(out::appendCodePoint);
        return out.toString();
    }

    private static String earned(MarkedAnswer answer) {
        int marks = answer.earned().marks();
        String told = marks == 0
                ? "No mark"
                : marks == MarkingPolicy.MARK
                        ? "1 mark"
                        : marks == MarkingPolicy.MARK / 2 ? "Half a mark" : Amounts.marks(marks) + " marks";
        return "*" + told + (answer.credit() == Credit.CARRIED ? ", carried on from an earlier answer" : "")
                + (marks < answer.earned().inTime()
                        ? "; in time it would have earned "
                                + Amounts.marks(answer.earned().inTime())
                        : "")
                + ".*";
    }
}
