package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.figure.SymbolStyle;
import ampersheet.issue.CourseFolder;
import ampersheet.quantity.DecimalMarker;
import ampersheet.sheet.Document;
import ampersheet.sheet.LessonList;
import ampersheet.sheet.LessonList.Lesson;
import ampersheet.sheet.MarkingPolicy;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Support;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/** What stands on everybody's sheet: shown as forms, as text, and as the sheet of any seat. */
final class SetPlace {
    private final CourseSet set;
    private final Frame frame;
    private final SeatSheet seats;
    private final PaperRange range = new PaperRange();

    SetPlace(CourseSet set, Frame frame) {
        this.set = set;
        this.frame = frame;
        this.seats = new SeatSheet(set, frame);
    }

    Reply show(Call call) {
        return show(call, Reply.FINE, Optional.empty(), List.of());
    }

    /**
     * The place with a text that is not kept yet.
     *
     * @param typed the text; empty for that of the file
     * @param more faults besides those of the text
     */
    Reply show(Call call, int status, Optional<String> typed, List<Diagnostic> more) {
        Course.Kept kept = set.course().read(CourseFolder.PLAN);
        List<Diagnostic> faults = new ArrayList<>(more);
        Optional<Plan> plan = Optional.empty();
        List<Diagnostic> unfit = List.of();
        if (kept.isThere()) {
            try {
                plan = Optional.of(set.plan());
                ProblemSet.of(plan.get(), set.library());
                set.parts(plan.get());
            } catch (DiagnosticException broken) {
                unfit = broken.diagnostics();
            }
        }
        if (typed.isEmpty()) {
            faults.addAll(unfit);
        }
        Map<String, Object> values = Pages.values(
                "isThere", kept.isThere(),
                "version", kept.version(),
                "text", typed.orElse(kept.text()),
                "isTyped", typed.isPresent(),
                "marked", FaultyText.of(CourseFolder.PLAN, typed.orElse(kept.text()), faults),
                "canUndo", set.course().canUndo(CourseFolder.PLAN),
                "keeping", PartsPlace.keeping(set),
                "hasClass", set.course().isThere(CourseFolder.CLASS),
                "seat", call.query().number("seat", 1, SeatSheet.LAST_SEAT, seats.firstSeat()),
                "side", SeatSheet.isKey(call) ? "key" : "sheet",
                "skills", skills());
        values.put("isRead", plan.isPresent());
        values.put(
                "titleDraws",
                plan.filter(read -> !(read.seeding() instanceof Plan.Seeding.Named))
                        .isPresent());
        values.put(
                "logo",
                plan.flatMap(read -> read.heading().logo())
                        .map(logo -> Pages.values(
                                "file", logo.file(),
                                "address", logo.address()))
                        .orElse(Pages.values("file", "")));
        values.put("isFitting", plan.isPresent() && unfit.isEmpty());
        plan.ifPresent(read -> {
            values.put("entries", entries(read));
            values.put("heading", heading(read));
            values.put(
                    "languages",
                    Languages.codes().stream()
                            .map(code -> Map.of(
                                    "code",
                                    code,
                                    "name",
                                    Languages.of(code).orElseThrow().say("common.language")))
                            .toList());
            values.put("policy", policy(read.marking()));
        });
        return frame.page(status, call, "set", "set", values);
    }

    private List<String> skills() {
        TreeSet<String> skills = new TreeSet<>();
        set.lessons().lessons().forEach(lesson -> skills.add(lesson.skill()));
        return List.copyOf(skills);
    }

    private List<Map<String, Object>> entries(Plan plan) {
        LessonList lessons = set.lessons();
        List<Map<String, Object>> entries = new ArrayList<>();
        int before = 0;
        for (int i = 0; i < plan.entries().size(); i++) {
            Plan.Entry entry = plan.entries().get(i);
            int first = before + 1;
            before += entry.count() * (entry.example() ? 2 : 1);
            List<String> names = names(entry.source(), lessons);
            List<Map<String, Object>> members = names.stream()
                    .map(name -> lessons.lesson(name)
                            .map(LessonsPlace::shown)
                            .orElseGet(
                                    () -> Pages.values("name", name, "title", say("desk.set.unknown", "name", name))))
                    .toList();
            Map<String, Object> shown = Pages.values(
                    "at",
                    i,
                    "number",
                    plan.order() == Plan.Order.MIXED ? "" : before > first ? first + "–" + before : "" + first,
                    "isFirst",
                    i == 0,
                    "isLast",
                    i == plan.entries().size() - 1,
                    "skill",
                    entry.source() instanceof Plan.Source.Skill skill ? skill.skill() : "",
                    "isPool",
                    entry.source() instanceof Plan.Source.Pool,
                    "members",
                    members,
                    "count",
                    entry.count(),
                    "example",
                    entry.example(),
                    "given",
                    String.join(
                            "\n",
                            entry.fixed().stream()
                                    .map(fixed -> fixed.name() + " = " + fixed.value())
                                    .toList()));
            shown.putAll(support(entry.support()));
            entries.add(shown);
        }
        return entries;
    }

    /** Of the templates that one place of the plan may show. */
    static List<String> names(Plan.Source source, LessonList lessons) {
        if (source instanceof Plan.Source.One one) {
            return List.of(one.template());
        } else if (source instanceof Plan.Source.Pool pool) {
            return pool.templates().stream().map(Plan.Source.One::template).toList();
        }
        String skill = ((Plan.Source.Skill) source).skill();
        return lessons.lessons().stream()
                .filter(lesson -> lesson.skill().equals(skill))
                .map(Lesson::name)
                .toList();
    }

    private static Map<String, Object> support(Support support) {
        String fade = "forward";
        int blank = 1;
        String principle = "";
        if (support instanceof Support.Faded faded) {
            if (faded.fade() instanceof Support.Fade.Backward backward) {
                fade = "backward";
                blank = backward.blank();
            } else if (faded.fade() instanceof Support.Fade.Forward forward) {
                blank = forward.blank();
            } else if (faded.fade() instanceof Support.Fade.Principle of) {
                fade = "principle";
                principle = of.name();
            }
        }
        return Pages.values(
                "support",
                        support instanceof Support.Full ? "full" : support instanceof Support.Faded ? "faded" : "bare",
                "fade", fade,
                "blank", blank,
                "principle", principle);
    }

    /** Keys of a plan with the values that its forms show. */
    static Map<String, Object> heading(Plan plan) {
        Map<String, Object> values = new LinkedHashMap<>();
        values.put("title", plan.title());
        values.put("school", plan.heading().school());
        values.put("course", plan.heading().course());
        values.put("date", plan.heading().date());
        values.put("due", plan.heading().due());
        values.put("instructions", plan.heading().instructions());
        values.put("paper", plan.paper() == Document.Paper.LETTER ? "letter" : "a4");
        values.put("language", plan.language().code());
        values.put("decimal", plan.decimal() == DecimalMarker.COMMA ? "comma" : "point");
        values.put("symbols", plan.symbols() == SymbolStyle.IEEE ? "ieee" : "iec");
        values.put("units", plan.unitsPrinted() ? "printed" : "asked");
        values.put("order", plan.order() == Plan.Order.MIXED ? "mixed" : "as listed");
        return values;
    }

    static Map<String, Object> policy(MarkingPolicy policy) {
        return Pages.values(
                "unit_missing", MarkingPolicy.decimal(policy.credits().unitMissing()),
                "rounded_too_far", MarkingPolicy.decimal(policy.credits().tooCoarse()),
                "carried", MarkingPolicy.decimal(policy.credits().carried()),
                "late_a_day", MarkingPolicy.decimal(policy.lateness().aDay()),
                "grace_minutes", Integer.toString(policy.lateness().graceMinutes()));
    }

    /** The sheet of a seat, or its key. */
    Reply sheet(Call call) {
        return seats.show(
                call,
                new SeatSheet.Around("set", "/set/sheet?seat=", "/set/print?seat=", "/set/paper", "/set"),
                set::maker);
    }

    /** The sheet of a seat as it comes out of the printer. */
    Reply print(Call call) {
        return seats.print(call, "set", set::maker);
    }

    /** How much paper a learner's sheet takes; for the script of the page, of a few sheets more each time it asks. */
    Reply paper(Call call) {
        PaperRange.Known known;
        try {
            known = range.more(set.maker(), set.roster(), !call.part());
        } catch (DiagnosticException unfit) {
            known = new PaperRange.Known(say("desk.sheet.unknown"), true);
        }
        return call.part()
                ? frame.part("paper-part", Pages.values("words", known.words(), "isAll", known.isAll()))
                : Reply.plain(Reply.FINE, known.words());
    }
}
