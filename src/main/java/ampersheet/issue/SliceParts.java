package ampersheet.issue;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.problem.Tally;
import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.ArchivedSheet;
import ampersheet.sheet.ClassIndex;
import ampersheet.sheet.IssuedArchive;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** What slices have left beside the keys, for whoever goes on or joins. */
final class SliceParts {
    private static final String KEYS = "keys";
    private static final Pattern NAME = Pattern.compile("slice-[0-9]{1,6}-of-[0-9]{1,6}\\.(?:csv|zip)");

    private final ProblemSet set;
    private final Roster roster;
    private final Path out;
    private final Issue.Besides besides;
    /** A check sum of the class list. */
    private final String learners;

    SliceParts(ProblemSet set, Roster roster, Path out, Issue.Besides besides) {
        this.set = set;
        this.roster = roster;
        this.out = out;
        this.besides = besides;
        this.learners = SlicePart.command(() -> roster.seats().stream()
                .flatMap(seat -> Stream.of(Integer.toString(seat.number()), seat.name()))
                .iterator());
    }

    /** Said if what a step left was there a moment ago. */
    DiagnosticException gone() {
        return new DiagnosticException(Diagnostic.error(
                Place.inFile(Output.shown(out.resolve(KEYS))),
                say("folder.step-gone"),
                say("folder.step-gone.expected"),
                say("folder.step-gone.next")));
    }

    Path part(Slice slice) {
        return out.resolve(KEYS).resolve(slice.fileName() + ".csv");
    }

    private Path archive(Slice slice) {
        return out.resolve(KEYS).resolve(slice.fileName() + ".zip");
    }

    private String command(Slice slice) {
        return SlicePart.command(List.of(
                slice.toString(), set.longCode(), Issue.code(set), set.plan().written(), besides.told(), learners));
    }

    Issue.Besides besides() {
        return besides;
    }

    /** What an earlier run left of this slice, whatever it was made from; empty if it was not finished. */
    Optional<SlicePart> read(Slice slice) {
        return SlicePart.read(part(slice));
    }

    /** The same if all of it is there and as it was made, by the same command. */
    Optional<SlicePart> right(Slice slice) {
        return read(slice).filter(part -> touched(part, slice, slice).isEmpty());
    }

    /** Tells of a slice all of whose files have been written. */
    void write(Slice slice, List<Issue.Written> made, Map<String, Tally> tallies, Output output) {
        IssuedArchive kept = IssuedArchive.of(
                set, made.stream().map(seat -> seat.kept().orElseThrow()).toList(), Optional.empty());
        output.write(archive(slice), kept::write);
        Map<Integer, SlicePart.SeatPart> seats = new TreeMap<>();
        for (Issue.Written written : made) {
            Set<String> names = new TreeSet<>(Issue.files(List.of(written.line().seat()), besides));
            names.addAll(written.figures());
            if (seats.isEmpty()) { // the archive of all is told with the first of them
                names.add(KEYS + "/" + archive(slice).getFileName());
            }
            Map<String, String> files = new TreeMap<>();
            names.forEach(name -> files.put(name, sum(name).orElse("gone")));
            seats.put(
                    written.line().seat().number(),
                    new SlicePart.SeatPart(
                            written.line().problems(), written.line().cautions(), written.figures(), files));
        }
        output.write(part(slice), new SlicePart(command(slice), seats, tallies).text());
    }

    private Optional<String> sum(String name) {
        try {
            return SlicePart.sum(out.resolve(name));
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(out.resolve(name), failure));
        }
    }

    /**
     * Why the slice must be made again; empty if all of it is there and right.
     *
     * @param known the slice by which whoever runs the command knows it
     */
    Optional<String> touched(SlicePart part, Slice slice, Slice known) {
        if (!part.command().equals(command(slice))) {
            return Optional.of(say("folder.slice.other-command", "slice", known.toString()));
        }
        for (SlicePart.SeatPart seat : part.seats().values()) {
            for (Map.Entry<String, String> file : seat.files().entrySet()) {
                if (!sum(file.getKey()).equals(Optional.of(file.getValue()))) {
                    return Optional.of(say("folder.slice.file", "slice", known.toString(), "file", file.getKey()));
                }
            }
        }
        return Files.isRegularFile(archive(slice), LinkOption.NOFOLLOW_LINKS)
                ? Optional.empty()
                : Optional.of(say("folder.slice.archive", "slice", known.toString()));
    }

    /** What was made of its seats, for whoever joins. */
    List<Issue.Written> written(Slice slice, SlicePart part, Keeping keeping) {
        Map<Integer, ArchivedSheet> kept = new TreeMap<>();
        List<Roster.Seat> seats = slice.of(roster);
        if (!seats.isEmpty()) {
            ArchivedClass.read(archive(slice))
                    .sheets()
                    .forEach(sheet -> kept.put(sheet.id().seat(), sheet));
        }
        List<Issue.Written> written = new ArrayList<>();
        for (Roster.Seat seat : seats) {
            SlicePart.SeatPart told = part.seats().get(seat.number());
            ClassIndex.Line line = new ClassIndex.Line(
                    seat,
                    set.id(seat.number()),
                    Issue.links(
                            Issue.fileName(seat.number()), besides, set.plan().language()),
                    told.problems(),
                    told.cautions());
            written.add(new Issue.Written(line, 0, told.figures(), Optional.of(keeping.keep(kept.get(seat.number())))));
        }
        return written;
    }

    /** Takes away what slices have left, those of other commands as well: they are of no use any more. */
    void removeAll(Output output) {
        Path keys = out.resolve(KEYS);
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(keys)) {
            for (Path entry : entries) {
                if (NAME.matcher(entry.getFileName().toString()).matches()) {
                    output.removeOld(entry);
                }
            }
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(keys, failure));
        }
    }
}
