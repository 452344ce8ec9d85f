package ampersheet.desk;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.issue.CourseFolder;
import ampersheet.issue.CourseStart;
import ampersheet.marking.ReceivedList;
import ampersheet.sheet.Logo;
import ampersheet.sheet.MarkingPolicy;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.PlanText;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Support;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Changes of the set: each is a change of the plan's text, which is written only if it reads as a plan. */
final class SetEdits {
    private static final String BEGUN = "title: " + say("desk.set.untitled") + "\n";

    private final CourseSet set;
    private final SetPlace place;
    private final Frame frame;

    SetEdits(CourseSet set, SetPlace place, Frame frame) {
        this.set = set;
        this.place = place;
        this.frame = frame;
    }

    /** A change of the text, from the plan as it was read. */
    private interface Change {
        PlanText.Edited of(PlanText text, List<Plan.Entry> entries);
    }

    /** A course to begin with; what is there stays. */
    Reply start() {
        CourseStart.Started started = CourseStart.in(set.course().files().folder());
        return frame.goOn("/set", List.of(say("desk.set.started", "files", String.join(", ", started.written()))));
    }

    Reply undo() {
        return frame.undone(set.course().undo(CourseFolder.PLAN), "/set", CourseFolder.PLAN);
    }

    /** More problems, whatever else has changed meanwhile: they only come behind the others. */
    Reply add(Call call) {
        List<String> chosen = call.form().all("lesson").stream()
                .filter(name -> set.lessons().lesson(name).isPresent())
                .toList();
        String skill = call.form().text("by-skill");
        boolean pool = call.form().text("as").equals("pool") && chosen.size() > 1;
        List<Plan.Source> sources = new ArrayList<>();
        if (pool) {
            sources.add(new Plan.Source.Pool(chosen.stream().map(SetEdits::one).toList()));
        } else {
            chosen.forEach(name -> sources.add(one(name)));
        }
        if (!skill.isEmpty()) {
            sources.add(new Plan.Source.Skill(skill, Place.inFile(CourseFolder.PLAN)));
        }
        if (sources.isEmpty()) {
            return frame.goOn("/lessons", List.of(say("desk.set.nothing")));
        }
        return add(call, sources, pool, chosen.size());
    }

    private Reply add(Call call, List<Plan.Source> sources, boolean pool, int chosen) {
        Course.Kept now = set.course().read(CourseFolder.PLAN);
        String text = now.text().isBlank() ? BEGUN : now.text();
        List<String> told = new ArrayList<>(List.of(
                pool
                        ? say("desk.set.added.turns", "lessons", Integer.toString(chosen))
                        : count("desk.set.added", sources.size())));
        try {
            for (Plan.Source source : sources) {
                PlanText.Edited edited = PlanText.of(CourseFolder.PLAN, text)
                        .added(
                                PlanText.written(new Plan.Entry(
                                        source,
                                        1,
                                        new Support.Bare(),
                                        false,
                                        List.of(),
                                        Place.inFile(CourseFolder.PLAN))),
                                entries(text));
                text = edited.text();
                told.addAll(edited.told());
            }
            check(text);
            set.course().write(CourseFolder.PLAN, text, now.version());
            return frame.goOn(afterAdding(call), told);
        } catch (DiagnosticException unfit) {
            return place.show(call, Reply.NOT_FITTING, Optional.empty(), unfit.diagnostics());
        } catch (Course.Stale meanwhile) {
            return add(call, sources, pool, chosen); // only behind what is there now
        }
    }

    /** Whoever looks at a single lesson goes on looking there. */
    private static String afterAdding(Call call) {
        return call.form().number("numbers").stream()
                .mapToObj(numbers -> LessonsPlace.address(call.form().text("lesson"), numbers))
                .findFirst()
                .orElse("/set");
    }

    private static Plan.Source.One one(String name) {
        return new Plan.Source.One(name, Place.inFile(CourseFolder.PLAN));
    }

    /** Those of a plan that may have none yet. */
    private static List<Plan.Entry> entries(String text) {
        try {
            return PlanReader.read(CourseFolder.PLAN, text).entries();
        } catch (DiagnosticException noPlanYet) {
            return List.of();
        }
    }

    Reply move(Call call) {
        return change(
                call,
                (text, entries) ->
                        text.moved(within(call, "at", entries.size()), within(call, "to", entries.size()), entries),
                List.of());
    }

    Reply remove(Call call) {
        return change(
                call,
                (text, entries) -> text.without(within(call, "at", entries.size()), entries),
                List.of(say("desk.set.removed")));
    }

    private static int within(Call call, String field, int size) {
        int number = call.form().number(field).orElse(-1);
        if (number < 0 || number >= size) {
            throw unfit(say("desk.set.number", "number", call.form().text(field)), say("desk.set.number.next"));
        }
        return number;
    }

    private static DiagnosticException unfit(String problem, String next) {
        return new DiagnosticException(Diagnostic.error(Place.inFile(CourseFolder.PLAN), problem, "", next));
    }

    Reply entry(Call call) {
        return change(
                call,
                (text, entries) -> {
                    int at = within(call, "at", entries.size());
                    return text.replaced(at, PlanText.written(entry(call.form(), entries.get(at))), entries);
                },
                List.of(say("desk.kept")));
    }

    private static Plan.Entry entry(Form form, Plan.Entry before) {
        Plan.Source source = before.source();
        if (source instanceof Plan.Source.Pool pool && form.has("pool")) {
            List<String> kept = form.all("member");
            source = new Plan.Source.Pool(pool.templates().stream()
                    .filter(one -> kept.contains(one.template()))
                    .toList());
            if (kept.isEmpty()) {
                throw unfit(say("desk.set.empty"), say("desk.set.empty.next"));
            }
        }
        Support support = switch (form.text("support")) {
            case "full" -> new Support.Full();
            case "faded" -> new Support.Faded(fade(form));
            default -> new Support.Bare();
        };
        List<Plan.Fixed> fixed = new ArrayList<>();
        for (String line : form.lines("given").split("\n")) {
            int equals = line.indexOf('=') < 0 ? line.indexOf(':') : line.indexOf('=');
            if (!line.isBlank() && equals < 1) {
                throw unfit(say("desk.set.given", "line", line.strip()), say("desk.set.given.next"));
            }
            if (!line.isBlank()) {
                fixed.add(new Plan.Fixed(
                        line.substring(0, equals).strip(),
                        line.substring(equals + 1).strip(),
                        before.place()));
            }
        }
        return new Plan.Entry(
                source,
                form.number("count", 1, 60, 1),
                support,
                form.has("example") && !(support instanceof Support.Full),
                fixed,
                before.place());
    }

    private static Support.Fade fade(Form form) {
        int blank = form.number("blank", 1, 50, 1);
        return switch (form.text("fade")) {
            case "backward" -> new Support.Fade.Backward(blank);
            case "principle" -> new Support.Fade.Principle(form.text("principle"));
            default -> new Support.Fade.Forward(blank);
        };
    }

    Reply heading(Call call) {
        Plan before = set.plan();
        String due = call.form().text("due");
        boolean isOnlyPrinted = !due.isEmpty()
                && !due.equals(before.heading().due())
                && ReceivedList.time(due).isEmpty();
        return keys(
                call,
                SetPlace.heading(before),
                isOnlyPrinted ? say("desk.set.due.printed", "due", due) : say("desk.kept"));
    }

    /** Changes those keys whose value is another one now; what nobody changed stays as it was written. */
    private Reply keys(Call call, Map<String, Object> before, String told) {
        Course.Kept now = set.course().read(CourseFolder.PLAN);
        String text = now.text();
        List<String> all = new ArrayList<>();
        try {
            for (Map.Entry<String, Object> key : before.entrySet()) {
                String value = call.form().text(key.getKey());
                if (call.form().fields().containsKey(key.getKey()) && !value.equals(key.getValue())) {
                    PlanText.Edited edited =
                            PlanText.of(CourseFolder.PLAN, text).with(key.getKey(), value);
                    text = edited.text();
                    all.addAll(edited.told());
                }
            }
            check(text);
        } catch (DiagnosticException unfit) {
            return place.show(call, Reply.NOT_FITTING, Optional.empty(), unfit.diagnostics());
        }
        all.add(told);
        return keep(call, text, call.form().text("seen"), all);
    }

    /** A picture over every sheet, kept beside the plan under a name that nothing else has. */
    Reply logo(Call call) {
        if (call.uploads().isEmpty()) {
            return frame.goOn("/set", List.of(say("desk.file.unchosen")));
        }
        byte[] bytes = call.uploads().get(0).bytes();
        String seen = call.form().text("seen");
        try {
            Logo.read(say("desk.logo.sent"), Place.inFile(say("desk.logo.picture")), bytes);
            if (!set.course().read(CourseFolder.PLAN).version().equals(seen)) {
                throw new Course.Stale(CourseFolder.PLAN, set.course().read(CourseFolder.PLAN));
            }
            String name = set.course().keptBeside("logo", Logo.ending(bytes).orElseThrow(), bytes);
            return change(
                    call, (text, entries) -> text.with("logo", name), List.of(say("desk.logo.kept", "name", name)));
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, "set", say("desk.logo.unfit"), unfit);
        } catch (Course.Stale stale) {
            return frame.stale(call, "set", stale, "");
        }
    }

    /** The file stays where it is. */
    Reply noLogo(Call call) {
        return change(call, (text, entries) -> text.with("logo", ""), List.of(say("desk.logo.removed")));
    }

    Reply policy(Call call) {
        return change(
                call,
                (text, entries) -> {
                    MarkingPolicy now = set.plan().marking();
                    if (!now.tolerances().isEmpty()
                            || !now.grades().isEmpty()
                            || now.rounds() != MarkingPolicy.Rounds.LAST) {
                        throw unfit(say("desk.set.policy"), say("desk.set.policy.next"));
                    }
                    List<String> lines = new ArrayList<>();
                    SetPlace.policy(MarkingPolicy.USUAL).forEach((field, usual) -> {
                        String value = call.form().text(field).replace(',', '.');
                        if (!value.isEmpty() && !value.equals(usual)) {
                            lines.add(field.replace('_', '-') + ": " + value);
                        }
                    });
                    if (!now.weights().isEmpty()) {
                        lines.add("weights:");
                        now.weights()
                                .forEach((question, weight) ->
                                        lines.add("  " + question + ": " + MarkingPolicy.decimal(weight.value())));
                    }
                    return text.withGroup("marking", lines);
                },
                List.of(say("desk.kept")));
    }

    Reply text(Call call) {
        String typed = call.form().lines("text");
        try {
            check(typed);
        } catch (DiagnosticException unfit) {
            return place.show(call, Reply.NOT_FITTING, Optional.of(typed), unfit.diagnostics());
        }
        return keep(call, typed, call.form().text("seen"), List.of(say("desk.set.kept")));
    }

    private Reply change(Call call, Change change, List<String> told) {
        Course.Kept now = set.course().read(CourseFolder.PLAN);
        String seen = call.form().text("seen");
        PlanText.Edited edited;
        try {
            if (!now.version().equals(seen)) {
                throw new Course.Stale(CourseFolder.PLAN, now);
            }
            edited = change.of(PlanText.of(CourseFolder.PLAN, now.text()), entries(now.text()));
            if (!entries(edited.text()).isEmpty()) {
                check(edited.text());
            }
        } catch (DiagnosticException unfit) {
            return place.show(call, Reply.NOT_FITTING, Optional.empty(), unfit.diagnostics());
        } catch (Course.Stale stale) {
            return frame.stale(call, "set", stale, "");
        }
        List<String> all = new ArrayList<>(told);
        all.addAll(edited.told());
        return keep(call, edited.text(), seen, all);
    }

    private Reply keep(Call call, String text, String seen, List<String> told) {
        try {
            set.course().write(CourseFolder.PLAN, text, seen);
            return frame.goOn("/set", told);
        } catch (Course.Stale stale) {
            return frame.stale(call, "set", stale, text);
        }
    }

    /** @throws DiagnosticException if this is no plan, or its templates do not fit it */
    private void check(String text) {
        ProblemSet.of(set.plan(text), set.library());
    }
}
