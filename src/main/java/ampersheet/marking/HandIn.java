package ampersheet.marking;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One file's answers to one sheet. Which of two is the newer is told by what the files say: a page counts how often it
 * was saved; or by the instructor's list of times. A file's name and date tell nothing, and two browsers may be two
 * people.
 */
final class HandIn {
    /** Of fewer answers in common nothing can be told. */
    private static final int LEAST_SHARED = 3;

    private final FileNote file;
    private final Origin origin;
    private final boolean chosen;
    private final Map<String, List<TypedAnswer>> answers = new LinkedHashMap<>();
    /** What counts of it, blanks taken out: hand-ins are compared with each other again and again. */
    private final Map<String, String> said = new LinkedHashMap<>();

    /** @param chosen whether the instructor decided that this one counts */
    HandIn(FileNote file, Origin origin, List<TypedAnswer> answers, boolean chosen) {
        this.file = file;
        this.origin = origin;
        this.chosen = chosen;
        for (TypedAnswer answer : answers) {
            this.answers
                    .computeIfAbsent(answer.question(), question -> new ArrayList<>())
                    .add(answer);
            if (!answer.isBlank()) {
                said.put(answer.question(), TypedAnswer.unspaced(answer.text()));
            }
        }
    }

    FileNote file() {
        return file;
    }

    Origin origin() {
        return origin;
    }

    /** The same for a trial, of which nothing is noted. */
    HandIn trial() {
        return new HandIn(file.trial(), origin, all(), chosen);
    }

    boolean isChosen() {
        return chosen;
    }

    /** All that stands in it, in its order. */
    List<TypedAnswer> all() {
        return answers.values().stream().flatMap(List::stream).toList();
    }

    TypedAnswer first() {
        return answers.values().iterator().next().get(0);
    }

    boolean has(String question) {
        return answers.containsKey(question);
    }

    /** What it says to a question, the last of it; empty if it leaves that open. */
    Optional<TypedAnswer> to(String question) {
        List<TypedAnswer> said = typed(question);
        return said.isEmpty() ? Optional.empty() : Optional.of(said.get(said.size() - 1));
    }

    /** Whether it answers a question twice and differently. */
    boolean isTornAbout(String question) {
        List<TypedAnswer> said = typed(question);
        return said.stream().anyMatch(one -> !one.saysTheSameAs(said.get(0)));
    }

    /** Without blanks. */
    List<TypedAnswer> typed(String question) {
        return answers.getOrDefault(question, List.of()).stream()
                .filter(answer -> !answer.isBlank())
                .toList();
    }

    /** Whether both answer a question, and differently. */
    boolean contradicts(HandIn other) {
        for (String question : said.keySet()) {
            if (contradicts(other, question)) {
                return true;
            }
        }
        return false;
    }

    boolean contradicts(HandIn other, String question) {
        String here = said.get(question);
        String there = other.said.get(question);
        return here != null && there != null && !here.equals(there);
    }

    /**
     * Whether the other takes this one's place where they contradict each other. What two browsers saved has no order,
     * whatever came in first: it may be a stranger's under this sheet's ID.
     */
    boolean isBefore(HandIn other) {
        if (other.chosen != chosen) {
            return other.chosen;
        }
        boolean bothSaved =
                !origin.browser().isEmpty() && !other.origin.browser().isEmpty();
        if (bothSaved && !origin.browser().equals(other.origin.browser())) {
            return false;
        }
        if (file.isLate() != other.file.isLate()) {
            return file.isLate();
        }
        return bothSaved
                ? origin.save() < other.origin.save()
                : file.isReceivedBefore(other.file) && !looksLikeAnothers(other);
    }

    /** Who hands in again repeats most of it; who has other numbers repeats hardly anything. */
    private boolean looksLikeAnothers(HandIn other) {
        long shared = answers.keySet().stream()
                .filter(question ->
                        to(question).isPresent() && other.to(question).isPresent())
                .count();
        long against = answers.keySet().stream()
                .filter(question -> contradicts(other, question))
                .count();
        return shared >= LEAST_SHARED && against > shared / 2;
    }
}
