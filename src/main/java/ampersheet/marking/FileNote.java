package ampersheet.marking;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.language.Language;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/** What became of one file. By the time it came in, as far as that is known, then by its name. */
final class FileNote implements Comparable<FileNote> {
    private final int number;
    private final String name;
    private final String shown;
    private final Optional<LocalDateTime> received;
    private final long minutesLate;
    private final boolean late;
    private final FileFaults notes;
    private int marked;
    private boolean ofOthers;

    FileNote(int number, String name, String shown, Optional<LocalDateTime> received, boolean late) {
        this(number, name, shown, received, late, 0);
    }

    private FileNote(
            int number, String name, String shown, Optional<LocalDateTime> received, boolean late, long minutesLate) {
        this.number = number;
        this.name = name;
        this.shown = shown;
        this.received = received;
        this.late = late;
        this.minutesLate = minutesLate;
        this.notes = new FileFaults(shown);
    }

    /** Of one that came in then, where something was due at another time. */
    static FileNote of(
            int number, String name, String shown, Optional<LocalDateTime> received, Optional<LocalDateTime> due) {
        boolean late = due.isPresent() && received.isPresent() && received.get().isAfter(due.get());
        // A minute begun counts, so that what is late is late by something.
        long minutes = late
                ? Duration.between(due.get(), received.get()).plusSeconds(59).toMinutes()
                : 0;
        return new FileNote(number, name, shown, received, late, minutes);
    }

    /** The same file for a trial, of which nothing is noted. */
    FileNote trial() {
        return new FileNote(number, name, shown, received, late, minutesLate);
    }

    /** Notes that all of it is to other sheets, which were due on another day. */
    void isOfOthers() {
        ofOthers = true;
    }

    /** 0 if it is not late. */
    long minutesLate() {
        return ofOthers ? 0 : minutesLate;
    }

    /** In the order of names, from 1. */
    int number() {
        return number;
    }

    /** Its own name; {@link #shown()} is what may be written anywhere. */
    String name() {
        return name;
    }

    String shown() {
        return shown;
    }

    boolean isLate() {
        return late && !ofOthers;
    }

    /** By the instructor's list; where that does not name both, neither is. */
    boolean isReceivedBefore(FileNote other) {
        return received.isPresent()
                && other.received.isPresent()
                && received.get().isBefore(other.received.get());
    }

    String received() {
        return received.map(LocalDateTime::toString).orElse("");
    }

    void add(FileFault note) {
        notes.add(note);
    }

    void add(FileFaults more) {
        notes.add(more);
    }

    void countMarked() {
        marked++;
    }

    /** For whoever runs the command. */
    List<Diagnostic> notes() {
        return notes.list();
    }

    /** What is wrong with it, each with the line it stands on. */
    List<String> told(Language language) {
        return notes.in(language).stream()
                .map(note -> note.place().line() == 0
                        ? note.problem()
                        : language.say(
                                "report.line",
                                "line",
                                Integer.toString(note.place().line()),
                                "what",
                                note.problem()))
                .toList();
    }

    boolean hasErrors() {
        return notes.hasErrors();
    }

    int marked() {
        return marked;
    }

    /** In a word or two. */
    String fate(Language language) {
        boolean faulty = notes.hasErrors();
        if (name.startsWith(".")) {
            return language.say("report.fate.hidden");
        }
        if (marked == 0 && ofOthers && !faulty) {
            return language.say("report.fate.elsewhere");
        }
        if (marked == 0) {
            return faulty ? language.say("report.fate.not-marked") : language.say("report.fate.nothing-counts");
        }
        return faulty ? language.say("report.fate.in-part") : language.say("report.fate.marked");
    }

    @Override
    public int compareTo(FileNote other) {
        int byTime = received.orElse(LocalDateTime.MIN).compareTo(other.received.orElse(LocalDateTime.MIN));
        return byTime != 0 ? byTime : Integer.compare(number, other.number);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FileNote note && note.number == number;
    }

    @Override
    public int hashCode() {
        return number;
    }
}
