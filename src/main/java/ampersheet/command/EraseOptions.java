package ampersheet.command;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.issue.Output;
import ampersheet.marking.Erasure;
import ampersheet.sheet.Roster;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** A learner who wants to be forgotten. */
@Command
final class EraseOptions {
    /** Those that not every run writes: one of an earlier run would keep its line. */
    private static final List<String> TABLES_OF_BEFORE = List.of(
            "changes.csv", "corrections.csv", "names.csv", "marks.xlsx", "marks-semicolons.csv", "marks-bom.csv");

    @Option(names = "--erase", paramLabel = "SEAT", descriptionKey = "command.help.erase")
    private Integer seat;

    @Option(names = "--yes", descriptionKey = "command.help.yes")
    private boolean yes;

    boolean isWished() {
        return seat != null;
    }

    int seat() {
        return seat;
    }

    /** @throws WrongUsage if there is no such seat */
    void requireSeat(Roster learners, Path classList) {
        if (learners.seats().stream().noneMatch(one -> one.number() == seat)) {
            throw new WrongUsage(
                    "--erase",
                    "seat " + seat + " is not in " + InputFile.shown(classList),
                    "the number of a seat of the class",
                    "Look it up in the class list; if her line is gone there already, put it back for this once.");
        }
    }

    /** Whether it was done. */
    boolean tellAndDo(Erasure erasure, Streams streams, boolean json) {
        if (!json || !yes) {
            streams.line(yes ? "Erasing seat " + seat + ":" : "To erase seat " + seat + ", this would be done:");
            erasure.told().forEach(step -> streams.line("  " + step));
            streams.line("  make marks, feedback, gradebook and report anew without seat " + seat);
            streams.line("  by hand: the name in the class list (leave the line if the list has no seat numbers), the "
                    + "issued sheet and key, copies and backups, and what was sent to others");
        }
        if (yes) {
            erasure.apply();
        } else {
            streams.line("Nothing was changed. With --yes it is done.");
        }
        return yes;
    }

    /** @return what could not be removed */
    List<Diagnostic> removeTables(Path out, Set<String> written, Output output) {
        List<Diagnostic> notes = new ArrayList<>();
        for (String table : TABLES_OF_BEFORE) {
            Path file = out.resolve(table);
            if (!written.contains(table) && Files.exists(file) && !output.removeOld(file)) {
                notes.add(Diagnostic.warning(
                        Place.inFile(InputFile.shown(file)),
                        "this is no table that an earlier run wrote, and it may name seat " + seat,
                        "",
                        "Look what it is, and take her out by hand."));
            }
        }
        return notes;
    }
}
