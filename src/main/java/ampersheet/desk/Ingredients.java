package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.issue.CourseFolder;
import ampersheet.issue.SeedFile;
import ampersheet.sheet.ProblemSet;
import ampersheet.source.Told;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;

/**
 * What sheets are made from: files of the course, each with what tells one version of it from another.
 *
 * @param versions by the name of the file, in the order in which they are told
 */
record Ingredients(Map<String, String> versions) {
    Ingredients {
        versions = new LinkedHashMap<>(versions);
    }

    /** What is not as it was, in the words of the desk's places. */
    String toldSince(Ingredients before) {
        return told(changedSince(before));
    }

    /** Files in the words of the desk's places, each once; empty where there are none. */
    static String told(List<String> files) {
        return Told.all(List.copyOf(
                new LinkedHashSet<>(files.stream().map(Ingredients::called).toList())));
    }

    private static String called(String file) {
        return switch (file) {
            case CourseFolder.PLAN -> say("desk.ingredient.set");
            case CourseFolder.PLAN + SeedFile.ENDING -> say("desk.ingredient.seed");
            case CourseFolder.WEEKS -> say("desk.ingredient.weeks");
            case CourseFolder.WEEKS + SeedFile.ENDING -> say("desk.ingredient.weeks-seed");
            case CourseFolder.CLASS -> say("desk.ingredient.class");
            case CourseFolder.PARTS -> say("desk.ingredient.parts");
            case CourseFolder.FONT -> say("desk.ingredient.font");
            case CourseFolder.TEMPLATES -> say("desk.ingredient.templates");
            default -> say("desk.ingredient.logo", "file", file);
        };
    }

    /** Those files that are not what they were. */
    List<String> changedSince(Ingredients before) {
        List<String> changed = new ArrayList<>();
        versions.forEach((file, version) -> {
            if (before.versions.containsKey(file) && !before.versions.get(file).equals(version)) {
                changed.add(file);
            }
        });
        return changed;
    }

    /**
     * The same for what was read already.
     *
     * @param file in which its plan stands
     */
    Ingredients of(String file, ProblemSet read) {
        Map<String, String> known = new LinkedHashMap<>(versions);
        known.put(file, Course.version(read.plan().written()));
        read.parts().ifPresent(bins -> known.put(CourseFolder.PARTS, Course.version(bins.written())));
        return new Ingredients(known);
    }

    /** Of what is the same for everybody, and built by nobody. */
    Ingredients forNobodyInParticular() {
        return without(List.of(CourseFolder.CLASS, CourseFolder.PARTS, CourseFolder.FONT));
    }

    Ingredients withoutTheClass() {
        return without(List.of(CourseFolder.CLASS));
    }

    private Ingredients without(List<String> files) {
        Map<String, String> left = new LinkedHashMap<>(versions);
        left.keySet().removeAll(files);
        return new Ingredients(left);
    }
}
