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

    /**
     * @param learners of the class, of whom those are issued to who get a sheet
     * @param terms with what is found in the folder
     * @throws DiagnosticException if the plan is for some seats only, and none of them is there
     */
    public SlicedIssue(ProblemSet set, Roster learners, Path out, Issue.Besides besides, Output.Terms terms) {
        this.set = set;
        this.roster = set.sitting(learners);
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
        Steps steps = Steps.of(slice, roster.seats().size());
        if (besides.pdf()) {
            Handouts.requirePrintable(set.plan(), roster, besides.extra());
        }
        try (Output output = Output.slice(out, slice, terms)) {
            if (steps.areRight(parts)) {
                return new Sliced(seats.size(), 0, true);
            }
            SheetMaker maker = new SheetMaker(set);
            if (set.plan().dealing().repeats()) {
                maker.prepare(roster);
            } else {
                maker.prepare(seats.isEmpty() ? 0 : seats.get(seats.size() - 1).number());
            }
            output.require(
                    () -> Issue.files(seats, besides).stream().map(out::resolve).iterator());
            Issue.Run run = new Issue.Run(maker, roster, out, output, new Keeping(set, Issue.archive(set, out)));
            int files = steps.make(run, parts, threads, terms.progress());
            output.finish();
            return new Sliced(seats.size(), files, false);
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
            Map<String, Tally> tallies = requireAll(slices);
            Path archive = Issue.archive(set, out);
            IssuedFolder folder =
                    IssuedFolder.open(output, out, Issue.code(set), Issue.files(roster, besides, archive));
            Issue.Run run = new Issue.Run(new SheetMaker(set), roster, out, output, new Keeping(set, archive));
            folder.begin();
            Issue.Issued issued = run.end(
                    to -> {
                        for (int number = 1; number <= slices; number++) {
                            steps(number, slices).each(run, parts, to);
                        }
                    },
                    0,
                    tallies,
                    folder);
            parts.removeAll(output);
            return issued;
        }
    }

    private Steps steps(int number, int slices) {
        return Steps.of(new Slice(number, slices), roster.seats().size());
    }

    /** Of draws in one order, those that went further. */
    private static Tally later(Tally one, Tally other) {
        return other.tried() > one.tried() ? other : one;
    }

    /** What was drawn, if all slices are there and right. */
    private Map<String, Tally> requireAll(int slices) {
        Map<String, Tally> tallies = new LinkedHashMap<>();
        List<Diagnostic> faults = new ArrayList<>();
        for (int number = 1; number <= slices; number++) {
            Steps steps = steps(number, slices);
            Slice slice = steps.slice();
            Optional<String> why = Optional.empty();
            for (int at = 1; at <= steps.steps() && why.isEmpty(); at++) {
                Slice step = steps.step(at);
                Optional<SlicePart> part = parts.read(step);
                why = part.isEmpty()
                        ? Optional.of(say("folder.slice.missing", "slice", slice.toString()))
                        : parts.touched(part.get(), step, slice);
                part.ifPresent(one ->
                        one.tallies().forEach((source, tally) -> tallies.merge(source, tally, SlicedIssue::later)));
            }
            why.ifPresent(told -> faults.add(Diagnostic.error(
                    Place.inFile(Output.shown(out)),
                    told,
                    count("folder.slice.expected", slices),
                    say("folder.slice.next", "slice", slice.toString()))));
            if (faults.size() == MOST_NAMED) {
                break;
            }
        }
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults);
        }
        return tallies;
    }
}
