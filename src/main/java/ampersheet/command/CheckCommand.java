package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.Judge;
import ampersheet.answer.Rung;
import ampersheet.answer.Verdict;
import ampersheet.command.SheetOptions.KeyedProblem;
import ampersheet.command.SheetOptions.KeyedSheet;
import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Printable;
import ampersheet.marking.ChangedVerdict;
import ampersheet.render.text.PlainWords;
import ampersheet.sheet.Composer;
import ampersheet.source.AsciiCase;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "check",
        sortOptions = false,
        description = "command.check.help",
        footer = {"", "command.check.footer.interview", "command.check.footer.exit-code"})
final class CheckCommand implements Callable<Integer> {
    private final Streams streams;

    @Parameters(index = "0", paramLabel = "SHEET-ID", descriptionKey = "command.help.sheet-id")
    private String typedId;

    @Parameters(index = "1..*", arity = "0..*", paramLabel = "q1=…", descriptionKey = "command.check.help.answers")
    private List<String> arguments = List.of();

    @Mixin
    private SheetOptions which;

    @Option(names = "--show", descriptionKey = "command.check.help.show")
    private boolean show;

    @Option(names = "--json", descriptionKey = "command.check.help.as-json")
    private boolean json;

    @Mixin
    HelpOptions help;

    /**
     * A verdict with the problem and key it was given by.
     *
     * @param changed how it would have been judged before its key was corrected; empty if that makes no difference
     */
    private record Judged(AnswerKey key, KeyedProblem problem, Verdict verdict, Optional<ChangedVerdict> changed) {}

    CheckCommand(Streams streams) {
        this.streams = streams;
    }

    @Override
    public Integer call() {
        KeyedSheet sheet = which.sheet(typedId);
        sheet.remarks().forEach(remark -> streams.err().print(remark.print()));
        if (arguments.isEmpty() && !json) {
            return interview(sheet);
        }
        Map<String, String> typed = new LinkedHashMap<>();
        NamedValues.of(arguments, "q1=4k7").forEach((name, value) -> typed.put(known(sheet, name), value));
        List<Judged> judged = new ArrayList<>();
        for (KeyedProblem problem : sheet.problems()) {
            if (problem.notJudged().isEmpty()) {
                judge(problem, typed).stream()
                        .filter(one -> typed.containsKey(one.key().question()))
                        .forEach(judged::add);
            }
        }
        List<String> unjudged = typed.keySet().stream()
                .filter(question ->
                        judged.stream().noneMatch(one -> one.key().question().equals(question)))
                .toList();
        if (json) {
            streams.line(Json.of(json -> write(json, sheet, judged, unjudged)));
        } else {
            judged.forEach(one -> tell(one, true));
            unjudged.forEach(question -> streams.line(
                    question + "  " + Printable.line(typed.get(question)) + "\n    " + say("command.check.no-key")));
        }
        return unjudged.isEmpty()
                ? exitCode(judged.stream().map(Judged::verdict).toList())
                : CommandTree.PROBLEMS_FOUND;
    }

    private static int exitCode(List<Verdict> verdicts) {
        boolean allRight = verdicts.stream().allMatch(verdict -> verdict.isRight() || verdict.rung() == Rung.BLANK);
        return allRight ? CommandTree.FINE : CommandTree.PROBLEMS_FOUND;
    }

    /** The question's own name for what was typed, in any case. */
    private static String known(KeyedSheet sheet, String name) {
        String question = AsciiCase.small(name);
        if (sheet.hasQuestion(question)
                || sheet.lost().stream().anyMatch(lost -> lost.questions().contains(question))) {
            return question;
        }
        List<String> names = sheet.places().stream().map(AnswerKey::question).toList();
        throw new WrongUsage(
                name,
                say("command.check.question.unknown", "name", name),
                say("command.check.question.unknown.expected", "names", String.join(", ", names)),
                say("command.check.question.unknown.next"));
    }

    private static List<Judged> judge(KeyedProblem problem, Map<String, String> typed) {
        List<Judged> judged = new ArrayList<>();
        List<AnswerKey> keys = problem.key().answers();
        List<Verdict> verdicts = Judge.judge(problem.key(), typed);
        Map<String, Verdict> before = new LinkedHashMap<>();
        if (problem.corrected()) {
            Judge.judge(problem.issued().key(), typed).forEach(verdict -> before.put(verdict.question(), verdict));
        }
        for (int i = 0; i < keys.size(); i++) {
            Verdict now = verdicts.get(i);
            judged.add(new Judged(
                    keys.get(i),
                    problem,
                    now,
                    Optional.ofNullable(before.get(now.question()))
                            .flatMap(then -> ChangedVerdict.between(
                                    now.question(), problem.issued().template().name(), then, now))));
        }
        return judged;
    }

    /** Question by question; whoever is not right may try again. */
    private int interview(KeyedSheet sheet) {
        streams.line(say("command.check.interview", "sheet", sheet.issued().id().toString()));
        Map<String, Verdict> last = new LinkedHashMap<>();
        for (KeyedProblem problem : sheet.problems()) {
            if (problem.notJudged().isEmpty()) {
                interview(problem, last);
            }
        }
        long right = last.values().stream().filter(Verdict::isRight).count();
        streams.line("");
        streams.line(say(
                "command.check.right",
                "right",
                Long.toString(right),
                "all",
                Integer.toString(sheet.places().size())));
        return exitCode(List.copyOf(last.values()));
    }

    private void interview(KeyedProblem problem, Map<String, Verdict> last) {
        Map<String, String> typed = new LinkedHashMap<>();
        List<AnswerKey> places = problem.places();
        List<String> designed = places.stream()
                .filter(key -> key.acceptance() instanceof Acceptance.Designed)
                .map(AnswerKey::question)
                .toList();
        for (int i = 0; i < places.size(); i++) {
            Optional<Verdict> verdict = ask(problem, places.get(i), typed);
            verdict.ifPresent(said -> last.put(said.question(), said));
            if (verdict.isPresent() && verdict.get().rung() == Rung.CRITERION_MISSED) {
                // Any of the values may be the one to change, so all of the design are asked again.
                designed.forEach(typed::remove);
                while (!designed.get(0).equals(places.get(i).question())) {
                    i--;
                }
                i--;
            }
        }
        // What could not be judged until its partner was there has its verdict now.
        Judge.judge(problem.key(), typed).stream()
                .filter(now -> last.containsKey(now.question())
                        && last.get(now.question()).rung() == Rung.INCOMPLETE)
                .forEach(now -> last.put(now.question(), now));
    }

    private Optional<Verdict> ask(KeyedProblem problem, AnswerKey key, Map<String, String> typed) {
        streams.line("");
        streams.line(key.question() + "  " + PlainWords.of(problem.issued().prompt(key)));
        if (key.acceptance() instanceof Acceptance.Choice choice) {
            choice.options().forEach(option -> streams.line("      - " + option.text()));
        }
        Optional<Verdict> verdict = Optional.empty();
        while (true) {
            streams.out().print("> ");
            Optional<String> line = streams.readLine();
            if (line.isEmpty() || line.get().isBlank()) {
                return verdict;
            }
            typed.put(key.question(), line.get());
            Judged judged = judge(problem, typed).stream()
                    .filter(one -> one.key().equals(key))
                    .findFirst()
                    .orElseThrow();
            tell(judged, false);
            verdict = Optional.of(judged.verdict());
            boolean goOn = switch (judged.verdict().rung()) {
                case CORRECT, INCOMPLETE, CRITERION_MISSED -> true;
                default -> false;
            };
            if (goOn) {
                return verdict;
            }
        }
    }

    private void tell(Judged judged, boolean withQuestion) {
        Verdict verdict = judged.verdict();
        String understood =
                verdict.understood().isEmpty() || verdict.understood().equals(verdict.asTyped())
                        ? ""
                        : say("command.check.read-as", "understood", verdict.understood());
        if (withQuestion) {
            streams.line(verdict.question() + "  " + Printable.line(verdict.asTyped())
                    + (understood.isEmpty() ? "" : "  " + understood));
        } else if (!understood.isEmpty()) {
            streams.line("    " + understood);
        }
        streams.line("    " + Printable.line(verdict.message()));
        judged.changed()
                .ifPresent(change -> streams.line("    "
                        + say(
                                "command.check.corrected",
                                "question",
                                change.question(),
                                "before",
                                change.toldBefore(Languages.ENGLISH),
                                "now",
                                change.toldNow(Languages.ENGLISH))));
        if (show) {
            boolean oneOfSeveral = judged.key().acceptance() instanceof Acceptance.Designed;
            String answer = Composer.answer(judged.problem().working(), judged.key());
            streams.line("    "
                    + (oneOfSeveral
                            ? say("command.check.for-example", "answer", answer)
                            : say("command.check.expected", "answer", answer)));
        }
    }

    private void write(Json json, KeyedSheet sheet, List<Judged> judged, List<String> unjudged) {
        json.text("sheet_id", sheet.issued().id().toString());
        json.objects("verdicts", judged, (at, one) -> {
            Verdict verdict = one.verdict();
            at.text("question", verdict.question())
                    .text("typed", verdict.asTyped())
                    .text("understood", verdict.understood())
                    .text("rung", verdict.rung().name().toLowerCase(Locale.ROOT).replace('_', '-'))
                    .flag("right", verdict.isRight())
                    .text("message", verdict.message());
            verdict.mistake().ifPresent(mistake -> at.text("mistake", mistake));
            one.changed()
                    .ifPresent(change -> at.text("before_correction", change.toldBefore(Languages.ENGLISH))
                            .text("now", change.toldNow(Languages.ENGLISH)));
            if (show) {
                at.text("expected", Composer.answer(one.problem().working(), one.key()));
            }
        });
        if (!unjudged.isEmpty()) {
            json.texts("to_be_judged_by_hand", unjudged);
        }
        if (!sheet.remarks().isEmpty()) {
            json.texts(
                    "remarks", sheet.remarks().stream().map(Diagnostic::problem).toList());
        }
    }
}
