package ampersheet.command;

import static ampersheet.source.Told.say;

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
                    say("command.erase.seat", "seat", seat.toString(), "list", InputFile.shown(classList)),
                    say("command.erase.seat.expected"),
                    say("command.erase.seat.next"));
        }
    }

    /** Whether it was done. */
    boolean tellAndDo(Erasure erasure, Streams streams, boolean json) {
        if (!json || !yes) {
            streams.line(
                    yes
                            ? say("command.erase.begin", "seat", seat.toString())
                            : say("command.erase.would", "seat", seat.toString()));
            erasure.told().forEach(step -> streams.line("  " + step));
            streams.line("  " + say("command.erase.anew", "seat", seat.toString()));
            streams.line("  " + say("command.erase.by-hand"));
        }
        if (yes) {
            erasure.apply();
        } else {
            streams.line(say("command.erase.nothing"));
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
                        say("command.erase.table", "seat", seat.toString()),
                        "",
                        say("command.erase.table.next")));
            }
        }
        return notes;
    }
}
