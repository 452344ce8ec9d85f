package ampersheet.marking;

import ampersheet.answer.Acceptance;
import ampersheet.answer.Rung;
import ampersheet.answer.Verdict;
import ampersheet.language.Language;
import ampersheet.marking.MarkedSheet.MarkedAnswer;
import ampersheet.marking.MarkedSheet.MarkedProblem;
import ampersheet.quantity.DecimalMarker;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.MarkingPolicy;
import ampersheet.sheet.Plan;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.List;

/**
 * What a learner gets back: what was right, what probably went wrong and why, and the line that would have been right.
 */
final class FeedbackPage {
    private final Language language;
    private final DecimalMarker decimal;
    private final Privacy privacy;
    private final List<Block> blocks = new ArrayList<>();

    private FeedbackPage(Plan plan, Privacy privacy) {
        this.language = plan.language();
        this.decimal = plan.decimal();
        this.privacy = privacy;
    }

    /**
     * Composes it.
     *
     * @param name printed in the heading; may be empty
     * @param onFiles what the instructor decided of this learner's files
     */
    static Document compose(MarkedSheet marked, String name, List<Decision> onFiles, Privacy privacy) {
        Plan plan = marked.sheet().plan();
        FeedbackPage page = new FeedbackPage(plan, privacy);
        page.write(marked, onFiles);
        Language language = plan.language();
        String seat = language.say(
                "report.seat", "seat", Integer.toString(marked.seat().number()));
        return new Document(
                Kind.FEEDBACK,
                language,
                language.say("report.feedback.title", "title", plan.title()),
                name.isEmpty() ? seat : name + " · " + seat,
                marked.sheet().id().toString(),
                plan.paper(),
                page.blocks);
    }

    private void write(MarkedSheet marked, List<Decision> onFiles) {
        Standing standing = marked.standing();
        MarkingPolicy policy = marked.sheet().plan().marking();
        say(marks(standing, policy), counts(standing));
        open(standing);
        onFiles.forEach(decision -> say(language.say(
                "report.feedback.decided-files", "reason", Statement.escape(privacy.text(decision.reason())))));
        patterns(standing);
        say(policy.says(marked.sheet()));
        marked.problems().forEach(problem -> blocks.add(problem(problem)));
        marked.lost()
                .forEach(lost -> blocks.add(new ProblemBlock(
                        Integer.toString(lost.number()),
                        lost.template(),
                        List.of(language.say("report.feedback.by-hand")),
                        List.of(new Prose(language.say("report.feedback.by-hand.says"))))));
    }

    private void say(String... sentences) {
        blocks.add(new Prose(Language.joined(sentences)));
    }

    private String marks(Standing standing, MarkingPolicy policy) {
        String marks = Amounts.marks(standing.marks(), language);
        String all = Amounts.marks(standing.mostMarks(), language);
        return policy.grade(standing.percent())
                .map(grade -> language.say(
                        "report.feedback.graded",
                        "marks",
                        marks,
                        "all",
                        all,
                        "percent",
                        Amounts.tenths(standing.percent(), language),
                        "grade",
                        Statement.escape(grade)))
                .orElseGet(() -> language.say("report.feedback.marks", "marks", marks, "all", all));
    }

    private void open(Standing standing) {
        int undecided = (int) standing.count(Credit.UNDECIDED);
        if (undecided > 0) {
            say(language.count("report.feedback.not-final", undecided));
        }
        if (Status.of(standing) == Status.BLANK) {
            say(language.say("report.feedback.handed-in-blank"));
        }
    }

    private String counts(Standing standing) {
        List<String> parts = new ArrayList<>();
        for (Credit credit : Credit.values()) {
            long count = standing.count(credit);
            if (count > 0) {
                parts.add(counted(credit, Long.toString(count)));
            }
        }
        String late = standing.late() == 0 ? "" : language.count("report.feedback.late", (int) standing.late());
        return parts.isEmpty()
                ? late
                : Language.joined(
                        language.count(
                                "report.feedback.places", standing.outcomes().size(), "how", String.join(", ", parts)),
                        late);
    }

    private String counted(Credit credit, String count) {
        return switch (credit) {
            case RIGHT -> language.say("report.feedback.right", "count", count);
            case CARRIED -> language.say("report.feedback.carried", "count", count);
            case HALF -> language.say("report.feedback.half", "count", count);
            case WRONG -> language.say("report.feedback.wrong", "count", count);
            case UNREADABLE -> language.say("report.feedback.unreadable", "count", count);
            case UNDECIDED -> language.say("report.feedback.undecided", "count", count);
            case BLANK -> language.say("report.feedback.blank", "count", count);
        };
    }

    /** Once is a guess; the same cause in two problems is worth a word before everything else. */
    private void patterns(Standing standing) {
        List<Diagnosis> patterns =
                Diagnosis.of(standing).stream().filter(Diagnosis::isPattern).toList();
        if (patterns.isEmpty()) {
            return;
        }
        blocks.add(new Heading(2, language.say("report.feedback.patterns")));
        StringBuilder list = new StringBuilder();
        for (Diagnosis pattern : patterns) {
            list.append("- ")
                    .append(language.say(
                            "report.feedback.pattern",
                            "problems",
                            language.all(pattern.numbers()),
                            "says",
                            Statement.escape(pattern.cause().says())))
                    .append('\n');
        }
        blocks.add(new Prose(list.toString()));
    }

    private ProblemBlock problem(MarkedProblem marked) {
        List<Block> within = new ArrayList<>();
        marked.byHand().ifPresent(why -> within.add(new Prose(language.say("report.feedback.by-hand.says"))));
        for (MarkedAnswer answer : marked.answers()) {
            answer(marked, answer, within);
        }
        String tag = marked.byHand().isPresent()
                ? language.say("report.feedback.by-hand")
                : language.say(
                        "report.feedback.of-problem",
                        "marks",
                        Amounts.marks(marked.marks(), language),
                        "all",
                        Amounts.marks(marked.mostMarks(), language));
        return new ProblemBlock(
                Integer.toString(marked.problem().number()),
                marked.problem().template().title(),
                List.of(tag),
                within);
    }

    private void answer(MarkedProblem marked, MarkedAnswer answer, List<Block> within) {
        Verdict verdict = answer.verdict();
        String question =
                "**" + answer.key().question() + "** " + marked.problem().prompt(answer.key());
        within.add(new Prose(question + "\n\n" + said(answer)));
        if (verdict.isRight() || answer.credit() == Credit.UNDECIDED) {
            return;
        }
        Composer.workedLine(marked.problem(), answer.key())
                .ifPresentOrElse(
                        line -> within.add(new Steps(
                                language.say(
                                        "report.feedback.worked-line",
                                        "question",
                                        answer.key().question()),
                                List.of(line))),
                        () -> within.add(new Prose(language.say(
                                "report.feedback.right-option",
                                "option",
                                Statement.escape(Composer.answer(marked.problem(), answer.key()))))));
    }

    private String said(MarkedAnswer answer) {
        Verdict verdict = answer.verdict();
        if (answer.credit() == Credit.UNDECIDED) {
            return language.say("report.feedback.undecided.says");
        }
        String decided = answer.decided()
                .map(decision -> language.say(
                        "report.feedback.decided",
                        "decision",
                        Statement.escape(decision.told(language)),
                        "reason",
                        Statement.escape(privacy.text(decision.reason()))))
                .orElse("");
        if (verdict.rung() == Rung.BLANK) {
            return Language.joined(language.say("report.feedback.blank.says"), decided);
        }
        String corrected = answer.changed()
                .map(change -> language.say("report.feedback.corrected", "verdict", change.toldBefore(language)))
                .orElse("");
        boolean guess =
                verdict.rung() == Rung.KNOWN_MISTAKE && !(answer.key().acceptance() instanceof Acceptance.Choice);
        String says = Statement.escape(privacy.said(verdict));
        return Language.joined(
                wrote(answer),
                answer.counts() ? earned(answer) : language.say("report.feedback.does-not-count"),
                guess ? language.say("report.feedback.probably", "says", says) : says,
                corrected,
                answer.isLate() ? language.say("report.feedback.came-late") : "",
                decided);
    }

    private String wrote(MarkedAnswer answer) {
        String understood = answer.verdict().understood();
        String typed = privacy.typed(answer.verdict());
        String read = Statement.escape(understood);
        String shown = Statement.escape(typed);
        boolean same = understood.isEmpty() || unspaced(understood).equals(unspaced(typed));
        if (answer.comma().isEmpty()) {
            return same
                    ? language.say("report.feedback.wrote", "typed", shown)
                    : language.say("report.feedback.wrote.read", "typed", shown, "read", read);
        }
        String mark = decimal == DecimalMarker.COMMA ? "." : ",";
        return switch (answer.comma().get()) {
            case DECIMAL ->
                same
                        ? language.say("report.feedback.wrote.decimal", "typed", shown, "mark", mark)
                        : language.say(
                                "report.feedback.wrote.read-decimal", "typed", shown, "read", read, "mark", mark);
            case THOUSANDS ->
                same
                        ? language.say("report.feedback.wrote.thousands", "typed", shown, "mark", mark)
                        : language.say(
                                "report.feedback.wrote.read-thousands", "typed", shown, "read", read, "mark", mark);
        };
    }

    private static String unspaced(String text) {
        StringBuilder out = new StringBuilder();
        text.codePoints()
                .filter(c -> !Character.isWhitespace(c) && !Character.isSpaceChar(c))
                .forEach(out::appendCodePoint);
        return out.toString();
    }

    private String earned(MarkedAnswer answer) {
        String earned = told(answer.earned().marks());
        String inTime = Amounts.marks(answer.earned().inTime(), language);
        boolean carried = answer.credit() == Credit.CARRIED;
        if (answer.earned().marks() < answer.earned().inTime()) {
            return carried
                    ? language.say("report.feedback.earned.carried-late", "earned", earned, "in-time", inTime)
                    : language.say("report.feedback.earned.late", "earned", earned, "in-time", inTime);
        }
        return carried
                ? language.say("report.feedback.earned.carried", "earned", earned)
                : language.say("report.feedback.earned", "earned", earned);
    }

    private String told(int marks) {
        return switch (marks) {
            case 0 -> language.say("report.feedback.earned-nothing");
            case MarkingPolicy.MARK -> language.say("report.feedback.earned-one");
            case MarkingPolicy.MARK / 2 -> language.say("report.feedback.earned-half");
            default -> language.say("report.feedback.earned-marks", "marks", Amounts.marks(marks, language));
        };
    }
}
