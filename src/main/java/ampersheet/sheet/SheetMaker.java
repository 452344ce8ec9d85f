package ampersheet.sheet;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.problem.Draws;
import ampersheet.problem.Tally;
import ampersheet.problem.Workshop;
import ampersheet.template.ProblemTemplate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Makes the sheets of a set, any seat without the others. May be used by several threads. */
public final class SheetMaker implements ClassSheets {
    private final ProblemSet set;
    private final Map<String, Draws> draws = new LinkedHashMap<>();

    /** @throws DiagnosticException if a template cannot be built from the bins of the set */
    public SheetMaker(ProblemSet set) {
        this.set = set;
        List<Diagnostic> faults = new ArrayList<>();
        set.sources().forEach((source, template) -> {
            try {
                draws.put(
                        source,
                        set.parts().isEmpty()
                                ? new Draws(
                                        new Workshop(template),
                                        set.plan().seed(),
                                        set.plan().portion().ofSheets(false))
                                : Draws.buildable(
                                        new Workshop(set.parts().get().limit(template)),
                                        set.plan().seed(),
                                        set.plan().portion().ofSheets(true),
                                        set.parts().get()));
            } catch (DiagnosticException notBuildable) {
                faults.addAll(notBuildable.diagnostics());
            }
        });
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults);
        }
    }

    public ProblemSet set() {
        return set;
    }

    @Override
    public Plan plan() {
        return set.plan();
    }

    @Override
    public SheetId readId(String typed) {
        return set.readId(typed);
    }

    @Override
    public IssuedSheet issued(int seat) {
        return new IssuedSheet(sheet(seat), set.places(seat), List.of(), List.of());
    }

    @Override
    public List<ProblemTemplate> templates() {
        return set.templates();
    }

    /**
     * Finds out whether every template has enough variants for all seats up to the last, so that a class is not begun
     * that cannot be finished.
     *
     * @throws DiagnosticException if not, for all such templates at once, or if a part of a course keeps no numbers for
     *     so many seats
     */
    public void prepare(int lastSeat) {
        requireRoom(lastSeat);
        List<Diagnostic> faults = new ArrayList<>();
        draws.forEach((source, of) -> {
            int needed = Math.toIntExact(set.needed(source, lastSeat));
            try {
                if (needed > 0) { // a pool has more templates than a small class has seats
                    of.draw(needed - 1);
                }
            } catch (DiagnosticException tooFew) {
                faults.addAll(
                        set.plan().portion().isOfCourse()
                                ? List.of(tooFewForCourse(source, needed, tooFew))
                                : set.fixing(source)
                                        .map(entry -> List.of(tooFew(source, needed, entry)))
                                        .orElse(tooFew.diagnostics()));
            }
        });
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults);
        }
    }

    private void requireRoom(int lastSeat) {
        int seats = set.plan().portion().seats();
        if (lastSeat > seats) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(set.plan().file()),
                    "the class has a seat " + lastSeat + ", and each week keeps numbers for " + seats + " seats only",
                    "seats from 1 to " + seats + ", or a larger number at seats: before the first week is issued",
                    "Give the learner a lower seat that is free. A larger number at seats: gives everybody other "
                            + "numbers from the second week on; sheets that are out stay marked by their archive."));
        }
    }

    /** Told to whoever wrote the course. */
    private Diagnostic tooFewForCourse(String source, int needed, DiagnosticException why) {
        int before = set.plan().portion().before(source, set.parts().isPresent());
        return Diagnostic.error(
                Place.inFile(set.plan().file()),
                source + " cannot give everybody numbers of their own up to this week: " + needed + " variants are "
                        + "needed, " + before + " of them for the weeks before; "
                        + why.diagnostics().get(0).problem(),
                "as many variants as the course needs of it",
                "Let it return less often (gap:), put other templates of the skill beside it (pool: or skill:), "
                        + "or keep numbers for fewer seats (seats:).");
    }

    /** Told to whoever wrote the plan: the template has enough of them as long as nothing is fixed. */
    private Diagnostic tooFew(String source, int needed, Plan.Entry entry) {
        Draws of = draws.get(source);
        return Diagnostic.error(
                entry.place(),
                "with " + FixedGivens.told(entry.fixed()) + " fixed, "
                        + of.template().name()
                        + " has only " + of.tally().accepted() + " variants (of " + of.size()
                        + " combinations of its other givens; refused: "
                        + of.tally().reasons() + "), and " + needed + " are needed",
                "a variant of its own for everyone who gets this problem",
                "Fix fewer givens, or another value.");
    }

    /** @throws DiagnosticException if a template has not enough variants for this seat */
    public Sheet sheet(int seat) {
        List<SheetProblem> problems = new ArrayList<>();
        for (SeatDraw draw : set.draws(seat)) {
            problems.add(new SheetProblem(
                    problems.size() + 1,
                    draw.slot().support(),
                    draw.slot().example(),
                    set.plan(),
                    draws.get(draw.source()).draw(Math.toIntExact(draw.index()))));
        }
        return new Sheet(set.id(seat), set.plan(), problems, set.parts());
    }

    /**
     * How many draws were tried, and why some were refused, by {@linkplain ProblemSet#sources source}, for the sheets
     * made so far.
     */
    public Map<String, Tally> tallies() {
        Map<String, Tally> tallies = new LinkedHashMap<>();
        draws.forEach((template, of) -> tallies.put(template, of.tally()));
        return tallies;
    }
}
