package ampersheet.sheet;

import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiFunction;

/** A marking policy as learners are told it. */
final class PolicyInWords {
    private static final String PERCENT = "\u00A0%";

    private final MarkingPolicy policy;
    private final Language language;

    PolicyInWords(MarkingPolicy policy, Language language) {
        this.policy = policy;
        this.language = language;
    }

    /** What holds for one sheet. */
    String of(Sheet sheet) {
        List<String> sentences = new ArrayList<>();
        sentences.add(right(sheet));
        MarkingPolicy.Credits credits = policy.credits();
        sentences.add(
                credits.carried() == MarkingPolicy.MARK
                        ? language.say("sheet.marking.carried-in-full")
                        : language.say("sheet.marking.carried", "share", share(credits.carried())));
        sentences.add(
                credits.unitMissing() == credits.tooCoarse()
                        ? language.say("sheet.marking.unit-or-digits", "share", share(credits.unitMissing()))
                        : language.say(
                                "sheet.marking.unit-and-digits",
                                "unit",
                                share(credits.unitMissing()),
                                "digits",
                                share(credits.tooCoarse())));
        tolerances(sheet).ifPresent(sentences::add);
        if (policy.rounds() == MarkingPolicy.Rounds.BEST) {
            sentences.add(language.say("sheet.marking.best-round"));
        }
        if (policy.lateness().aDay() > 0) {
            sentences.add(late(policy.lateness()));
        }
        grades().ifPresent(sentences::add);
        return String.join(" ", sentences);
    }

    private String right(Sheet sheet) {
        List<String> exceptions = new ArrayList<>();
        otherwise(sheet, policy::marks, MarkingPolicy.MARK)
                .forEach((marks, questions) -> exceptions.add(language.count(
                        "sheet.marking.exception",
                        questions.size(),
                        "questions",
                        String.join(", ", questions),
                        "marks",
                        MarkingPolicy.decimal(marks))));
        return exceptions.isEmpty()
                ? language.say("sheet.marking.right")
                : language.say("sheet.marking.right-except", "exceptions", String.join("; ", exceptions));
    }

    private Optional<String> tolerances(Sheet sheet) {
        List<String> tolerances = new ArrayList<>();
        otherwise(sheet, policy::namedTolerance, 0)
                .forEach((value, questions) -> tolerances.add(language.say(
                        "sheet.marking.tolerance",
                        "questions",
                        String.join(", ", questions),
                        "percent",
                        MarkingPolicy.decimal(value) + PERCENT)));
        return tolerances.isEmpty()
                ? Optional.empty()
                : Optional.of(language.say("sheet.marking.tolerances", "tolerances", String.join("; ", tolerances)));
    }

    private String late(MarkingPolicy.Lateness lateness) {
        String percent = lateness.aDay() + PERCENT;
        return lateness.graceMinutes() == 0
                ? language.say("sheet.marking.late", "percent", percent)
                : language.count("sheet.marking.late-with-grace", lateness.graceMinutes(), "percent", percent);
    }

    /** One sentence; empty if there are none. */
    Optional<String> grades() {
        List<String> bands = policy.grades().stream()
                .map(grade -> grade.from() == 0
                        ? language.say("sheet.marking.last-grade", "grade", grade.name())
                        : language.say(
                                "sheet.marking.grade",
                                "grade",
                                grade.name(),
                                "percent",
                                MarkingPolicy.tenths(grade.from()) + PERCENT))
                .toList();
        return bands.isEmpty()
                ? Optional.empty()
                : Optional.of(language.say("sheet.marking.grades", "grades", String.join(", ", bands)));
    }

    /** The questions of a sheet for which something else holds, by what that is. */
    private static Map<Integer, List<String>> otherwise(
            Sheet sheet, BiFunction<String, String, Integer> value, int usual) {
        Map<Integer, List<String>> questions = new TreeMap<>();
        for (SheetProblem problem : sheet.problems()) {
            problem.places().forEach(key -> {
                int of = value.apply(problem.template().name(), key.step());
                if (of != usual) {
                    questions.computeIfAbsent(of, same -> new ArrayList<>()).add(key.question());
                }
            });
        }
        return questions;
    }

    private String share(int hundredths) {
        if (hundredths == MarkingPolicy.MARK) {
            return language.say("sheet.marking.share-full");
        } else if (hundredths == MarkingPolicy.MARK / 2) {
            return language.say("sheet.marking.share-half");
        }
        return hundredths == 0
                ? language.say("sheet.marking.share-none")
                : language.say("sheet.marking.share", "percent", hundredths + PERCENT);
    }
}
