package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.problem.Difficulty;
import ampersheet.problem.Draws;
import ampersheet.problem.Problem;
import ampersheet.problem.Tally;
import ampersheet.problem.Workshop;
import ampersheet.template.ProblemTemplate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes the sheets of a set, any seat without the others. May be used by several threads. */
public final class SheetMaker implements ClassSheets {
    private static final String LET_THEM_REPEAT = say("plan.variants.or-repeat");
    private static final String AS_THEY_COME =
            say("plan.variants.or-uneven", "group", Integer.toString(EvenDeal.GROUP));

    private final ProblemSet set;
    private final Map<String, Draws> draws = new LinkedHashMap<>();
    /** Empty where everybody has numbers of her own. */
    private final Optional<Repeats> repeats;
    /** Empty where variants go to seats as they come. */
    private final Optional<EvenDeal> even;

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
        // what is to be built takes parts out of the bins each time it comes
        this.repeats = set.plan().dealing().repeats() && set.parts().isEmpty()
                ? Optional.of(set.repeats((source, count) -> draws.get(source).has(Math.toIntExact(count) - 1)
                        ? count
                        : draws.get(source).tally().accepted()))
                : Optional.empty();
        this.even = set.plan().isDealtEvenly()
                ? Optional.of(new EvenDeal(
                        set,
                        (source, index) -> Difficulty.of(problem(source, index)).points()))
                : Optional.empty();
    }

    public ProblemSet set() {
        return set;
    }

    @Override
    public String code() {
        return set.id(1).set();
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
    public boolean has(int seat) {
        return set.plan().portion().only().isEmpty()
                || set.plan().portion().only().containsKey(seat);
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
                    boolean enough = of.has(needed - 1);
                    if (!enough && repeats.isEmpty()) {
                        faults.add(tooFew(source, needed));
                    }
                }
            } catch (DiagnosticException fruitless) {
                faults.addAll(fruitless.diagnostics());
            }
        });
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults);
        }
        requireApart(lastSeat);
    }

    /**
     * The same for a class, whose rooms are looked at, too, if the class list tells them.
     *
     * @throws DiagnosticException also if two who sit in one room would have a problem in common
     */
    public void prepare(Roster roster) {
        prepare(roster.lastSeat());
        if (repeatsBy(roster.lastSeat())) {
            new SharedProblems(this, roster).requireInOtherRooms();
        }
    }

    private void requireApart(int seat) {
        int last = repeats.map(again -> again.lastSeat(seat)).orElse(seat);
        if (last < seat) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(set.plan().file()),
                    say("plan.seat.not-apart", "seat", Integer.toString(seat)),
                    last == 0
                            ? say("plan.seat.not-apart.fewer")
                            : say("plan.seat.not-apart.expected", "seat", Integer.toString(last)),
                    say("plan.seat.not-apart.next")));
        }
    }

    private void requireRoom(int lastSeat) {
        int seats = set.plan().portion().seats();
        if (lastSeat > seats) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(set.plan().file()),
                    say("plan.seat.beyond", "seat", Integer.toString(lastSeat), "most", Integer.toString(seats)),
                    say("plan.seat.beyond.expected", "most", Integer.toString(seats)),
                    say("plan.seat.beyond.next")));
        }
    }

    private Diagnostic tooFew(String source, int needed) {
        return set.plan().portion().isOfCourse() ? tooFewForCourse(source, needed) : tooFewForPlan(source, needed);
    }

    /** Told to whoever wrote the course. */
    private Diagnostic tooFewForCourse(String source, int needed) {
        int before = set.plan().portion().before(source, set.parts().isPresent());
        return Diagnostic.error(
                Place.inFile(set.plan().file()),
                say(
                        "plan.variants.course",
                        "source",
                        source,
                        "needed",
                        Integer.toString(needed),
                        "before",
                        Integer.toString(before),
                        "why",
                        draws.get(source).exhausted().problem()),
                say("plan.variants.course.expected"),
                say("plan.variants.course.next"));
    }

    /** Told to whoever wrote the plan, where the template has enough of them as long as nothing is fixed. */
    private Diagnostic tooFewForPlan(String source, int needed) {
        Draws of = draws.get(source);
        Diagnostic fault = set.fixing(source)
                .map(entry -> Diagnostic.error(
                        entry.place(),
                        say(
                                "plan.variants.fixed",
                                "fixed",
                                FixedGivens.told(entry.fixed()),
                                "template",
                                of.template().name(),
                                "variants",
                                Long.toString(of.tally().accepted()),
                                "combinations",
                                Long.toString(of.size()),
                                "reasons",
                                of.tally().reasons(),
                                "needed",
                                Integer.toString(needed)),
                        say("plan.variants.fixed.expected"),
                        say("plan.variants.fixed.next")))
                .orElseGet(of::exhausted);
        return set.parts().isPresent() && even.isEmpty()
                ? fault
                : Diagnostic.error(
                        fault.place(),
                        fault.problem(),
                        fault.expected(),
                        fault.nextAction() + " " + (even.isPresent() ? AS_THEY_COME : LET_THEM_REPEAT));
    }

    /**
     * @throws DiagnosticException if a template has not enough variants for this seat, or if it would have two problems
     *     in common with another
     */
    public Sheet sheet(int seat) {
        requireApart(seat);
        List<SheetProblem> problems = new ArrayList<>();
        for (SeatDraw draw : set.draws(seat)) {
            problems.add(new SheetProblem(
                    problems.size() + 1,
                    draw.slot().support(),
                    draw.slot().example(),
                    set.plan(),
                    problem(draw.source(), index(draw, seat))));
        }
        return new Sheet(set.id(seat), set.plan(), problems, set.parts());
    }

    private long index(SeatDraw draw, int seat) {
        return repeats.map(again -> again.index(draw, seat))
                .or(() -> even.map(deal -> deal.index(draw, seat)))
                .orElse(draw.index());
    }

    private Problem problem(String source, long index) {
        Draws of = draws.get(source);
        int k = Math.toIntExact(index);
        try {
            return of.draw(k);
        } catch (DiagnosticException refused) {
            throw of.has(k) ? refused : new DiagnosticException(tooFew(source, k + 1));
        }
    }

    /** The other seats, up to the last, that have a problem of this seat, in the order of its sheet. */
    List<List<Integer>> alsoAt(int seat, int lastSeat) {
        return set.draws(seat).stream()
                .map(draw ->
                        repeats.map(again -> again.alsoAt(draw, seat, lastSeat)).orElse(List.of()))
                .toList();
    }

    /** Whether some seat up to this one has a problem that came before. */
    boolean repeatsBy(int seat) {
        return repeats.isPresent() && repeats.get().begun(seat);
    }

    /** No two seats up to this one that have a problem in common have numbers that differ by less. */
    long nearest(int lastSeat) {
        return repeats.orElseThrow().nearest(lastSeat);
    }

    /** How equally hard the sheets of seats 1 to the last are, if the plan wants them so. */
    public Optional<EvenDeal.Spread> spread(int lastSeat) {
        return even.map(deal -> deal.spread(lastSeat));
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
