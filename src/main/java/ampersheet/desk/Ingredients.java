package ampersheet.desk;

import ampersheet.issue.CourseFolder;
import java.util.ArrayList;
import java.util.LinkedHashMap;
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
