package ampersheet.practice;

import java.util.ArrayList;
import java.util.List;

/**
 * What a page has to practise with.
 *
 * @param set names it in what a browser keeps
 * @param skills in the order of the plan
 */
public record Course(String set, List<Skill> skills) {
    private static final String FIRST_LINE = "course 1";

    public Course {
        skills = List.copyOf(skills);
    }

    /**
     * @param variants the problems of the skill, each the index of its template
     * @param after indexes of the skills of this course that it builds on
     */
    public record Skill(String name, List<Template> templates, List<Integer> variants, List<Integer> after) {
        public Skill {
            templates = List.copyOf(templates);
            variants = List.copyOf(variants);
            after = List.copyOf(after);
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
     */
    public record Template(String name, int steps, List<List<Integer>> faded) {
        public Template {
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

        /** The form with at most so many blank steps. */
        Form formWithAtMost(int blanks) {
            Form found = Form.FULL;
            for (List<Integer> form : faded) {
                if (form.size() <= blanks) {
                    found = Form.faded(form.size());
                }
            }
            return found;
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
        for (Skill skill : skills) {
            out.append("skill ").append(skill.name()).append('\n');
            out.append("after").append(listed(skill.after())).append('\n');
            for (Template template : skill.templates()) {
                out.append("template ")
                        .append(template.steps())
                        .append(' ')
                        .append(template.name())
                        .append('\n');
                for (List<Integer> form : template.faded()) {
                    out.append("faded").append(listed(form)).append('\n');
                }
            }
            out.append("variants").append(listed(skill.variants())).append('\n');
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
    public static Course read(String text) {
        List<String> lines = Texts.parts(text, '\n');
        if (lines.size() < 2 || !lines.get(0).equals(FIRST_LINE)) {
            throw new IllegalArgumentException("a course of another version, or none");
        }
        List<Skill> skills = new ArrayList<>();
        int at = 2;
        while (at < lines.size() && !lines.get(at).isEmpty()) {
            String name = behind(lines.get(at++), "skill ");
            List<Integer> after = numbers(behind(lines.get(at++), "after"));
            List<Template> templates = new ArrayList<>();
            while (lines.get(at).startsWith("template ")) {
                String template = behind(lines.get(at++), "template ");
                int space = template.indexOf(' ');
                List<List<Integer>> faded = new ArrayList<>();
                while (lines.get(at).startsWith("faded")) {
                    faded.add(numbers(behind(lines.get(at++), "faded")));
                }
                templates.add(
                        new Template(template.substring(space + 1), Texts.whole(template.substring(0, space)), faded));
            }
            skills.add(new Skill(name, templates, numbers(behind(lines.get(at++), "variants")), after));
        }
        return new Course(lines.get(1), skills);
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
