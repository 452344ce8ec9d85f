package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.DecimalSlips;
import ampersheet.answer.KnownMistake;
import ampersheet.language.Language;
import ampersheet.quantity.Dimension;
import ampersheet.quantity.Unit;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Question;
import ampersheet.sheet.Document.Steps;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * A letter beside each place for an answer, by which a learner without any device finds out whether an answer may be
 * right. Every accepted answer has the letter; none within 1 % of what a modelled mistake gives has it, nor one that is
 * wrong by a power of ten, because the code is chosen so. Any other wrong answer has it by chance once in 16 times. A
 * letter fits two or three rows of 6 % in every power of ten: it tells no value. It is found without the unit's name,
 * so it tells no unit either. Designs, and what follows from them, have none: several answers are right.
 */
public final class CheckLetters {
    private static final int MOST_LETTERS = 3;
    /** How far a number strays by rounding on the way; less than a row of the table is wide. */
    private static final double ROUNDED = 0.01;

    private static final double LAST_BITS = 1e-9;
    /** So many answers of a band are tried, closer together than rows are wide. */
    private static final int TRIED = 12;

    private static final Unit SQUARE_MILLIMETRE = Unit.parse("mm^2");
    private static final Dimension AREA = Dimension.LENGTH.power(2);

    /** A code with its letters, as a pattern; what else stands beside a place says why it has none. */
    public static final String PRINTED = "[ABCNM][0-9] .+";

    private CheckLetters() {}

    /** @param code printed beside the place; @param letters of which a right answer has one */
    record Check(CheckCode code, Set<Character> letters) {
        /** {@code B4 K or T}. */
        String printed(Language language) {
            return code + " " + spoken(letters, language);
        }
    }

    /** {@code K}, or {@code K or T}. */
    static String spoken(Set<Character> letters, Language language) {
        return OneOrOther.or(letters.stream().map(String::valueOf).toList(), language);
    }

    /** What stands beside the boxes of a sheet that have a letter, by question, in the order of the sheet. */
    static Map<String, Check> of(Sheet sheet) {
        Map<String, Check> letters = new LinkedHashMap<>();
        Plan.Lettered lettered = sheet.plan().lettered();
        int able = 0;
        for (SheetProblem problem : sheet.problems()) {
            for (AnswerKey key : lettered == Plan.Lettered.NONE ? List.<AnswerKey>of() : problem.places()) {
                Optional<Check> check = isDesigned(problem, key)
                        ? Optional.empty()
                        : of(sheet.id().toString(), key);
                if (check.isPresent() && (lettered == Plan.Lettered.ALL || able % 2 == 0)) {
                    letters.put(key.question(), check.get());
                }
                able += check.isPresent() ? 1 : 0;
            }
        }
        return letters;
    }

    private static boolean isDesigned(SheetProblem problem, AnswerKey key) {
        return problem.template().followsDesign(key.step()) || key.acceptance() instanceof Acceptance.Designed;
    }

    /** What stands beside each box: a letter, or where every box has one, why this one has none. */
    private static Map<String, String> said(Sheet sheet, Map<String, Check> letters) {
        Language language = sheet.plan().language();
        Map<String, String> said = new TreeMap<>();
        for (SheetProblem problem : sheet.problems()) {
            for (AnswerKey key : problem.places()) {
                String without = sheet.plan().lettered() == Plan.Lettered.EVERY_SECOND
                        ? ""
                        : isDesigned(problem, key)
                                ? language.say("sheet.check.several-right")
                                : language.say("sheet.check.none-distinguishes");
                Check check = letters.get(key.question());
                said.put(key.question(), check == null ? without : check.printed(language));
            }
        }
        return said;
    }

    /** The sheet's document with letters at its places, and before the problems how to find one's own. */
    public static Document addedTo(Document document, Sheet sheet) {
        Map<String, Check> letters = of(sheet);
        Map<String, String> checks = said(sheet, letters);
        List<AnswerKey> keys = sheet.places().stream()
                .filter(key -> letters.containsKey(key.question()))
                .toList();
        Set<Character> ways = new TreeSet<>();
        letters.values().forEach(check -> ways.add(check.code().way()));
        Language language = document.language();
        String about = sheet.plan().lettered() == Plan.Lettered.EVERY_SECOND
                ? language.say("sheet.check.every-second-box")
                : language.say("sheet.check.every-box");
        List<Block> blocks = new ArrayList<>();
        boolean told = false;
        for (Block block : document.blocks()) {
            if (block instanceof ProblemBlock && !told && !keys.isEmpty()) {
                blocks.add(new Prose(about));
                told = true;
            }
            blocks.add(block instanceof ProblemBlock problem && !keys.isEmpty() ? with(problem, checks) : block);
        }
        if (told) {
            blocks.addAll(HowToCheck.of(keys, ways, sheet.plan().decimal(), language));
        }
        return new Document(
                document.kind(),
                document.language(),
                document.title(),
                document.subtitle(),
                document.sheetId(),
                document.paper(),
                blocks);
    }

    private static ProblemBlock with(ProblemBlock problem, Map<String, String> checks) {
        List<Block> blocks = new ArrayList<>();
        for (Block block : problem.blocks()) {
            if (block instanceof Question question) {
                blocks.add(question.checkedBy(checks.getOrDefault(question.id(), "")));
            } else if (block instanceof Steps steps) {
                blocks.add(new Steps(
                        steps.heading(),
                        steps.steps().stream()
                                .map(step -> step.checkedBy(checks.getOrDefault(step.blankId(), "")))
                                .toList()));
            } else {
                blocks.add(block);
            }
        }
        return problem.holding(blocks);
    }

    /**
     * Empty for a choice, where a letter would be the answer, for a design, of which many are right, and where no code
     * keeps right and wrong apart. A band wider than a row of the table has the letters of two or three rows.
     */
    static Optional<Check> of(String sheetId, AnswerKey key) {
        List<CheckCode> codes = codes(sheetId, key);
        for (int most = 1; most <= MOST_LETTERS; most++) {
            for (CheckCode code : codes) {
                Set<Character> letters = letters(code, key, key.expected());
                if (!letters.isEmpty() && letters.size() <= most && wrongOnesDiffer(code, key, letters)) {
                    return Optional.of(new Check(code, letters));
                }
            }
        }
        return Optional.empty();
    }

    /** Every code that may do, begun with another one on every sheet and question. */
    private static List<CheckCode> codes(String sheetId, AnswerKey key) {
        List<CheckCode> codes = new ArrayList<>();
        if (key.acceptance() instanceof Acceptance.Choice || key.acceptance() instanceof Acceptance.Designed) {
            return codes;
        }
        String ways = key.acceptance() instanceof Acceptance.Count ? CheckCode.BY_DIGITS : CheckCode.BY_SIZE;
        for (int i = 0; i < ways.length(); i++) {
            for (int column = 0; column < CheckTable.COLUMNS; column++) {
                codes.add(new CheckCode(ways.charAt(i), column));
            }
        }
        int first = Integer.parseInt(
                        Fingerprint.of("check code", sheetId, key.question()).substring(0, 6), 16)
                % codes.size();
        List<CheckCode> turned = new ArrayList<>(codes.subList(first, codes.size()));
        turned.addAll(codes.subList(0, first));
        return turned;
    }

    /** Those of all answers that are taken for the value; empty if one has none. */
    private static Set<Character> letters(CheckCode code, AnswerKey key, double value) {
        Set<Character> letters = new TreeSet<>();
        for (double number : band(key, value)) {
            Optional<Character> letter = code.letter(number);
            if (letter.isEmpty()) {
                return Set.of();
            }
            letters.add(letter.get());
        }
        return letters;
    }

    private static boolean wrongOnesDiffer(CheckCode code, AnswerKey key, Set<Character> right) {
        List<Double> slips = new ArrayList<>();
        for (KnownMistake mistake : key.mistakes()) {
            double gives = number(key, mistake.value());
            slips.addAll(List.of(gives, gives * (1 - ROUNDED), gives * (1 + ROUNDED)));
        }
        if (key.acceptance() instanceof Acceptance.Count) {
            slips.addAll(List.of(key.expected() - 1, key.expected() + 1));
        } else {
            double number = number(key, key.expected());
            for (int power : DecimalSlips.powers()) {
                slips.addAll(List.of(number * DecimalSlips.factor(-power), number * DecimalSlips.factor(power)));
            }
        }
        return slips.stream()
                .allMatch(slip -> code.letter(slip).filter(right::contains).isEmpty());
    }

    /** Numbers from one end of what is taken for the value to the other. */
    private static List<Double> band(AnswerKey key, double value) {
        if (key.acceptance() instanceof Acceptance.Count) {
            return List.of(number(key, value));
        }
        double width = key.acceptance().band(value) + LAST_BITS * Math.abs(value);
        List<Double> numbers = new ArrayList<>();
        for (int i = 0; i <= TRIED; i++) {
            numbers.add(number(key, value - width + 2 * width * i / TRIED));
        }
        return numbers;
    }

    /** As the learner is told to write it: without prefix; temperatures in °C, areas in mm². */
    static double number(AnswerKey key, double si) {
        if (key.unit().offset() != 0) {
            return key.unit().fromSi(si);
        }
        return key.unit().dimension().equals(AREA) ? SQUARE_MILLIMETRE.fromSi(si) : si;
    }
}
