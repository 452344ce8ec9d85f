package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.CourseFolder;
import ampersheet.issue.Handouts;
import ampersheet.issue.Issue;
import ampersheet.issue.SeedFile;
import ampersheet.problem.Inventory;
import ampersheet.render.pdf.ExtraFont;
import ampersheet.sheet.LessonList;
import ampersheet.sheet.Logo;
import ampersheet.sheet.PartsReader;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** What the files of a course mean, read as the commands read them. Made once and kept until a file changes. */
final class CourseSet {
    private static final int DEEP = 3;

    private final Course course;
    private final TemplateLibrary builtIn = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
    private LessonList builtInLessons;
    private final Templates usual = new Templates("", builtIn, List.of());
    private Templates templates = usual;
    private Made made = new Made("", null);

    /**
     * All templates at hand.
     *
     * @param state of the folder of the instructor's own ones, by which a change is noticed
     * @param names of her own
     */
    record Templates(String state, TemplateLibrary library, List<String> names) {}

    private record Made(String of, SheetMaker maker) {}

    CourseSet(Course course) {
        this.course = course;
    }

    Course course() {
        return course;
    }

    /** Names of the templates that the plan speaks of; none while there is no plan that can be read. */
    Set<String> lessonsInSet() {
        TreeSet<String> names = new TreeSet<>();
        try {
            if (course.isThere(CourseFolder.PLAN)) {
                LessonList lessons = lessons();
                plan().entries().forEach(entry -> names.addAll(SetPlace.names(entry.source(), lessons)));
            }
        } catch (DiagnosticException broken) {
            return Set.of(); // the place of the set tells what is wrong
        }
        return names;
    }

    /** Whether it still has the title with which the desk begins. */
    boolean isUntitled() {
        try {
            return course.isThere(CourseFolder.PLAN) && plan().title().equals(say("desk.set.untitled"));
        } catch (DiagnosticException broken) {
            return false; // the place of the set tells what is wrong
        }
    }

    /** The built-in templates, and the instructor's own before them. */
    TemplateLibrary library() {
        return templates().library();
    }

    synchronized Templates templates() {
        Path folder = course.files().templates();
        if (!course.isFolder(folder)) {
            templates = usual;
            return usual;
        }
        String state = state(folder);
        if (!state.equals(templates.state())) {
            TemplateFiles files = TemplateFiles.in(folder);
            templates =
                    new Templates(state, new TemplateLibrary(List.of(files, TemplateFiles.builtIn())), files.names());
        }
        return templates;
    }

    private static String state(Path folder) {
        try (Stream<Path> files = Files.walk(folder, DEEP)) {
            StringBuilder state = new StringBuilder("own");
            for (Path file : files.sorted().toList()) {
                state.append('\n')
                        .append(file)
                        .append(' ')
                        .append(Files.getLastModifiedTime(file))
                        .append(' ')
                        .append(Files.size(file));
            }
            return state.toString();
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    synchronized LessonList lessons() {
        if (builtInLessons == null) {
            builtInLessons = LessonList.builtIn();
        }
        Templates now = templates();
        return now.equals(usual) ? builtInLessons : builtInLessons.with(now.library(), now.names());
    }

    /** @throws DiagnosticException with all faults of the plan */
    Plan plan() {
        return plan(course.read(CourseFolder.PLAN).text());
    }

    /** What a text says that is not kept yet; the files that it names lie in the course. */
    Plan plan(String text) {
        return PlanReader.read(
                CourseFolder.PLAN, text, PlanReader.Beside.in(course.files().folder()));
    }

    /** The class; empty while there is no list of it. */
    Optional<Roster> roster() {
        return course.roster().map(list -> RosterReader.read(CourseFolder.CLASS, list));
    }

    /** How many are in the class; 0 while there is no list that can be read. */
    int learners() {
        try {
            return roster().map(roster -> roster.seats().size()).orElse(0);
        } catch (DiagnosticException broken) {
            return 0; // the place of the class tells why
        }
    }

    /** The highest seat of the class; 0 while there is no list that can be read. */
    int lastSeat() {
        try {
            return roster().map(Roster::lastSeat).orElse(0);
        } catch (DiagnosticException broken) {
            return 0; // the place of the class tells why
        }
    }

    /**
     * The font for names in other letters; empty if there is none.
     *
     * @throws DiagnosticException if it lies there and cannot be used
     */
    Optional<ExtraFont> font() {
        return course.bytesOf(CourseFolder.FONT, ExtraFont.LARGEST)
                .map(bytes -> new ExtraFont(CourseFolder.FONT, bytes));
    }

    /** @throws DiagnosticException with all faults of the list, or if there is none */
    Inventory parts() {
        return PartsReader.read(
                CourseFolder.PARTS, course.read(CourseFolder.PARTS).text());
    }

    /** The parts to which a plan keeps; empty where it keeps to none. */
    Optional<Inventory> parts(Plan plan) {
        return PartsReader.beside(plan, course.files().folder());
    }

    /** @throws DiagnosticException with what of the plan cannot be made from the parts to which it keeps */
    void requireBuildable(Plan plan) {
        new SheetMaker(ProblemSet.of(plan, library(), parts(plan)));
    }

    /**
     * What is handed out as sheets: the plan with its seed, its templates, and the parts to which it keeps.
     *
     * @throws DiagnosticException with all faults of plan, templates and parts
     */
    ProblemSet set() {
        Plan plan = plan();
        return set(plan, parts(plan), library());
    }

    /** The same before anything of it is handed out; it gets no seed. */
    ProblemSet known() {
        Plan plan = plan();
        return ProblemSet.of(SeedFile.known(plan, course.files().plan()), library(), parts(plan));
    }

    /** The same for what nobody builds: pages to practise with, packages for other platforms. */
    ProblemSet setWhateverTheParts() {
        return set(plan(), Optional.empty(), library());
    }

    private ProblemSet set(Plan plan, Optional<Inventory> bins, TemplateLibrary library) {
        ProblemSet.of(plan, library, bins); // a plan that does not fit its templates gets no seed
        CourseFolder files = course.files();
        Plan seeded = SeedFile.issued(plan, files.plan(), titled -> {
                    ProblemSet of = ProblemSet.of(titled, library, bins);
                    return Files.exists(Issue.archive(of, files.ofPlan().pages()))
                            || Files.exists(
                                    Handouts.archiveBeside(files.ofPlan().handout(), of));
                })
                .plan();
        return ProblemSet.of(seeded, library, bins);
    }

    /** The plan, as something to give out from. */
    Source source() {
        return new Source() {
            @Override
            public Path file() {
                return course.files().plan();
            }

            @Override
            public CourseFolder.Made made() {
                return course.files().ofPlan();
            }

            @Override
            public ProblemSet sheets() {
                return set();
            }

            @Override
            public ProblemSet whateverTheParts() {
                return setWhateverTheParts();
            }

            @Override
            public Ingredients ingredients() {
                return CourseSet.this.ingredients();
            }
        };
    }

    /** What is handed out, ready to make any seat's sheet. */
    synchronized SheetMaker maker() {
        Plan plan = plan();
        Optional<Inventory> bins = parts(plan);
        Templates now = templates();
        String before = state(SeedFile.known(plan, course.files().plan()), bins, now);
        if (made.maker() == null || !before.equals(made.of())) {
            SheetMaker maker = new SheetMaker(set(plan, bins, now.library()));
            made = new Made(state(maker.plan(), bins, now), maker); // a seed may have been drawn
        }
        return made.maker();
    }

    /** The files from which all that is given out of the plan is made, as they are now. */
    Ingredients ingredients() {
        Optional<Plan> plan = Optional.empty();
        try {
            plan = Optional.of(plan());
        } catch (DiagnosticException broken) {
            // The plan's own version tells that it is another one now.
        }
        return ingredients(CourseFolder.PLAN, version(CourseFolder.PLAN), plan);
    }

    /**
     * The files from which something is made.
     *
     * @param file in which it stands
     * @param version of what it says
     * @param plan that names further ones; empty while it cannot be read
     */
    Ingredients ingredients(String file, String version, Optional<Plan> plan) {
        Map<String, String> versions = new LinkedHashMap<>();
        versions.put(file, version);
        versions.put(file + SeedFile.ENDING, version(file + SeedFile.ENDING));
        versions.put(CourseFolder.CLASS, version(CourseFolder.CLASS));
        if (plan.flatMap(Plan::parts).isPresent()) {
            versions.put(CourseFolder.PARTS, version(CourseFolder.PARTS));
        }
        plan.flatMap(read -> read.heading().logo())
                .ifPresent(logo -> versions.put(logo.file(), Course.version(logo.address())));
        versions.put(
                CourseFolder.FONT,
                course.bytesOf(CourseFolder.FONT, ExtraFont.LARGEST)
                        .map(bytes -> Course.version(new String(bytes, StandardCharsets.ISO_8859_1)))
                        .orElse(Course.Kept.NONE));
        versions.put(CourseFolder.TEMPLATES, Course.version(templates().state()));
        return new Ingredients(versions);
    }

    private String version(String file) {
        try {
            return course.read(file).version();
        } catch (DiagnosticException broken) {
            return "broken";
        }
    }

    /**
     * All that sheets are made of.
     *
     * @param plan with its seed
     */
    static String state(Plan plan, Optional<Inventory> parts, Templates templates) {
        return String.join(
                "\n\n",
                plan.written(),
                plan.seed(),
                parts.map(Inventory::written).orElse(""),
                plan.heading().logo().map(Logo::address).orElse(""),
                templates.state());
    }
}
