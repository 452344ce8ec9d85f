package ampersheet.issue;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.problem.Tally;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetMaker;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A class issued by several runs at a time, on one machine or many that share a folder. Each writes sheets, keys and
 * pages of its slice, and beside the keys a part that tells of them; a last run joins the parts: it writes index,
 * answer grid, archive and manifest, makes no sheet, and takes the parts away. What then lies there is, byte for byte,
 * what one run would have written.
 */
public final class SlicedIssue {
    private static final int MOST_NAMED = 4;

    private final ProblemSet set;
    private final Roster roster;
    private final Path out;
    private final Issue.Besides besides;
    private final Output.Terms terms;
    private final SliceParts parts;

    /** @param terms with what is found in the folder */
    public SlicedIssue(ProblemSet set, Roster roster, Path out, Issue.Besides besides, Output.Terms terms) {
        this.set = set;
        this.roster = roster;
        this.out = out;
        this.besides = besides;
        this.terms = terms;
        this.parts = new SliceParts(set, roster, out, besides);
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
            if (parts.right(slice).isPresent()) {
                return new Sliced(seats.size(), 0, true);
            }
            SheetMaker maker = new SheetMaker(set);
            if (set.plan().dealing().repeats()) {
                maker.prepare(roster);
            } else {
                maker.prepare(new Roster(seats));
            }
            output.require(
                    Issue.files(seats, besides).stream().map(out::resolve).toList());
            Issue.Run run = new Issue.Run(maker, roster, out, output, new Keeping(set, Issue.archive(set, out)));
            List<Issue.Written> made = run.seats(seats, threads, besides, terms.progress());
            parts.write(slice, made, maker.tallies(), output);
            output.finish();
            return new Sliced(
                    seats.size(), made.stream().mapToInt(Issue.Written::files).sum(), false);
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
            Map<Slice, SlicePart> all = all(slices);
            Path archive = Issue.archive(set, out);
            IssuedFolder folder =
                    IssuedFolder.open(output, out, Issue.code(set), Issue.files(roster, besides, archive));
            Issue.Run run = new Issue.Run(new SheetMaker(set), roster, out, output, new Keeping(set, archive));
            List<Issue.Written> seats = new ArrayList<>();
            Map<String, Tally> tallies = new LinkedHashMap<>();
            for (Map.Entry<Slice, SlicePart> part : all.entrySet()) {
                seats.addAll(parts.written(part.getKey(), part.getValue(), run.keeping()));
                part.getValue().tallies().forEach((source, tally) -> tallies.merge(source, tally, SlicedIssue::later));
            }
            folder.begin();
            Issue.Issued issued = run.end(seats, tallies, folder);
            parts.removeAll(output);
            return issued;
        }
    }

    /** Of draws in one order, those that went further. */
    private static Tally later(Tally one, Tally other) {
        return other.tried() > one.tried() ? other : one;
    }

    private Map<Slice, SlicePart> all(int slices) {
        Map<Slice, SlicePart> all = new LinkedHashMap<>();
        List<Diagnostic> faults = new ArrayList<>();
        for (int number = 1; number <= slices; number++) {
            Slice slice = new Slice(number, slices);
            Optional<SlicePart> part = parts.read(slice);
            Optional<String> why = part.isEmpty()
                    ? Optional.of(say("folder.slice.missing", "slice", slice.toString()))
                    : parts.touched(part.get(), slice);
            why.ifPresent(told -> faults.add(Diagnostic.error(
                    Place.inFile(Output.shown(out)),
                    told,
                    count("folder.slice.expected", slices),
                    say("folder.slice.next", "slice", slice.toString()))));
            part.ifPresent(one -> all.put(slice, one));
        }
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults.subList(0, Math.min(MOST_NAMED, faults.size())));
        }
        return all;
    }
}
