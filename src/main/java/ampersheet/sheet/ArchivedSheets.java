package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.formula.Values;
import ampersheet.problem.Attempt;
import ampersheet.problem.Workshop;
import ampersheet.quantity.Quantity;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Constant;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import ampersheet.template.ProblemTemplate.WordGiven;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The sheets of an archive. Their numbers are worked as they stand there: what this version of the program would refuse
 * to draw is no reason against a sheet that was printed. A template that this version cannot read any more is stood in
 * for by its own of the same name, if that asks what the sheet asks.
 */
public final class ArchivedSheets implements ClassSheets {
    private static final double SAME = 1e-9;
    /** Ranges of a template that stands in may have been narrowed since; further than this they were not. */
    private static final double REACH = 10;

    private final ArchivedClass archive;
    private final TemplateLibrary present;
    private final List<Support> supports = new ArrayList<>();
    private final List<Boolean> examples = new ArrayList<>();
    private final Map<String, Template> templates = new TreeMap<>();

    /**
     * @param unreadable the first fault of the archive's own template, where another stands in for it or none is left
     */
    private record Template(
            Optional<ProblemTemplate> template, Optional<Workshop> workshop, Optional<Diagnostic> unreadable) {}

    /** @param present the templates of this version, to stand in */
    public ArchivedSheets(ArchivedClass archive, TemplateLibrary present) {
        this.archive = archive;
        this.present = present;
        for (Plan.Entry entry : archive.plan().entries()) {
            for (int i = 0; i < entry.count(); i++) {
                if (entry.example()) {
                    supports.add(new Support.Full());
                    examples.add(true);
                }
                supports.add(entry.support());
                examples.add(false);
            }
        }
        for (ArchivedSheet sheet : archive.sheets()) {
            sheet.problems().forEach(problem -> templates.computeIfAbsent(problem.template(), this::find));
        }
    }

    private Template find(String name) {
        Optional<Diagnostic> fault;
        try {
            if (archive.templates().has(name)) {
                ProblemTemplate template =
                        archive.templates().template(name, archive.plan().language());
                return new Template(Optional.of(template), Optional.of(new Workshop(template)), Optional.empty());
            }
            fault = Optional.of(Diagnostic.error(
                    Place.inFile(archive.file()), say("plan.archive.no-template", "template", name), "", ""));
        } catch (DiagnosticException unreadable) {
            fault = Optional.of(unreadable.diagnostics().get(0));
        }
        try {
            Optional<ProblemTemplate> other = present.has(name)
                    ? Optional.of(present.template(name, archive.plan().language()))
                    : Optional.empty();
            return new Template(other, other.map(Workshop::new), fault);
        } catch (DiagnosticException unreadable) {
            return new Template(Optional.empty(), Optional.empty(), fault);
        }
    }

    @Override
    public String code() {
        return archive.anyId().set();
    }

    @Override
    public Plan plan() {
        return archive.plan();
    }

    @Override
    public SheetId readId(String typed) {
        SheetId any = archive.anyId();
        SheetId id = new SheetIdReader(any.plan(), any.templates(), archive.file()).read(typed);
        requireKept(id.seat());
        return id;
    }

    @Override
    public List<ProblemTemplate> templates() {
        return templates.values().stream()
                .flatMap(kept -> kept.template().stream())
                .toList();
    }

    /** @throws DiagnosticException if the plan is not the one that the archive was written with */
    public void requirePlan(Plan other) {
        if (!ProblemSet.code(other).equals(ProblemSet.code(archive.plan()))) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(other.file()),
                    say("plan.archive.other-plan", "file", archive.file()),
                    say("plan.archive.other-plan.expected"),
                    say("plan.archive.other-plan.next")));
        }
    }

    private ArchivedSheet requireKept(int seat) {
        return archive.sheet(seat)
                .orElseThrow(() -> new DiagnosticException(Diagnostic.error(
                        Place.inFile(archive.file()),
                        say("plan.archive.no-seat", "seat", Integer.toString(seat)),
                        say("plan.archive.no-seat.expected"),
                        say("plan.archive.no-seat.next"))));
    }

    @Override
    public boolean has(int seat) {
        return archive.sheet(seat).isPresent();
    }

    @Override
    public IssuedSheet issued(int seat) {
        ArchivedSheet kept = requireKept(seat);
        List<SheetProblem> problems = new ArrayList<>();
        List<Integer> places = new ArrayList<>();
        List<LostProblem> lost = new ArrayList<>();
        List<Diagnostic> remarks = new ArrayList<>();
        for (ArchivedProblem problem : kept.problems()) {
            Optional<String> why = work(problem, kept.id(), problems, remarks);
            if (why.isEmpty()) {
                places.add(problem.place());
            } else {
                List<String> questions = problem.place() < examples.size() && examples.get(problem.place())
                        ? List.of()
                        : problem.answers().stream()
                                .map(ArchivedProblem.Answer::question)
                                .toList();
                lost.add(new LostProblem(problem.number(), problem.template(), questions, why.get()));
                remarks.add(Diagnostic.error(
                        Place.inFile(say("plan.sheet", "sheet", kept.id().toString())),
                        say(
                                "plan.archive.no-key",
                                "problem",
                                Integer.toString(problem.number()),
                                "template",
                                problem.template(),
                                "why",
                                why.get()),
                        "",
                        say("plan.archive.no-key.next")));
            }
        }
        return new IssuedSheet(new Sheet(kept.id(), archive.plan(), problems, archive.parts()), places, lost, remarks);
    }

    /** @return why it cannot be worked; empty if it was added to {@code problems} */
    private Optional<String> work(
            ArchivedProblem kept, SheetId id, List<SheetProblem> problems, List<Diagnostic> remarks) {
        Template of = templates.get(kept.template());
        if (kept.place() >= supports.size()) {
            return Optional.of(say("plan.archive.no-place"));
        }
        if (of.workshop().isEmpty()) {
            return Optional.of(say(
                    "plan.archive.unreadable",
                    "why",
                    of.unreadable().orElseThrow().problem()));
        }
        ProblemTemplate template = of.template().orElseThrow();
        Optional<Values> givens = givens(kept, template);
        if (givens.isEmpty()) {
            return Optional.of(say("plan.archive.other-givens"));
        }
        Attempt attempt = of.workshop().get().workChosen(givens.get());
        if (attempt instanceof Attempt.Refused refused) {
            return Optional.of(say("plan.archive.refused", "why", refused.detail()));
        }
        Attempt.Worked worked = (Attempt.Worked) attempt;
        SheetProblem problem = new SheetProblem(
                kept.number(),
                supports.get(kept.place()),
                examples.get(kept.place()),
                archive.plan(),
                worked.problem());
        if (of.unreadable().isPresent()) {
            if (!asked(problem)
                    .equals(kept.answers().stream().map(ArchivedSheets::asked).toList())) {
                return Optional.of(say(
                        "plan.archive.other-questions",
                        "why",
                        of.unreadable().get().problem()));
            }
            remarks.add(Diagnostic.warning(
                    of.unreadable().get().place(),
                    say(
                            "plan.archive.stands-in",
                            "template",
                            kept.template(),
                            "why",
                            of.unreadable().get().problem()),
                    "",
                    say("plan.archive.stands-in.next")));
        } else {
            changedByProgram(kept, problem, id, remarks);
        }
        problems.add(problem);
        return Optional.empty();
    }

    /**
     * The same template and the same numbers must give the key that was printed, unless the program itself was wrong.
     */
    private static void changedByProgram(
            ArchivedProblem kept, SheetProblem problem, SheetId id, List<Diagnostic> remarks) {
        Map<String, ArchivedProblem.Answer> before = new TreeMap<>();
        kept.answers().forEach(answer -> before.put(answer.question(), answer));
        problem.key().answers().forEach(key -> {
            ArchivedProblem.Answer printed = before.get(key.question());
            if (printed != null
                    && printed.step().equals(key.step())
                    && Math.abs(printed.value() - key.expected()) > SAME * Math.abs(printed.value())) {
                remarks.add(Diagnostic.warning(
                        Place.inFile(say("plan.sheet", "sheet", id.toString())),
                        say(
                                "plan.archive.other-key",
                                "question",
                                key.question(),
                                "printed",
                                printed.written(),
                                "now",
                                Composer.answer(problem, key)),
                        "",
                        say("plan.archive.other-key.next")));
            }
        });
    }

    private static List<String> asked(SheetProblem problem) {
        return problem.key().answers().stream()
                .map(key -> key.question() + " " + key.step())
                .toList();
    }

    private static String asked(ArchivedProblem.Answer answer) {
        return answer.question() + " " + answer.step();
    }

    /** A number far out of what is drawn was not drawn: with it, a chain could be built until memory ends. */
    private static boolean isOf(QuantityGiven given, ArchivedProblem.Number number) {
        double largest = given.values().stream().mapToDouble(Math::abs).max().orElse(0);
        return !number.isWord()
                && number.quantity().dimension().equals(given.unit().dimension())
                && Math.abs(number.quantity().value()) <= REACH * largest;
    }

    /** The sheet's own numbers; empty if the template needs one that the archive does not have. */
    private static Optional<Values> givens(ArchivedProblem kept, ProblemTemplate template) {
        Map<String, ArchivedProblem.Number> known = new TreeMap<>();
        kept.numbers().forEach(number -> known.put(number.name(), number));
        Map<String, Quantity> quantities = new LinkedHashMap<>();
        Map<String, String> words = new LinkedHashMap<>();
        for (Given given : template.givens()) {
            ArchivedProblem.Number number = known.get(given.name());
            if (number == null) {
                return Optional.empty();
            } else if (given instanceof QuantityGiven quantity && isOf(quantity, number)) {
                quantities.put(given.name(), number.quantity());
            } else if (given instanceof WordGiven word
                    && number.isWord()
                    && word.values().contains(number.written())) {
                words.put(given.name(), number.written());
            } else {
                return Optional.empty();
            }
        }
        for (Constant constant : template.constants()) {
            ArchivedProblem.Number number = known.get(constant.name());
            boolean fits = number != null
                    && !number.isWord()
                    && number.quantity().dimension().equals(constant.unit().dimension());
            quantities.put(
                    constant.name(),
                    fits
                            ? number.quantity()
                            : new Quantity(constant.si(), constant.unit().dimension()));
        }
        return Optional.of(Values.of(quantities, words));
    }
}
