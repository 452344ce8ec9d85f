package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.command.SheetOptions.KeyedProblem;
import ampersheet.command.SheetOptions.KeyedSheet;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.KeyLine;
import ampersheet.sheet.Document.KeyTable;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.SheetProblem;
import ampersheet.template.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A question whose key says something else than the key that was issued.
 *
 * @param question as the sheet names it
 * @param before the answer, or what was accepted
 */
record CorrectedKey(String question, String template, String before, String now) {
    /** Two keys this near are one: the last bits may differ from one version to the next. */
    private static final double SAME = 1e-9;

    String told() {
        return question + " " + change();
    }

    private String change() {
        return say("command.key.change", "template", template, "before", before, "now", now);
    }

    /**
     * @param issued the key document of the sheet as it was issued
     * @param corrected the same with the problems worked anew
     */
    static List<CorrectedKey> of(KeyedSheet sheet, Document issued, Document corrected) {
        List<CorrectedKey> found = new ArrayList<>();
        for (KeyedProblem problem : sheet.problems()) {
            if (problem.corrected()) {
                for (AnswerKey before : problem.issued().key().answers()) {
                    problem.key().answers().stream()
                            .filter(key -> key.question().equals(before.question()))
                            .findFirst()
                            .flatMap(now -> between(problem, before, now, issued, corrected))
                            .ifPresent(found::add);
                }
            }
        }
        return found;
    }

    private static Optional<CorrectedKey> between(
            KeyedProblem problem, AnswerKey before, AnswerKey now, Document issued, Document corrected) {
        String template = problem.issued().template().name();
        if (Math.abs(now.expected() - before.expected()) > SAME * Math.abs(before.expected())) {
            return Optional.of(new CorrectedKey(
                    before.question(),
                    template,
                    Composer.answer(problem.issued(), before),
                    Composer.answer(problem.working(), now)));
        }
        boolean anyOfSeveral = before.acceptance() instanceof Acceptance.Designed;
        if (before.acceptance() instanceof Acceptance.Choice
                || !anyOfSeveral && before.acceptance().equals(now.acceptance())) {
            return Optional.empty();
        }
        Optional<String> acceptedBefore =
                line(issued, problem.issued(), before.step()).map(KeyLine::accepted);
        Optional<String> acceptedNow =
                line(corrected, problem.working(), now.step()).map(KeyLine::accepted);
        return acceptedBefore.isEmpty() || acceptedBefore.equals(acceptedNow)
                ? Optional.empty()
                : Optional.of(new CorrectedKey(
                        before.question(),
                        template,
                        say("command.key.accepted", "what", acceptedBefore.get()),
                        acceptedNow
                                .map(what -> say("command.key.accepted", "what", what))
                                .orElseGet(() -> say("command.key.accepted.nothing"))));
    }

    private static Optional<KeyLine> line(Document key, SheetProblem problem, String step) {
        List<AnswerKey> answers = problem.answers();
        for (int i = 0; i < answers.size(); i++) {
            if (answers.get(i).step().equals(step)) {
                return Optional.of(lines(key, problem).get(i));
            }
        }
        return Optional.empty();
    }

    /** What a key document says of a problem's questions, in the order asked. */
    static List<KeyLine> lines(Document key, SheetProblem problem) {
        return key.blocks().stream()
                .filter(ProblemBlock.class::isInstance)
                .map(ProblemBlock.class::cast)
                .filter(block -> block.number().equals(Integer.toString(problem.number())))
                .flatMap(block -> block.blocks().stream())
                .filter(KeyTable.class::isInstance)
                .map(KeyTable.class::cast)
                .findFirst()
                .orElseThrow()
                .lines();
    }

    /** The key with what was corrected said first, and with what it cannot say. */
    static Document ahead(Document key, List<CorrectedKey> corrected, KeyedSheet sheet) {
        List<Block> blocks = new ArrayList<>();
        if (!corrected.isEmpty()) {
            StringBuilder list = new StringBuilder(say("command.key.corrected")).append("\n\n");
            corrected.forEach(one -> list.append("- **")
                    .append(one.question())
                    .append("** ")
                    .append(Statement.escape(one.change()))
                    .append('\n'));
            blocks.add(new Prose(list.toString()));
        }
        List<String> renamed = renamed(sheet);
        if (!renamed.isEmpty()) {
            blocks.add(new Prose(say("command.key.renamed", "questions", String.join(", ", renamed))));
        }
        if (!sheet.remarks().isEmpty()) {
            StringBuilder list = new StringBuilder(say("command.key.look")).append("\n\n");
            sheet.remarks()
                    .forEach(remark -> list.append("- ")
                            .append(Statement.escape(remark.problem()))
                            .append('\n'));
            blocks.add(new Prose(list.toString()));
        }
        blocks.addAll(key.blocks());
        return new Document(
                key.kind(), key.language(), key.title(), key.subtitle(), key.sheetId(), key.paper(), blocks);
    }

    /** Questions that the corrected template asks under another name than the sheet. */
    private static List<String> renamed(KeyedSheet sheet) {
        List<String> renamed = new ArrayList<>();
        for (KeyedProblem problem : sheet.problems()) {
            if (problem.corrected()) {
                problem.issued()
                        .answers()
                        .forEach(printed -> problem.working().answers().stream()
                                .filter(now -> now.step().equals(printed.step())
                                        && !now.question().equals(printed.question()))
                                .findFirst()
                                .ifPresent(now -> renamed.add(say(
                                        "command.key.renamed.question",
                                        "question",
                                        printed.question(),
                                        "now",
                                        now.question()))));
            }
        }
        return renamed;
    }
}
