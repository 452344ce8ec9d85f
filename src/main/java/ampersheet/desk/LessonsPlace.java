package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.problem.Draws;
import ampersheet.problem.Problem;
import ampersheet.problem.Workshop;
import ampersheet.quantity.DecimalMarker;
import ampersheet.render.html.Fragment;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.LessonList;
import ampersheet.sheet.LessonList.Lesson;
import ampersheet.sheet.Minutes;
import ampersheet.sheet.SheetProblem;
import ampersheet.sheet.Support;
import ampersheet.source.Languages;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateLibrary;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Every problem there is, found and looked at before it is chosen. */
final class LessonsPlace {
    /** Of numbers that a lesson is shown with. */
    private static final int MOST_NUMBERS = 40;

    private static final int HIGHEST_LEVEL = 4;
    private static final String SEED = "shown at the desk";

    private final CourseSet set;
    private final Frame frame;

    LessonsPlace(CourseSet set, Frame frame) {
        this.set = set;
        this.frame = frame;
    }

    Reply list(Call call) {
        LessonList all = set.lessons();
        Form asked = call.query();
        Set<String> inSet = set.lessonsInSet();
        // Whoever looks for more lessons keeps what she has ticked.
        Set<String> ticked = new TreeSet<>(asked.all("lesson"));
        List<Lesson> kept = all.lessons().stream()
                .filter(lesson -> ticked.contains(lesson.name()))
                .toList();
        List<Lesson> fitting =
                all.lessons().stream().filter(lesson -> fits(lesson, asked)).toList();
        List<Map<String, Object>> found = Stream.concat(
                        kept.stream(), fitting.stream().filter(lesson -> !kept.contains(lesson)))
                .map(LessonsPlace::shown)
                .toList();
        found.forEach(one -> one.put("inSet", inSet.contains(one.get("name"))));
        found.forEach(one -> one.put("ticked", ticked.contains(one.get("name"))));
        return frame.page(
                Reply.FINE,
                call,
                "lessons",
                "lessons",
                Pages.values(
                        "found", found,
                        "fitting", fitting.size(),
                        "ticked", kept.size(),
                        "all", all.lessons().size(),
                        "words", asked.text("words"),
                        "topic", asked.text("topic"),
                        "level", asked.text("level"),
                        "skill", asked.text("skill"),
                        "rule", asked.text("rule"),
                        "topics", choices(all, Lesson::topic),
                        "levels", choices(all, lesson -> Integer.toString(lesson.level())),
                        "skills", choices(all, Lesson::skill),
                        "rules", rules(all),
                        "faulty",
                                all.faults().entrySet().stream()
                                        .map(one -> Pages.values(
                                                "name", one.getKey(), "faults", Frame.told(one.getValue())))
                                        .toList()));
    }

    private static boolean fits(Lesson lesson, Form asked) {
        return is(asked, "topic", lesson.topic())
                && is(asked, "level", Integer.toString(lesson.level()))
                && is(asked, "skill", lesson.skill())
                && (!asked.has("rule") || lesson.teaches().contains(asked.text("rule")))
                && (!asked.has("words") || lesson.speaksOf(asked.text("words")));
    }

    private static boolean is(Form asked, String field, String value) {
        return !asked.has(field) || asked.text(field).equals(value);
    }

    private static List<String> choices(LessonList all, Function<Lesson, String> of) {
        return List.copyOf(all.lessons().stream().map(of).collect(Collectors.toCollection(TreeSet::new)));
    }

    private static List<String> rules(LessonList all) {
        TreeSet<String> rules = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
        all.lessons().forEach(lesson -> rules.addAll(lesson.teaches()));
        return List.copyOf(rules);
    }

    static Map<String, Object> shown(Lesson lesson) {
        return Pages.values(
                "name", lesson.name(),
                "title", lesson.title(),
                "topic", lesson.topic(),
                "level", lesson.level(),
                "skill", lesson.skill(),
                "minutes", lesson.minutes(),
                "teaches", lesson.teaches(),
                "asked", lesson.asked(),
                "own", lesson.own());
    }

    static String address(String name, int numbers) {
        return "/lesson?name=" + URLEncoder.encode(name, StandardCharsets.UTF_8) + "&numbers=" + numbers;
    }

    /** One problem with numbers, as a learner sees it, and what is known of it. */
    Reply lesson(Call call) {
        String name = call.query().text("name");
        TemplateLibrary library = set.library();
        if (!library.has(name)) {
            return Reply.unknown();
        }
        int numbers = call.query().number("numbers", 0, MOST_NUMBERS - 1, 0);
        try {
            ProblemTemplate template = library.template(name);
            Problem problem = new Draws(new Workshop(template), SEED).draw(numbers);
            SheetProblem alone = SheetProblem.alone(problem, DecimalMarker.POINT);
            SheetProblem open = new SheetProblem(1, new Support.Bare(), false, alone.plan(), problem);
            return frame.page(
                    Reply.FINE,
                    call,
                    "lessons",
                    "lesson",
                    Pages.values(
                            "name", name,
                            "title", template.title(),
                            "topic", template.family().replace('-', ' '),
                            "level", template.level(),
                            "highest", HIGHEST_LEVEL,
                            "skill", template.skill(),
                            "minutes", Minutes.bare(template),
                            "teaches", template.teaches(),
                            "inSet", set.lessonsInSet().contains(name),
                            "numbers", numbers,
                            "next", (numbers + 1) % MOST_NUMBERS,
                            "open", html(Composer.onItsOwn(open), "open-"),
                            "worked", html(Composer.alone(problem, DecimalMarker.POINT), "worked-"),
                            "mistakes", mistakes(template)));
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, "lessons", say("desk.lesson.unfit", "name", name), unfit);
        }
    }

    private static Object html(Document.ProblemBlock problem, String prefix) {
        return Pages.html(Fragment.printed(
                new Document(Document.Kind.SHEET, Languages.ENGLISH, "", "", "", Document.Paper.A4, problem.blocks()),
                prefix,
                2));
    }

    /** By what they are made with. */
    private static List<Map<String, Object>> mistakes(ProblemTemplate template) {
        Map<String, List<String>> says = new TreeMap<>();
        template.mistakes()
                .forEach(mistake -> says.computeIfAbsent(mistake.of(), of -> new ArrayList<>())
                        .add(mistake.says()));
        List<Map<String, Object>> shown = new ArrayList<>();
        template.lines().forEach(line -> {
            if (says.containsKey(line.id())) {
                shown.add(Pages.values("of", line.meaning(), "says", says.get(line.id())));
            }
        });
        return shown;
    }
}
