package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.problem.Inventory;
import ampersheet.sheet.Plan.Entry;
import ampersheet.sheet.Plan.Source;
import ampersheet.source.Told;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/** A plan whose templates have been found and fit: everything that the sheets of a class have in common. */
public final class ProblemSet {
    /**
     * Part of every sheet ID's template version. To be raised when the same templates would draw other numbers or work
     * them otherwise, so that an old sheet is refused instead of being given a wrong key.
     */
    private static final String DRAWS_VERSION = "1";

    private final Plan plan;
    private final TemplateLibrary library;
    private final Map<String, ProblemTemplate> templates;
    private final Map<String, ProblemTemplate> sources;
    private final List<Slot> slots;
    private final SeatDraws draws;
    private final Optional<Inventory> parts;
    private final String planCode;
    private final String templatesCode;

    private ProblemSet(Finder found) {
        this.plan = found.plan;
        this.parts = found.parts;
        this.library = found.library;
        this.templates = Collections.unmodifiableMap(found.found);
        this.sources = Collections.unmodifiableMap(found.sources);
        this.slots = List.copyOf(found.slots);
        this.draws = new SeatDraws(
                plan.seed(),
                slots,
                plan.dealing().examples(),
                source -> plan.portion().before(source, parts.isPresent()));
        this.planCode = code(plan);
        this.templatesCode = SheetId.abbreviate(fingerprint(templates, parts), SheetId.TEMPLATE_CHARACTERS);
    }

    /** @throws DiagnosticException with all faults of the plan, and of the templates it names, at once */
    public static ProblemSet of(Plan plan, TemplateLibrary library) {
        return of(plan, library, Optional.empty());
    }

    /** @param parts the bins that every problem must be buildable from; with others, the sheets have other IDs */
    public static ProblemSet of(Plan plan, TemplateLibrary library, Optional<Inventory> parts) {
        return new Finder(plan, library, parts).find();
    }

    /** The bins that every problem can be built from; empty if nobody said. */
    public Optional<Inventory> parts() {
        return parts;
    }

    public Plan plan() {
        return plan;
    }

    /** Every template that may stand on a sheet, in the order in which the plan names them. */
    public List<ProblemTemplate> templates() {
        return List.copyOf(templates.values());
    }

    /**
     * What problems are drawn from, in the order in which the plan comes to it: each template by its name, and each
     * with some of its givens fixed, which draws nothing that the others draw.
     */
    public Map<String, ProblemTemplate> sources() {
        return sources;
    }

    TemplateLibrary library() {
        return library;
    }

    /**
     * Those of a class who get a sheet.
     *
     * @throws DiagnosticException if the plan is for some seats only, and none of them is there
     */
    public Roster sitting(Roster roster) {
        Roster sitting = plan.portion().sitting(roster);
        if (sitting.seats().isEmpty() && !roster.seats().isEmpty()) {
            String seats = joined(plan.portion().only().keySet());
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(plan.file()),
                    say("plan.retake.not-in-class", "seats", seats),
                    say("plan.retake.not-in-class.expected"),
                    say("plan.retake.not-in-class.next")));
        }
        return sitting;
    }

    private static String joined(Iterable<Integer> numbers) {
        StringBuilder text = new StringBuilder();
        numbers.forEach(number -> text.append(text.length() == 0 ? "" : ", ").append(number));
        return text.toString();
    }

    /** @param seat from 1 */
    public SheetId id(int seat) {
        return new SheetId(planCode, templatesCode, seat);
    }

    /** The same for this plan with its seed and these templates only, longer than a sheet's ID has room for. */
    public String longCode() {
        return SheetId.abbreviate(
                Fingerprint.of("exchange", PlanFingerprint.of(plan), fingerprint(templates, parts)),
                SheetId.MOST_CHARACTERS);
    }

    /**
     * Reads an ID as typed from a sheet.
     *
     * @throws DiagnosticException for anything but an ID of this plan with these templates
     */
    public SheetId readId(String typed) {
        return new SheetIdReader(planCode, templatesCode, plan.file()).read(typed);
    }

    /** How the plan fades this template's problems; empty if it shows none of them faded. */
    public Optional<Support.Fade> fade(String template) {
        return slots.stream()
                .filter(slot -> slot.pool().contains(template))
                .filter(slot -> slot.support() instanceof Support.Faded)
                .map(slot -> ((Support.Faded) slot.support()).fade())
                .findFirst();
    }

    /** In the order in which the sheet shows them. */
    List<SeatDraw> draws(int seat) {
        List<SeatDraw> listed = draws.of(seat).stream()
                .filter(draw -> plan.portion().gives(seat, draw.slot().choice()))
                .toList();
        if (plan.order() == Plan.Order.AS_LISTED) {
            return listed;
        }
        Map<Integer, List<SeatDraw>> together = new LinkedHashMap<>();
        listed.forEach(draw -> together.computeIfAbsent(draw.slot().choice(), choice -> new ArrayList<>())
                .add(draw));
        List<List<SeatDraw>> mixed = MixedOrder.of(
                List.copyOf(together.values()),
                pair -> templates.get(pair.get(0).template()).family(),
                plan.portion().isOfCourse() ? this::buildsOn : (one, other) -> false);
        return mixed.stream().flatMap(List::stream).toList();
    }

    private boolean buildsOn(List<SeatDraw> one, List<SeatDraw> other) {
        ProblemTemplate later = templates.get(one.get(0).template());
        return later.premises()
                .after()
                .contains(templates.get(other.get(0).template()).skill());
    }

    /**
     * What is wanted at one place of the plan's list.
     *
     * @param sources one of these, by their names in {@link #sources}
     * @param example whether its worked example goes before it
     */
    public record Wanted(List<String> sources, Support support, boolean example) {
        public Wanted {
            sources = List.copyOf(sources);
        }
    }

    /** In the order of the plan. */
    public List<Wanted> wanted() {
        List<Wanted> wanted = new ArrayList<>();
        boolean example = false;
        for (Slot slot : slots) {
            if (!slot.example()) {
                wanted.add(new Wanted(slot.pool().stream().map(slot::source).toList(), slot.support(), example));
            }
            example = slot.example();
        }
        return wanted;
    }

    /** For each problem of a sheet, in the order shown, its place in the plan's list, from 0 and examples included. */
    public List<Integer> places(int seat) {
        return draws(seat).stream().map(draw -> draw.slot().number()).toList();
    }

    /**
     * How many variants of one of the {@link #sources} the seats up to this one take, and who shares them with them.
     */
    long taken(String source, int lastSeat) {
        return draws.takenBefore(source, (plan.isDealtEvenly() ? EvenDeal.lastOfGroup(plan, lastSeat) : lastSeat) + 1);
    }

    /** How many of them there must be for that: those that go before are passed over. */
    long needed(String source, int lastSeat) {
        long taken = taken(source, lastSeat);
        return taken == 0 ? 0 : plan.portion().before(source, parts.isPresent()) + taken;
    }

    /** Which problems come again, where the plan lets them and templates have no more than this. */
    Repeats repeats(Repeats.Supply supply) {
        return new Repeats(draws, supply);
    }

    /** The first entry that fixes the givens of a source; empty if it draws them all. */
    Optional<Entry> fixing(String source) {
        return plan.entries().stream()
                .filter(entry -> !entry.fixed().isEmpty())
                .filter(entry -> source.endsWith(" with " + FixedGivens.told(entry.fixed())))
                .findFirst();
    }

    /** The characters of sheet IDs that stand for a plan. */
    static String code(Plan plan) {
        return SheetId.abbreviate(PlanFingerprint.of(plan), SheetId.PLAN_CHARACTERS);
    }

    /**
     * Whether a plan gives every seat the same problems with the same numbers, as long as its templates are these;
     * whatever its sheets are called, and however they are printed.
     */
    public boolean hasProblemsOf(Plan other) {
        return PlanFingerprint.ofProblems(plan, sources.keySet())
                .equals(PlanFingerprint.ofProblems(other, sources.keySet()));
    }

    private static String fingerprint(Map<String, ProblemTemplate> templates, Optional<Inventory> inventory) {
        List<String> parts = new ArrayList<>(List.of("templates", DRAWS_VERSION));
        for (String name : new TreeSet<>(templates.keySet())) {
            parts.add(name);
            parts.add(templates.get(name).fingerprint());
        }
        inventory.ifPresent(bins -> parts.addAll(List.of("parts", bins.fingerprint())));
        return Fingerprint.of(parts);
    }

    /** Looks up what a plan names. */
    private static final class Finder {
        private final Plan plan;
        private final TemplateLibrary library;
        private final Optional<Inventory> parts;
        private final List<Diagnostic> faults = new ArrayList<>();
        private final Map<String, ProblemTemplate> found = new LinkedHashMap<>();
        private final Map<String, ProblemTemplate> sources = new LinkedHashMap<>();
        private final List<Slot> slots = new ArrayList<>();
        private int choices;

        Finder(Plan plan, TemplateLibrary library, Optional<Inventory> parts) {
            this.parts = parts;
            this.plan = plan;
            this.library = library;
        }

        ProblemSet find() {
            for (Entry entry : plan.entries()) {
                List<ProblemTemplate> pool = atLevel(pool(entry.source()), entry);
                checkFade(entry, pool);
                pool.forEach(template -> found.put(template.name(), template));
                addSlots(entry, pool.stream().map(ProblemTemplate::name).toList());
                pool.forEach(template -> addSource(entry, template));
            }
            checkMarking();
            if (!faults.isEmpty()) {
                throw new DiagnosticException(faults.stream().distinct().toList());
            }
            return new ProblemSet(this);
        }

        /** What is said of questions must be said of questions that may be asked. */
        private void checkMarking() {
            plan.marking().weights().forEach((named, weight) -> asked(named, weight.place()));
            plan.marking().tolerances().forEach((named, tolerance) -> {
                List<String> steps = asked(named, tolerance.place());
                boolean judged =
                        steps.stream().anyMatch(step -> SheetProblem.hasTolerance(found.get(templateOf(named)), step));
                if (!steps.isEmpty() && !judged) {
                    faults.add(Diagnostic.error(
                            tolerance.place(),
                            say("plan.marking.tolerance.exact", "problem", named),
                            say("plan.marking.tolerance.exact.expected"),
                            say("plan.marking.tolerance.exact.next")));
                }
            });
        }

        private static String templateOf(String named) {
            int blank = named.indexOf(' ');
            return blank < 0 ? named : named.substring(0, blank);
        }

        /** The steps and choices that such a name stands for; a name that stands for none is told. */
        private List<String> asked(String named, Place place) {
            int blank = named.indexOf(' ');
            ProblemTemplate template = found.get(templateOf(named));
            TreeSet<String> steps = new TreeSet<>();
            if (template != null) {
                template.lines().forEach(line -> steps.add(line.id()));
                template.asks().forEach(ask -> steps.add(ask.of()));
            }
            if (blank >= 0) {
                steps.retainAll(List.of(named.substring(blank + 1).strip()));
            }
            // What is said for a whole course is looked up among all its problems.
            if (steps.isEmpty() && !plan.portion().isOfCourse()) {
                faults.add(Diagnostic.error(
                        place,
                        say("plan.marking.unknown", "problem", named),
                        say("plan.marking.unknown.expected"),
                        say("plan.correct-name")));
            }
            return List.copyOf(steps);
        }

        /** Two entries that draw from one template must never come to the same numbers, on one sheet or on two. */
        private void addSource(Entry entry, ProblemTemplate template) {
            String fixed = FixedGivens.told(entry.fixed());
            String source = fixed.isEmpty() ? template.name() : template.name() + " with " + fixed;
            if (sources.containsKey(source)) {
                return;
            }
            int before = faults.size();
            ProblemTemplate limited = FixedGivens.limit(template, entry.fixed(), faults);
            if (faults.size() == before) {
                sources.values().stream()
                        .filter(other -> other.name().equals(template.name()))
                        .filter(other -> FixedGivens.mayMeet(limited, other))
                        .findFirst()
                        .ifPresent(other -> faults.add(Diagnostic.error(
                                entry.place(),
                                say("plan.entries-meet", "template", template.name()),
                                say("plan.entries-meet.expected"),
                                say("plan.entries-meet.next"))));
            }
            sources.put(source, limited);
        }

        private void addSlots(Entry entry, List<String> pool) {
            String fixed = FixedGivens.told(entry.fixed());
            for (int member = 0; member < entry.count(); member++) {
                if (entry.example()) {
                    slots.add(new Slot(slots.size(), choices, member, pool, new Support.Full(), true, fixed));
                }
                slots.add(new Slot(slots.size(), choices, member, pool, entry.support(), false, fixed));
                choices++;
            }
        }

        private List<ProblemTemplate> pool(Source source) {
            List<ProblemTemplate> members = new ArrayList<>();
            if (source instanceof Source.One one) {
                named(one).ifPresent(members::add);
            } else if (source instanceof Source.Pool pool) {
                pool.templates().forEach(one -> named(one).ifPresent(members::add));
            } else if (source instanceof Source.Skill skill) {
                members.addAll(practising(skill));
            }
            return members;
        }

        private Optional<ProblemTemplate> named(Source.One one) {
            if (!library.has(one.template())) {
                faults.add(Diagnostic.error(
                        one.place(),
                        say("plan.template.unknown", "template", one.template()),
                        say("plan.template.unknown.expected"),
                        library.nearest(one.template())
                                .map(near -> say("plan.template.unknown.near", "template", near))
                                .orElse(say("plan.template.unknown.next"))));
                return Optional.empty();
            }
            return read(one.template());
        }

        private Optional<ProblemTemplate> read(String name) {
            try {
                return Optional.of(library.template(name, plan.language()));
            } catch (DiagnosticException broken) {
                faults.addAll(broken.diagnostics());
                return Optional.empty();
            }
        }

        private List<ProblemTemplate> practising(Source.Skill skill) {
            List<ProblemTemplate> members = new ArrayList<>();
            TreeSet<String> skills = new TreeSet<>();
            for (String name : library.names(plan.language())) {
                read(name).ifPresent(template -> {
                    skills.add(template.skill());
                    if (template.skill().equals(skill.skill())) {
                        members.add(template);
                    }
                });
            }
            if (members.isEmpty()) {
                faults.add(Diagnostic.error(
                        skill.place(),
                        say("plan.skill.unknown", "skill", skill.skill()),
                        say("plan.one-of", "names", String.join("; ", skills)),
                        say("plan.skill.unknown.next")));
            }
            return members;
        }

        private List<ProblemTemplate> atLevel(List<ProblemTemplate> pool, Entry entry) {
            if (plan.levels().isEmpty() || pool.isEmpty()) {
                return pool;
            }
            List<ProblemTemplate> fitting = pool.stream()
                    .filter(template -> plan.levels().contains(template.level()))
                    .toList();
            if (fitting.isEmpty()) {
                TreeSet<Integer> levels =
                        new TreeSet<>(pool.stream().map(ProblemTemplate::level).toList());
                faults.add(Diagnostic.error(
                        entry.place(),
                        Told.count("plan.level.unfit", levels.size(), "levels", joined(levels)),
                        say("plan.level.unfit.expected", "levels", joined(plan.levels())),
                        say("plan.level.unfit.next")));
            }
            return fitting;
        }

        private void checkFade(Entry entry, List<ProblemTemplate> pool) {
            if (!(entry.support() instanceof Support.Faded faded)) {
                return;
            }
            for (ProblemTemplate template : pool) {
                int steps = template.lines().size();
                int blank = Fading.blankSteps(template, faded.fade()).size();
                if (faded.fade() instanceof Support.Fade.Principle principle && blank == 0) {
                    faults.add(Diagnostic.error(
                            entry.place(),
                            say("plan.fade.no-step", "template", template.name(), "principle", principle.name()),
                            say("plan.one-of", "names", String.join("; ", template.teaches())),
                            say("plan.fade.no-step.next")));
                } else if (blank >= steps || blankAsked(faded.fade()) > steps - 1) {
                    faults.add(Diagnostic.error(
                            entry.place(),
                            say("plan.fade.too-far", "template", template.name(), "steps", Integer.toString(steps)),
                            say("plan.fade.too-far.expected", "most", Integer.toString(steps - 1)),
                            say("plan.fade.too-far.next")));
                }
            }
        }

        private static int blankAsked(Support.Fade fade) {
            if (fade instanceof Support.Fade.Forward forward) {
                return forward.blank();
            }
            return fade instanceof Support.Fade.Backward backward ? backward.blank() : 0;
        }
    }
}
