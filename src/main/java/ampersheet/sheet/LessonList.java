package ampersheet.sheet;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.source.AsciiCase;
import ampersheet.template.KeptList;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.ChoiceAsk;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What there is to know of each template before it is chosen.
 *
 * @param lessons by family, level and name
 * @param faults of templates that cannot be used, by name
 */
public record LessonList(List<Lesson> lessons, Map<String, List<Diagnostic>> faults) {
    /** As the list of the built-in templates is kept in the program. */
    public static final String FILE = "lessons-list.txt";

    private static final String BETWEEN = "\t";
    private static final String AMONG = "\u001f";
    private static final Comparator<Lesson> ORDER =
            Comparator.comparing(Lesson::family).thenComparing(Lesson::level).thenComparing(Lesson::name);

    public LessonList {
        lessons = lessons.stream().sorted(ORDER).toList();
    }

    /**
     * A template as somebody looks for it.
     *
     * @param minutes that it takes about, where a sheet shows nothing of its working
     * @param own whether it is the instructor's
     */
    public record Lesson(
            String name,
            String title,
            String family,
            int level,
            String skill,
            List<String> teaches,
            List<String> asked,
            int minutes,
            boolean own) {
        public Lesson {
            teaches = List.copyOf(teaches);
            asked = List.copyOf(asked);
        }

        /** The family in words. */
        public String topic() {
            return family.replace('-', ' ');
        }

        /** Whether each of these words stands somewhere in it, whatever its case. */
        public boolean speaksOf(String words) {
            String all = AsciiCase.small(
                    String.join(" ", name, title, topic(), skill, String.join(" ", teaches), String.join(" ", asked)));
            return Stream.of(AsciiCase.small(words).strip().split("\\s+")).allMatch(all::contains);
        }

        private static Lesson of(ProblemTemplate template, boolean own) {
            return new Lesson(
                    template.name(),
                    template.title(),
                    template.family(),
                    template.level(),
                    template.skill(),
                    template.teaches(),
                    template.asks().stream()
                            .map(ask -> ask instanceof ChoiceAsk
                                    ? "a choice"
                                    : template.line(ask.of()).meaning())
                            .toList(),
                    Minutes.bare(template),
                    own);
        }

        private String line() {
            return String.join(
                    BETWEEN,
                    name,
                    title,
                    family,
                    Integer.toString(level),
                    skill,
                    String.join(AMONG, teaches),
                    String.join(AMONG, asked),
                    Integer.toString(minutes));
        }

        private static Lesson read(String line) {
            String[] cells = line.split(BETWEEN, -1);
            return new Lesson(
                    cells[0],
                    cells[1],
                    cells[2],
                    Integer.parseInt(cells[3]),
                    cells[4],
                    among(cells[5]),
                    among(cells[6]),
                    Integer.parseInt(cells[7]),
                    false);
        }

        private static List<String> among(String cell) {
            return cell.isEmpty() ? List.of() : Arrays.asList(cell.split(AMONG));
        }
    }

    /** Of all templates of a library, each read and checked. */
    public static LessonList of(TemplateLibrary library) {
        return of(library, library.names(), false);
    }

    private static LessonList of(TemplateLibrary library, List<String> names, boolean own) {
        List<Lesson> lessons = new ArrayList<>();
        Map<String, List<Diagnostic>> faults = new LinkedHashMap<>();
        for (String name : names) {
            try {
                lessons.add(Lesson.of(library.template(name), own));
            } catch (DiagnosticException broken) {
                faults.put(name, broken.diagnostics());
            }
        }
        return new LessonList(lessons, faults);
    }

    /** Of the built-in templates, as it was made when the program was built; where it was not, they are read now. */
    public static LessonList builtIn() {
        return KeptList.read(FILE)
                .map(LessonList::read)
                .orElseGet(() -> of(new TemplateLibrary(List.of(TemplateFiles.builtIn()))));
    }

    /** The same with an instructor's own templates, which take the place of those of the same name. */
    public LessonList with(TemplateLibrary library, List<String> own) {
        LessonList theirs = of(library, own, true);
        return new LessonList(
                Stream.concat(
                                lessons.stream().filter(lesson -> !own.contains(lesson.name())),
                                theirs.lessons().stream())
                        .toList(),
                theirs.faults());
    }

    public Optional<Lesson> lesson(String name) {
        return lessons.stream().filter(lesson -> lesson.name().equals(name)).findFirst();
    }

    /** As {@link #FILE} holds it. */
    public String text() {
        return String.join("\n", lessons.stream().map(Lesson::line).toList());
    }

    private static LessonList read(String text) {
        return new LessonList(text.lines().map(Lesson::read).toList(), Map.of());
    }
}
