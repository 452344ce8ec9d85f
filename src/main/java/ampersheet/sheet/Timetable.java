package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.sheet.CoursePlan.Topic;
import ampersheet.sheet.CoursePlan.Week;
import ampersheet.sheet.Meetings.Meeting;
import ampersheet.sheet.Plan.Entry;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * The weeks of a course, each an ordinary plan.
 *
 * <p>Nobody meets the same numbers twice, by construction: all weeks have one seed, so that each template has one order
 * of its variants. The sheets of a week take from it as many places in a row as all its seats need, and those of the
 * next week the places behind; behind those of the last week come the retakes, in the order of their weeks. Practice
 * pages and bench cards draw from the last quarter of the order, which no sheet reaches, each week in a lane of its
 * own.
 *
 * <p>Where a week begins follows from all weeks as they are written: from those before it, and from what a later one
 * needs or has room for, since the gaps are chosen for all at once. So what lies out already is told to the weeks
 * ({@link IssuedParts}), for a course that changes while it goes on: it stays, and the others keep clear of it.
 */
public final class Timetable {
    private final CoursePlan course;
    private final TemplateLibrary library;
    private final Meetings meetings;
    private final List<List<ProblemTemplate>> pools;
    private final List<IssuedParts.Apart> weeks = new ArrayList<>();
    private IssuedParts known;
    private final Map<String, Integer> taken = new TreeMap<>();

    /** The weeks of a course of which nothing lies out. */
    public Timetable(CoursePlan course, TemplateLibrary library) {
        this(course, library, IssuedParts.NONE);
    }

    /**
     * @param issued what lies out of it already
     * @throws DiagnosticException with all faults at once: what the library does not have, what enters before what it
     *     builds on, fixed givens by which two weeks could show the same numbers
     */
    public Timetable(CoursePlan course, TemplateLibrary library, IssuedParts issued) {
        this.course = course;
        this.known = issued;
        this.library = library;
        this.meetings = new Meetings(course);
        this.pools = pools();
        requireBases();
        for (int week = 1; week <= course.weeks().size(); week++) {
            Plan written = plan(week, false, Map.of());
            IssuedParts.Apart apart = known.apart(written, library);
            weeks.add(apart);
            known = known.and(List.of(IssuedPart.of(apart.set())));
            Retake.add(apart.set(), course.seats(), taken);
        }
    }

    /** The templates of each topic, once it is known that all weeks together are a plan. */
    private List<List<ProblemTemplate>> pools() {
        List<Entry> entries = meetings.topics().stream().map(Topic::entry).toList();
        ProblemSet all = ProblemSet.of(course.common().holding(entries), library);
        List<ProblemSet.Wanted> wanted = all.wanted();
        List<List<ProblemTemplate>> found = new ArrayList<>();
        int at = 0;
        for (Entry entry : entries) {
            found.add(wanted.get(at).sources().stream().map(all.sources()::get).toList());
            at += entry.count();
        }
        return found;
    }

    public int size() {
        return weeks.size();
    }

    public CoursePlan course() {
        return course;
    }

    public TemplateLibrary library() {
        return library;
    }

    /** @throws IllegalArgumentException if there is no such week */
    public Plan week(int number) {
        requireWeek(number);
        return weeks.get(number - 1).set().plan();
    }

    /**
     * Whether a week begins elsewhere than the course as it is written would have it begin, behind what lies out.
     *
     * @throws IllegalArgumentException if there is no such week
     */
    public boolean isMoved(int number) {
        requireWeek(number);
        return weeks.get(number - 1).moved();
    }

    /**
     * A plan of what learners missed in a week, with a worked example before each problem, and numbers that nobody has
     * seen.
     *
     * @param missed skills, for each seat that needs it
     * @throws IllegalArgumentException if there is no such week
     * @throws DiagnosticException if nobody needs one
     */
    public Plan retake(int number, Map<Integer, Set<String>> missed) {
        return retake(number, List.of(), missed);
    }

    /**
     * The same for who takes it once more, behind all that any week has for the round before.
     *
     * @param rounds in which the week was taken again already, the first time first
     */
    public Plan retake(int number, List<IssuedPart> rounds, Map<Integer, Set<String>> missed) {
        requireWeek(number);
        int round = rounds.size() + 1;
        Map<String, Integer> before = new TreeMap<>(taken);
        for (int earlier = 1; earlier <= round; earlier++) {
            int last = earlier < round ? size() : number - 1;
            for (int week = 1; week <= last; week++) {
                Plan again = Retake.all(plan(week, true, before), earlier);
                Retake.add(ProblemSet.of(again, library), course.seats(), before);
            }
        }
        Plan again = Retake.again(plan(number, true, before), round, missed, library);
        return known.and(rounds).apart(again, library).set().plan();
    }

    private void requireWeek(int number) {
        if (number < 1 || number > weeks.size()) {
            throw new IllegalArgumentException("week " + number + " of " + weeks.size());
        }
    }

    private static String title(Plan common, Week week, int number) {
        return week.title().isEmpty()
                ? common.language()
                        .say("sheet.plan.numbered-week", "title", common.title(), "number", Integer.toString(number))
                : common.language().say("sheet.plan.week", "title", common.title(), "week", week.title());
    }

    private Plan plan(int number, boolean retake, Map<String, Integer> before) {
        Week week = course.weeks().get(number - 1);
        Plan common = course.common();
        Plan.Heading heading = common.heading();
        Portion portion = new Portion(
                number, course.weeks().size(), retake, course.seats(), retake ? before : taken, Map.of(), 0);
        return common.part(
                title(common, week, number),
                new Plan.Heading(
                        heading.school(),
                        heading.course(),
                        week.date().toString(),
                        retake ? "" : week.due(),
                        heading.instructions(),
                        heading.logo()),
                entries(number),
                portion,
                course.said());
    }

    private List<Entry> entries(int week) {
        List<Entry> entries = new ArrayList<>();
        for (Meeting meeting : inOrder(meetings.in(week))) {
            Entry topic = meetings.topics().get(meeting.topic()).entry();
            if (course.together()) {
                entries.addAll(together(meeting, topic, week));
                continue;
            }
            // What fills the week up needs no example more than what was asked for.
            int asWritten = meeting.first() ? topic.count() : 0;
            if (asWritten > 0) {
                entries.add(topic);
            }
            if (meeting.count() > asWritten) {
                entries.add(new Entry(
                        topic.source(),
                        meeting.count() - asWritten,
                        new Support.Bare(),
                        false,
                        topic.fixed(),
                        topic.place()));
            }
        }
        return entries;
    }

    /**
     * One template for each problem, the same for all seats: first the one of the lowest level, and on from where the
     * weeks before ended.
     */
    private List<Entry> together(Meeting meeting, Entry topic, int week) {
        List<ProblemTemplate> pool = new ArrayList<>(pools.get(meeting.topic()));
        pool.sort(Comparator.comparingInt(ProblemTemplate::level));
        int met = 0;
        for (int earlier = 1; earlier < week; earlier++) {
            met += meetings.in(earlier).stream()
                    .filter(one -> one.topic() == meeting.topic())
                    .mapToInt(Meeting::count)
                    .sum();
        }
        List<Entry> entries = new ArrayList<>();
        for (int problem = 0; problem < meeting.count(); problem++) {
            boolean asWritten = meeting.first() && problem < topic.count();
            entries.add(new Entry(
                    new Plan.Source.One(pool.get((met + problem) % pool.size()).name(), topic.place()),
                    1,
                    asWritten ? topic.support() : new Support.Bare(),
                    asWritten && topic.example(),
                    topic.fixed(),
                    topic.place()));
        }
        return entries;
    }

    /** What enters in one week comes after what it builds on. */
    private List<Meeting> inOrder(List<Meeting> listed) {
        List<Meeting> waiting = new ArrayList<>(listed);
        List<Meeting> ordered = new ArrayList<>();
        while (!waiting.isEmpty()) {
            Meeting next = waiting.stream()
                    .filter(one -> waiting.stream().noneMatch(other -> other != one && buildsOn(one, other)))
                    .findFirst()
                    .orElseThrow(() -> circle(waiting));
            waiting.remove(next);
            ordered.add(next);
        }
        return ordered;
    }

    private boolean buildsOn(Meeting one, Meeting other) {
        Set<String> skills = skills(other.topic());
        return pools.get(one.topic()).stream()
                .anyMatch(template -> template.premises().after().stream().anyMatch(skills::contains));
    }

    private DiagnosticException circle(List<Meeting> waiting) {
        Set<String> skills = new LinkedHashSet<>();
        waiting.forEach(meeting -> skills.addAll(skills(meeting.topic())));
        return new DiagnosticException(Diagnostic.error(
                meetings.topics().get(waiting.get(0).topic()).entry().place(),
                say("plan.course.circle", "skills", String.join("; ", skills)),
                say("plan.course.circle.expected"),
                say("plan.course.circle.next")));
    }

    /** The skills of a topic, in the order of its templates. */
    private Set<String> skills(int topic) {
        Set<String> skills = new LinkedHashSet<>();
        pools.get(topic).forEach(template -> skills.add(template.skill()));
        return skills;
    }

    private void requireBases() {
        Map<String, Integer> enters = entering();
        List<Diagnostic> faults = new ArrayList<>();
        for (int topic = 0; topic < pools.size(); topic++) {
            int week = meetings.enters(topic);
            for (ProblemTemplate template : pools.get(topic)) {
                for (String base : template.premises().after()) {
                    int later = enters.getOrDefault(base, 0);
                    if (later > week) {
                        faults.add(Diagnostic.error(
                                meetings.topics().get(topic).entry().place(),
                                say(
                                        "plan.course.base",
                                        "template",
                                        template.name(),
                                        "skill",
                                        base,
                                        "week",
                                        Integer.toString(later)),
                                say("plan.course.base.expected", "week", Integer.toString(week)),
                                say("plan.course.base.next", "week", Integer.toString(later), "skill", base)));
                    }
                }
            }
        }
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults);
        }
    }

    /** The week in which each skill enters. */
    private Map<String, Integer> entering() {
        Map<String, Integer> enters = new TreeMap<>();
        for (int topic = 0; topic < pools.size(); topic++) {
            int week = meetings.enters(topic);
            skills(topic).forEach(skill -> enters.merge(skill, week, Math::min));
        }
        return enters;
    }

    /** Skills that something builds on, and that the course does not have, with what builds on them. */
    public Map<String, Set<String>> missingBases() {
        Map<String, Integer> enters = entering();
        Map<String, Set<String>> missing = new TreeMap<>();
        pools.forEach(pool -> pool.forEach(template -> template.premises().after().stream()
                .filter(base -> !enters.containsKey(base))
                .forEach(base -> missing.computeIfAbsent(base, first -> new LinkedHashSet<>())
                        .add(template.skill()))));
        return missing;
    }

    /**
     * A skill in the weeks.
     *
     * @param weeks in which it is met, from 1
     * @param days on which they begin
     * @param templates that practise it in the course
     */
    public record SkillWeeks(String skill, List<Integer> weeks, List<LocalDate> days, int templates) {
        public SkillWeeks {
            weeks = List.copyOf(weeks);
            days = List.copyOf(days);
        }

        /** Weeks from each meeting to the next. */
        public List<Integer> gaps() {
            List<Integer> gaps = new ArrayList<>();
            for (int i = 1; i < weeks.size(); i++) {
                gaps.add(weeks.get(i) - weeks.get(i - 1));
            }
            return gaps;
        }
    }

    /** In the order in which they enter. */
    public List<SkillWeeks> skills() {
        Map<String, Set<String>> templates = new TreeMap<>();
        Map<String, Set<Integer>> met = new TreeMap<>();
        Set<String> order = new LinkedHashSet<>();
        for (int week = 1; week <= size(); week++) {
            for (Meeting meeting : meetings.in(week)) {
                for (ProblemTemplate template : pools.get(meeting.topic())) {
                    order.add(template.skill());
                    met.computeIfAbsent(template.skill(), first -> new LinkedHashSet<>())
                            .add(week);
                    templates
                            .computeIfAbsent(template.skill(), first -> new LinkedHashSet<>())
                            .add(template.name());
                }
            }
        }
        return order.stream()
                .map(skill -> new SkillWeeks(
                        skill,
                        List.copyOf(met.get(skill)),
                        met.get(skill).stream()
                                .map(week -> course.weeks().get(week - 1).date())
                                .toList(),
                        templates.get(skill).size()))
                .toList();
    }

    /** Archives that could not be read, so that weeks may show again what they hold. */
    public List<Path> unread() {
        return known.unread();
    }

    /** How many problems a sheet of a week has to work on. */
    public int problems(int week) {
        return meetings.in(week).stream().mapToInt(Meeting::count).sum();
    }

    /** How many variants of each source all weeks take. */
    public Map<String, Integer> taken() {
        return Map.copyOf(taken);
    }

    /** Whether a number is one of its weeks; empty if it is. */
    public Optional<Diagnostic> noSuchWeek(int number) {
        return number >= 1 && number <= size()
                ? Optional.empty()
                : Optional.of(Diagnostic.error(
                        Place.inFile(course.common().file()),
                        say(
                                "plan.course.no-week",
                                "number",
                                Integer.toString(number),
                                "count",
                                Integer.toString(size())),
                        say("plan.course.no-week.expected", "count", Integer.toString(size())),
                        say("plan.course.no-week.next")));
    }
}
