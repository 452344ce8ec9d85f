package ampersheet.practice;

import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a page has to practise with.
 *
 * @param set names it in what a browser keeps
 * @param skills in the order of the plan
 * @param rules what each does, as far as it is known, as in "adds the voltages around a loop"; by name
 * @param language of all of it
 * @param decimal how numbers are written
 */
public record Course(
        String set, List<Skill> skills, Map<String, String> rules, Language language, DecimalMarker decimal) {
    private static final String FIRST_LINE = "course 2";
    private static final char TAB = '\t';

    public Course {
        skills = List.copyOf(skills);
        rules = Collections.unmodifiableMap(new TreeMap<>(rules));
    }

    /** Of rules nothing is known, and the decimal marker is a point. */
    public Course(String set, List<Skill> skills, Language language) {
        this(set, skills, Map.of(), language, DecimalMarker.POINT);
    }

    Sentences sentences() {
        return new Sentences(language);
    }

    /**
     * @param variants the problems of the skill, each the index of its template
     * @param after indexes of the skills of this course that it builds on
     * @param twins for each variant the index of its twin among those of its template, or -1; empty where none has one
     * @param faulty the wrong line of the working shown with a variant, by variant
     */
    public record Skill(
            String name,
            List<Template> templates,
            List<Integer> variants,
            List<Integer> after,
            List<Integer> twins,
            Map<Integer, Faulty> faulty) {
        public Skill {
            templates = List.copyOf(templates);
            variants = List.copyOf(variants);
            after = List.copyOf(after);
            twins = List.copyOf(twins);
            faulty = Collections.unmodifiableMap(new TreeMap<>(faulty));
        }

        public Skill(String name, List<Template> templates, List<Integer> variants, List<Integer> after) {
            this(name, templates, variants, after, List.of(), Map.of());
        }

        /** The question that goes with a variant once it is solved. */
        Optional<Twin> twin(int variant) {
            int twin = variant < twins.size() ? twins.get(variant) : -1;
            return twin < 0 ? Optional.empty() : Optional.of(of(variant).twins().get(twin));
        }

        /** The template of a variant. */
        public Template of(int variant) {
            return templates.get(variants.get(variant));
        }

        /** Whether it can be shown in two ways that have more in common than their method. */
        public boolean hasSeveralTemplates() {
            return templates.size() > 1;
        }
    }

    /**
     * @param name {@code family/name}
     * @param steps of its working
     * @param faded the numbers of the blank steps, from 1, of each form between the example and the question alone;
     *     each has those of the one before and more
     * @param lines what each step gives, and by which rule; empty where nothing is asked about that
     * @param twins all that go with a variant of it
     */
    public record Template(String name, int steps, List<List<Integer>> faded, List<Line> lines, List<Twin> twins) {
        public Template(String name, int steps, List<List<Integer>> faded) {
            this(name, steps, faded, List.of(), List.of());
        }

        public Template {
            lines = List.copyOf(lines);
            twins = List.copyOf(twins);
            List<List<Integer>> forms = new ArrayList<>();
            for (List<Integer> form : faded) {
                forms.add(List.copyOf(form));
            }
            faded = List.copyOf(forms);
        }

        /** The form that leaves at least so many steps blank, with as much support as may be. */
        public Form formWithAtLeast(int blanks) {
            if (blanks <= 0) {
                return Form.FULL;
            }
            for (List<Integer> form : faded) {
                if (form.size() >= blanks) {
                    return Form.faded(form.size());
                }
            }
            return Form.BARE;
        }

        /** How many forms with support lie between this one and the question alone, this one among them. */
        int formsBeforeBare(Form form) {
            int between = 0;
            for (List<Integer> other : faded) {
                between += form.kind() != Form.Kind.BARE && other.size() >= form.blanks() ? 1 : 0;
            }
            return between;
        }

        /**
         * The form in which a learner has the next problem: the question alone is only for who needs no support, and
         * the example only for who needs all of it, wherever there is something in between.
         *
         * @param blanks as {@link Standing} counts them
         */
        Form formFor(int blanks) {
            if (blanks <= 0 || blanks >= Standing.ALL) {
                return blanks <= 0 ? Form.FULL : Form.BARE;
            }
            if (faded.isEmpty()) {
                return Form.FULL;
            }
            boolean fromTheEnd = blanks > Standing.ALL / 2;
            int at = fromTheEnd ? Math.max(0, faded.size() - (Standing.ALL - blanks)) : 0;
            while (!fromTheEnd && at < faded.size() - 1 && faded.get(at).size() < blanks) {
                at++;
            }
            return Form.faded(faded.get(at).size());
        }

        /** In the middle of the way from the example to the question. */
        Form middle() {
            return faded.isEmpty()
                    ? Form.BARE
                    : Form.faded(faded.get(faded.size() / 2).size());
        }

        /** Numbers of the steps that a faded form leaves blank; none where the template has no such form. */
        public List<Integer> blank(Form form) {
            for (List<Integer> blank : faded) {
                if (blank.size() == form.blanks()) {
                    return blank;
                }
            }
            return List.of();
        }
    }

    /**
     * A working with one wrong line.
     *
     * @param step the number of that line, from 1
     * @param mistake the id of what was done there
     */
    public record Faulty(int step, String mistake) {}

    /**
     * One step.
     *
     * @param also other rules that would give the line, too, in other words
     */
    public record Line(String principle, String meaning, List<String> also) {
        public Line {
            also = List.copyOf(also);
        }
    }

    /** The index of a skill, or -1. */
    int indexOf(String skill) {
        for (int i = 0; i < skills.size(); i++) {
            if (skills.get(i).name().equals(skill)) {
                return i;
            }
        }
        return -1;
    }

    /** For {@link #read}. */
    public String write() {
        StringBuilder out =
                new StringBuilder(FIRST_LINE).append('\n').append(set).append('\n');
        rules.forEach((name, does) ->
                out.append("rule ").append(name).append(TAB).append(does).append('\n'));
        for (Skill skill : skills) {
            out.append("skill ").append(skill.name()).append('\n');
            out.append("after").append(listed(skill.after())).append('\n');
            for (Template template : skill.templates()) {
                out.append("template ")
                        .append(template.steps())
                        .append(' ')
                        .append(template.name())
                        .append('\n');
                for (Line line : template.lines()) {
                    out.append("line ").append(line.principle()).append(TAB).append(line.meaning());
                    line.also().forEach(other -> out.append(TAB).append(other));
                    out.append('\n');
                }
                template.twins()
                        .forEach(
                                twin -> out.append("twin ").append(twin.write()).append('\n'));
                for (List<Integer> form : template.faded()) {
                    out.append("faded").append(listed(form)).append('\n');
                }
            }
            out.append("variants").append(listed(skill.variants())).append('\n');
            out.append("twins").append(listed(skill.twins())).append('\n');
            skill.faulty()
                    .forEach((variant, line) -> out.append("faulty ")
                            .append(variant)
                            .append(TAB)
                            .append(line.step())
                            .append(TAB)
                            .append(line.mistake())
                            .append('\n'));
        }
        return out.toString();
    }

    private static String listed(List<Integer> numbers) {
        StringBuilder out = new StringBuilder();
        for (int number : numbers) {
            out.append(' ').append(number);
        }
        return out.toString();
    }

    /** @throws IllegalArgumentException for what {@link #write} does not write */
    public static Course read(String text, Language language, DecimalMarker decimal) {
        List<String> lines = Texts.parts(text, '\n');
        if (lines.size() < 2 || !lines.get(0).equals(FIRST_LINE)) {
            throw new IllegalArgumentException("a course of another version, or none");
        }
        List<Skill> skills = new ArrayList<>();
        Map<String, String> rules = new TreeMap<>();
        int at = 2;
        while (lines.get(at).startsWith("rule ")) {
            List<String> rule = Texts.parts(behind(lines.get(at++), "rule "), TAB);
            rules.put(rule.get(0), rule.get(1));
        }
        while (at < lines.size() && !lines.get(at).isEmpty()) {
            String name = behind(lines.get(at++), "skill ");
            List<Integer> after = numbers(behind(lines.get(at++), "after"));
            List<Template> templates = new ArrayList<>();
            while (lines.get(at).startsWith("template ")) {
                String template = behind(lines.get(at++), "template ");
                int space = template.indexOf(' ');
                List<Line> steps = new ArrayList<>();
                while (lines.get(at).startsWith("line ")) {
                    List<String> parts = Texts.parts(behind(lines.get(at++), "line "), TAB);
                    steps.add(new Line(parts.get(0), parts.get(1), parts.subList(2, parts.size())));
                }
                List<Twin> twins = new ArrayList<>();
                while (lines.get(at).startsWith("twin ")) {
                    twins.add(Twin.read(behind(lines.get(at++), "twin ")));
                }
                List<List<Integer>> faded = new ArrayList<>();
                while (lines.get(at).startsWith("faded")) {
                    faded.add(numbers(behind(lines.get(at++), "faded")));
                }
                templates.add(new Template(
                        template.substring(space + 1), Texts.whole(template.substring(0, space)), faded, steps, twins));
            }
            List<Integer> variants = numbers(behind(lines.get(at++), "variants"));
            List<Integer> twins = numbers(behind(lines.get(at++), "twins"));
            Map<Integer, Faulty> faulty = new TreeMap<>();
            while (lines.get(at).startsWith("faulty ")) {
                List<String> parts = Texts.parts(behind(lines.get(at++), "faulty "), TAB);
                faulty.put(Texts.whole(parts.get(0)), new Faulty(Texts.whole(parts.get(1)), parts.get(2)));
            }
            skills.add(new Skill(name, templates, variants, after, twins, faulty));
        }
        return new Course(lines.get(1), skills, rules, language, decimal);
    }

    private static String behind(String line, String word) {
        if (!line.startsWith(word)) {
            throw new IllegalArgumentException("a line with " + word + " is expected, not " + line);
        }
        return line.substring(word.length());
    }

    private static List<Integer> numbers(String text) {
        List<Integer> numbers = new ArrayList<>();
        for (String part : Texts.parts(text, ' ')) {
            if (!part.isEmpty()) {
                numbers.add(Texts.whole(part));
            }
        }
        return numbers;
    }
}
