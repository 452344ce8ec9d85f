package ampersheet.issue;

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
import ampersheet.sheet.SheetMaker;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * A class issued by several runs at a time, on one machine or many that share a folder. Each writes sheets, keys and
 * pages of its slice, and beside the keys a part that tells of them; a last run joins the parts: it writes index,
 * answer grid, archive and manifest, makes no sheet, and takes the parts away. What then lies there is, byte for byte,
 * what one run would have written.
 */
public final class SlicedIssue {
    private static final String KEYS = "keys";
    private static final int MOST_NAMED = 4;

    private final ProblemSet set;
    private final Roster roster;
    private final Path out;
    private final Issue.Besides besides;
    private final Output.Terms terms;

    /** @param terms with what is found in the folder */
    public SlicedIssue(ProblemSet set, Roster roster, Path out, Issue.Besides besides, Output.Terms terms) {
        this.set = set;
        this.roster = roster;
        this.out = out;
        this.besides = besides;
        this.terms = terms;
    }

    /**
     * @param sheets in the slice
     * @param written files that were new or changed
     * @param wasThere whether all of it was there and right, so that nothing was made
     */
    public record Sliced(int sheets, int written, boolean wasThere) {}

    /**
     * Writes the sheets of one slice, unless an earlier run of the same slice has, and nobody has touched them since.
     *
     * @throws DiagnosticException with all faults of plan and templates; if a template has too few variants for the
     *     slice; or if a file cannot be written
     */
    public Sliced write(Slice slice, int threads) {
        List<Roster.Seat> seats = slice.of(roster);
        if (besides.pdf()) {
            Handouts.requirePrintable(set.plan(), roster, besides.extra());
        }
        try (Output output = Output.slice(out, slice, terms)) {
            Optional<SlicePart> before = SlicePart.read(part(slice));
            if (before.isPresent() && touched(before.get(), slice).isEmpty()) {
                return new Sliced(seats.size(), 0, true);
            }
            SheetMaker maker = new SheetMaker(set);
            if (set.plan().reuse().repeats()) {
                maker.prepare(roster);
            } else {
                maker.prepare(new Roster(seats));
            }
            output.knows(List.of(part(slice), archive(slice)));
            output.require(Issue.files(seats, besides).stream().map(out::resolve).toList());
            Issue.Run run = new Issue.Run(maker, roster, out, output, new Keeping(set, Issue.archive(set, out)));
            List<Issue.Written> made = run.seats(seats, threads, besides, terms.progress());
            IssuedArchive kept = IssuedArchive.of(
                    set,
                    made.stream().map(seat -> seat.kept().orElseThrow()).toList(),
                    Optional.empty());
            output.write(archive(slice), kept::write);
            output.write(part(slice), part(slice, seats, made, maker.tallies()).text());
            output.finish();
            return new Sliced(
                    seats.size(), made.stream().mapToInt(Issue.Written::files).sum(), false);
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(part(slice), failure));
        }
    }

    /**
     * Puts the slices together.
     *
     * @param slices how many there are
     * @throws DiagnosticException if some are missing, were made from something else, or have been touched since
     */
    public Issue.Issued join(int slices) {
        try (Output output = Output.folder(out, terms)) {
            Map<Slice, SlicePart> parts = parts(slices);
            Path archive = Issue.archive(set, out);
            IssuedFolder folder =
                    IssuedFolder.open(output, out, Issue.code(set), Issue.files(roster, besides, archive));
            Issue.Run run = new Issue.Run(new SheetMaker(set), roster, out, output, new Keeping(set, archive));
            List<Issue.Written> seats = new ArrayList<>();
            Map<String, Tally> tallies = new LinkedHashMap<>();
            for (Map.Entry<Slice, SlicePart> part : parts.entrySet()) {
                seats.addAll(written(part.getKey(), part.getValue(), run.keeping()));
                part.getValue().tallies().forEach((source, tally) -> tallies.merge(source, tally, SlicedIssue::later));
            }
            folder.begin();
            Issue.Issued issued = run.end(seats, tallies, folder);
            parts.keySet().forEach(slice -> {
                output.remove(part(slice));
                output.remove(archive(slice));
            });
            return issued;
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(out, failure));
        }
    }

    /** Of draws in one order, those that went further. */
    private static Tally later(Tally one, Tally other) {
        return other.tried() > one.tried() ? other : one;
    }

    private Path part(Slice slice) {
        return out.resolve(KEYS).resolve(slice.fileName() + ".csv");
    }

    private Path archive(Slice slice) {
        return out.resolve(KEYS).resolve(slice.fileName() + ".zip");
    }

    private String command(Slice slice) {
        List<String> parts = new ArrayList<>(
                List.of(slice.toString(), set.longCode(), Issue.code(set), set.plan().written(), besides.told()));
        roster.seats().forEach(seat -> parts.addAll(List.of(Integer.toString(seat.number()), seat.name())));
        return SlicePart.command(parts);
    }

    private SlicePart part(
            Slice slice, List<Roster.Seat> seats, List<Issue.Written> made, Map<String, Tally> tallies)
            throws IOException {
        Map<Integer, SlicePart.SeatPart> parts = new TreeMap<>();
        for (int i = 0; i < seats.size(); i++) {
            Issue.Written written = made.get(i);
            Set<String> names = new TreeSet<>(Issue.files(List.of(seats.get(i)), besides));
            names.addAll(written.figures());
            Map<String, String> files = new TreeMap<>();
            for (String name : names) {
                files.put(name, SlicePart.sum(out.resolve(name)).orElse("gone"));
            }
            parts.put(
                    seats.get(i).number(),
                    new SlicePart.SeatPart(
                            written.line().problems(), written.line().cautions(), written.figures(), files));
        }
        return new SlicePart(command(slice), parts, tallies);
    }

    /** Why the slice must be made again; empty if all of it is there and right. */
    private Optional<String> touched(SlicePart part, Slice slice) throws IOException {
        if (!part.command().equals(command(slice))) {
            return Optional.of("was made from another plan, class list or with other options");
        }
        for (SlicePart.SeatPart seat : part.seats().values()) {
            for (Map.Entry<String, String> file : seat.files().entrySet()) {
                if (!SlicePart.sum(out.resolve(file.getKey())).equals(Optional.of(file.getValue()))) {
                    return Optional.of("has lost " + file.getKey() + ", or somebody changed it");
                }
            }
        }
        if (SlicePart.sum(archive(slice)).isEmpty()) {
            return Optional.of("has lost its archive");
        }
        return Optional.empty();
    }

    private Map<Slice, SlicePart> parts(int slices) throws IOException {
        Map<Slice, SlicePart> parts = new LinkedHashMap<>();
        List<Diagnostic> faults = new ArrayList<>();
        for (int number = 1; number <= slices; number++) {
            Slice slice = new Slice(number, slices);
            Optional<SlicePart> part = SlicePart.read(part(slice));
            Optional<String> why =
                    part.isEmpty() ? Optional.of("is not there, or not finished") : touched(part.get(), slice);
            why.ifPresent(told -> faults.add(Diagnostic.error(
                    Place.inFile(Output.shown(out)),
                    "slice " + slice + " " + told,
                    "all of " + slices + " slices, made by the same command",
                    "Run the same command with --slice " + slice + " and without --join, then join again.")));
            part.ifPresent(one -> parts.put(slice, one));
        }
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults.subList(0, Math.min(MOST_NAMED, faults.size())));
        }
        return parts;
    }

    private List<Issue.Written> written(Slice slice, SlicePart part, Keeping keeping) {
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
                    Issue.links(Issue.fileName(seat.number()), besides),
                    told.problems(),
                    told.cautions());
            written.add(new Issue.Written(
                    line, 0, told.figures(), Optional.of(keeping.keep(kept.get(seat.number())))));
        }
        return written;
    }
}
