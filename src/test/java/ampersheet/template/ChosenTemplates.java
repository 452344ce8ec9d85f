package ampersheet.template;

import java.util.Arrays;
import java.util.List;

/**
 * The templates that the tests over all templates look at: every one in the jar, or, while one is being written, those
 * that {@code -Donly=family/name,family/name} names.
 */
public final class ChosenTemplates {
    private static final String ONLY = System.getProperty("only", "");

    private ChosenTemplates() {}

    public static List<String> of(TemplateFiles files) {
        List<String> only = Arrays.asList(ONLY.split(","));
        return files.names().stream()
                .filter(name -> ONLY.isEmpty() || only.contains(name))
                .toList();
    }
}
