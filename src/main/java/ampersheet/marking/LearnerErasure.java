package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.sheet.Roster;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

/** Finds everything of one learner in the folder of answers and in the instructor's lists. */
final class LearnerErasure {
    private final Marking.Task task;
    private final Inbox inbox;
    private final DecisionBook decisions;
    private final int seat;
    private final Erasure erasure = new Erasure();
    private final TreeSet<String> deleted = new TreeSet<>();

    LearnerErasure(Marking.Task task, Inbox inbox, DecisionBook decisions, int seat) {
        this.task = task;
        this.inbox = inbox;
        this.decisions = decisions;
        this.seat = seat;
    }

    /**
     * @param decisionList where the text of the decisions was read from
     * @param receivedList the same of the list of times
     */
    Erasure find(Optional<Path> decisionList, Optional<Path> receivedList) {
        answers();
        unreadable();
        decisionList.ifPresent(list -> {
            TreeSet<Integer> lines = new TreeSet<>();
            for (Decision one : decisions.all()) {
                if (one.seat() == seat || deleted.contains(one.file())) {
                    lines.add(one.line());
                }
            }
            erasure.takeOut(list, lines);
        });
        receivedList.ifPresent(list ->
                erasure.takeOut(list, ReceivedList.linesOf(task.received().orElseThrow(), deleted)));
        return erasure;
    }

    private void answers() {
        Map<String, Erasure.Share> shares = new TreeMap<>();
        for (Roster.Seat one : task.roster().seats()) {
            for (HandIn handIn : inbox.of(one.number())) {
                Erasure.Share share = shares.computeIfAbsent(handIn.file().name(), name -> new Erasure.Share());
                if (one.number() == seat) {
                    handIn.all()
                            .forEach(answer -> share.lines.add(answer.place().line()));
                } else {
                    share.others = true;
                }
            }
        }
        for (SetAside aside : inbox.setAside()) {
            inbox.files().stream()
                    .filter(file -> file.shown().equals(aside.answer().place().file()))
                    .forEach(file -> shares.computeIfAbsent(file.name(), name -> new Erasure.Share()).others = true);
        }
        shares.forEach((name, share) -> {
            Path file = task.answers().resolve(name);
            if (!share.lines.isEmpty() && share.others) {
                erasure.takeOut(file, share.lines);
            } else if (!share.lines.isEmpty()) {
                deleted.add(name);
                erasure.delete(file, say("folder.erasure.own-file"));
            }
        });
        inbox.toDecide().stream()
                .filter(one -> one.maybe().contains(seat))
                .forEach(one -> erasure.byHand(
                        say("folder.erasure.unknown", "file", one.file(), "line", Integer.toString(one.line()))));
    }

    /** What could not be read and bears the learner's seat, sheet or name. */
    private void unreadable() {
        for (FileNote file : inbox.files()) {
            boolean hers = !deleted.contains(file.name())
                    && file.marked() == 0
                    && new FileOwners(List.of(file), task.sheets(), task.roster()).sentFrom(seat)
                    && inbox.setAside().stream()
                            .noneMatch(aside -> aside.answer().place().file().equals(file.shown()));
            boolean read = task.roster().seats().stream()
                    .anyMatch(one -> inbox.of(one.number()).stream()
                            .anyMatch(handIn -> handIn.file().equals(file)));
            if (hers && !read) {
                deleted.add(file.name());
                erasure.delete(task.answers().resolve(file.name()), say("folder.erasure.unread-file"));
            }
        }
    }
}
