package ampersheet.practice;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.answer.Judge;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.Rung;
import ampersheet.answer.Verdict;
import ampersheet.quantity.QuantityReader;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.Reading;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is said of all places of a problem at once, of each its own verdict. In the order of the working, the first that
 * is not right is where to go on. Who goes straight to the answers need not fill in the steps. A number without its
 * unit is no answer yet, be it right or wrong: to say of one of them only that its unit is missing would tell which it
 * is.
 *
 * @param places one for each place, in their order
 * @param stop the first that is not right; empty where the problem is solved
 * @param straight whether it is solved with steps left blank
 */
public record Checked(List<Told> places, Optional<String> stop, boolean straight) {
    private static final String STEP = "step ";

    /** How a place stands. */
    public enum Kind {
        RIGHT,
        OPEN,
        FORM,
        WRONG,
        FOLLOWS,
        NOTHING;

        /** As the page marks it. */
        public String word() {
            return switch (this) {
                case RIGHT -> "right";
                case OPEN -> "open";
                case FORM -> "form";
                case WRONG -> "wrong";
                case FOLLOWS -> "follows";
                case NOTHING -> "none";
            };
        }
    }

    /**
     * @param rung that its verdict has; of a line that does not go through, that of what cannot be read
     * @param cause of what is wrong: the id of the modelled mistake or the name of the rung; else empty
     * @param blank whether nothing was typed
     */
    public record Told(String question, Kind kind, Rung rung, Optional<String> cause, String message, boolean blank) {
        private static Told nothing(String question) {
            return new Told(question, Kind.NOTHING, Rung.BLANK, Optional.empty(), "", true);
        }

        private static Told of(Verdict verdict, Kind kind, Rung rung, String message) {
            Optional<String> cause = kind == Kind.WRONG
                    ? Optional.of(verdict.mistake().orElse(verdict.rung().name()))
                    : Optional.empty();
            return new Told(verdict.question(), kind, rung, cause, message, false);
        }

        private Told blankWith(String words) {
            return new Told(question, kind, rung, cause, words, true);
        }
    }

    public Checked {
        places = List.copyOf(places);
    }

    static Checked of(ProblemKey key, List<String> questions, Map<String, String> typed) {
        Sentences sentences = new Sentences(key.language());
        Map<String, String> judged = new LinkedHashMap<>(typed);
        Map<String, WorkingLine> lines = new LinkedHashMap<>();
        for (AnswerKey answer : key.answers()) {
            String text = typed.getOrDefault(answer.question(), "");
            WorkingLine.read(text, key, answer).ifPresent(line -> {
                lines.put(answer.question(), line);
                judged.put(answer.question(), line.value());
            });
        }
        Map<String, Verdict> verdicts = verdicts(key, judged);
        int asked = 0;
        int answeredRight = 0;
        int lastFilled = -1;
        for (int i = 0; i < questions.size(); i++) {
            asked += isStep(questions.get(i)) ? 0 : 1;
            answeredRight +=
                    !isStep(questions.get(i)) && verdicts.get(questions.get(i)).isRight() ? 1 : 0;
            lastFilled = isBlank(typed, questions.get(i)) ? lastFilled : i;
        }
        boolean answered = asked > 0 && answeredRight == asked;
        List<Told> told = new ArrayList<>();
        Optional<String> stop = Optional.empty();
        boolean straight = false;
        int right = 0;
        for (int i = 0; i < questions.size(); i++) {
            String question = questions.get(i);
            Verdict verdict = verdicts.get(question);
            Optional<WorkingLine> line = Optional.ofNullable(lines.get(question));
            boolean blank = isBlank(typed, question);
            boolean leftOut = blank && isStep(question) && (answered || i < lastFilled);
            if (leftOut) {
                straight = true;
                told.add(Told.nothing(question));
                continue;
            }
            Rung rung = line.isPresent() && line.get().isFaulty() ? Rung.UNREADABLE : verdict.rung();
            Kind kind = kind(rung);
            String message = message(verdict, line, typed.getOrDefault(question, ""), sentences);
            boolean goesOn = kind == Kind.RIGHT || kind == Kind.OPEN && i < questions.size() - 1;
            Told here = Told.of(verdict, kind, rung, message);
            if (stop.isPresent()) {
                told.add(blank ? Told.nothing(question) : behind(verdict, here, told, sentences));
            } else if (goesOn) {
                right += kind == Kind.RIGHT ? 1 : 0;
                told.add(blank ? here.blankWith(message) : here);
            } else {
                stop = Optional.of(question);
                told.add(blank ? here.blankWith(right > 0 ? sentences.nowThisOne() : message) : here);
            }
        }
        return new Checked(told, stop, straight && stop.isEmpty());
    }

    /** A place after the one where it stopped; what is wrong there in the same way as further up is told once. */
    private static Told behind(Verdict verdict, Told here, List<Told> before, Sentences sentences) {
        for (Told earlier : before) {
            boolean same = here.rung() == Rung.KNOWN_MISTAKE
                    && earlier.rung() == Rung.KNOWN_MISTAKE
                    && earlier.message().endsWith(verdict.message());
            if (same) {
                return Told.of(verdict, Kind.FOLLOWS, here.rung(), sentences.sameSlip(earlier.question()));
            }
        }
        boolean follows = here.rung() == Rung.CONSISTENT_WITH_EARLIER || here.rung() == Rung.CARRIED_MISTAKE;
        return follows ? Told.of(verdict, Kind.FOLLOWS, here.rung(), here.message()) : here;
    }

    private static Map<String, Verdict> verdicts(ProblemKey key, Map<String, String> typed) {
        Map<String, Verdict> verdicts = new LinkedHashMap<>();
        for (Verdict verdict : Judge.judge(key, typed)) {
            verdicts.put(verdict.question(), verdict);
        }
        for (AnswerKey answer : key.answers()) {
            String question = answer.question();
            boolean bare = !(answer.acceptance() instanceof Acceptance.Choice)
                    && QuantityReader.read(typed.getOrDefault(question, ""), answer.unit(), key.decimal())
                            instanceof Reading.Value value
                    && answer.lacksUnit(value);
            if (bare) {
                Verdict found = verdicts.get(question);
                verdicts.put(
                        question,
                        new Verdict(
                                question,
                                found.asTyped(),
                                Rung.UNIT_MISSING,
                                "",
                                new Sentences(key.language()).unitMissing(),
                                Optional.empty()));
            }
        }
        return verdicts;
    }

    private static boolean isBlank(Map<String, String> typed, String question) {
        String text = typed.getOrDefault(question, "");
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) > ' ' && text.charAt(i) != QuantityWriter.NO_BREAK_SPACE) {
                return false;
            }
        }
        return true;
    }

    /** Whether a place is that of a step that no question asks for. */
    static boolean isStep(String question) {
        return question.startsWith(STEP);
    }

    private static Kind kind(Rung rung) {
        return switch (rung) {
            case CORRECT -> Kind.RIGHT;
            case INCOMPLETE -> Kind.OPEN;
            // Not yet an answer, or right but for its form: no slip, yet nothing to go on from.
            case BLANK, UNREADABLE, AMBIGUOUS, UNIT_MISSING, OTHER_SCALE, TOO_COARSE -> Kind.FORM;
            default -> Kind.WRONG;
        };
    }

    private static String message(Verdict verdict, Optional<WorkingLine> line, String typed, Sentences sentences) {
        if (line.isPresent()) {
            return line.get().isFaulty() ? line.get().said() : line.get().said() + " " + verdict.message();
        }
        boolean readOtherwise =
                !verdict.understood().isEmpty() && !plain(verdict.understood()).equals(plain(typed));
        return readOtherwise ? sentences.readAs(verdict.understood()) + " " + verdict.message() : verdict.message();
    }

    private static String plain(String text) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c > ' ' && c != QuantityWriter.NO_BREAK_SPACE && c != QuantityWriter.GROUP_SPACE) {
                out.append(c);
            }
        }
        return out.toString();
    }

    public boolean isSolved() {
        return stop.isEmpty();
    }

    /** The first place with a wrong answer; a check counts one slip, for a second may come of the first. */
    Optional<Told> slip() {
        for (Told told : places) {
            if (told.cause().isPresent()) {
                return Optional.of(told);
            }
        }
        return Optional.empty();
    }

    /** The place where it stopped, as it stands. */
    Optional<Told> stopped() {
        for (Told told : places) {
            if (stop.isPresent() && told.question().equals(stop.get())) {
                return Optional.of(told);
            }
        }
        return Optional.empty();
    }

    /** How many places that are filled in stand so. */
    int count(Kind kind) {
        int count = 0;
        for (Told told : places) {
            count += told.kind() == kind && !told.blank() ? 1 : 0;
        }
        return count;
    }
}
