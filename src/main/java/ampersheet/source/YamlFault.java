package ampersheet.source;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;

/** Turns what the YAML reader says into what a template author can act on. */
final class YamlFault {
    private YamlFault() {}

    /** @param begun line in which what could not be read began; 0 if that is not known */
    static Diagnostic told(Place place, String context, String problem, int begun) {
        String said = problem == null ? "" : problem;
        String during = context == null ? "" : context;
        if (said.contains("mapping values are not allowed")) {
            return Diagnostic.error(
                    place,
                    "a colon followed by a blank begins a value, but none can begin here",
                    "one value after each key",
                    "Put a text that holds \": \" in quotes.");
        }
        if (said.contains("TAB")) {
            return Diagnostic.error(
                    place,
                    "a tab stands where YAML allows only blanks",
                    "blanks for indentation",
                    "Replace the tab by blanks.");
        }
        if (during.contains("flow mapping") || during.contains("flow sequence")) {
            return notGoneOn(place, during.contains("mapping"), begun);
        }
        if (during.contains("block mapping")
                || during.contains("block collection")
                || said.contains("could not find expected ':'")) {
            return Diagnostic.error(
                    place,
                    "this line does not continue what stands above it",
                    "a key with a colon, indented like the keys above",
                    "Indent it like the lines it belongs to; " + "a text over several lines needs quotes.");
        }
        if (during.contains("double-quoted")) {
            return Diagnostic.error(
                    place,
                    "a backslash in double quotes begins an escape that YAML does not know",
                    "\\\" for a quote, \\\\ for a backslash",
                    "Double the backslash, or use single quotes.");
        }
        if (during.contains("quoted scalar")) {
            return Diagnostic.error(
                    place,
                    "a quote was opened and never closed",
                    "the same quote again at the end of the text",
                    "Close the quote.");
        }
        if (said.contains("cannot start any token")) {
            return Diagnostic.error(
                    place,
                    "no value can begin with this character",
                    "a letter, a digit or a quote",
                    "Put the text in quotes.");
        }
        return Diagnostic.error(
                place,
                "this is not YAML: " + (during.isEmpty() ? "" : during + ", ") + said,
                "YAML 1.2",
                "Correct the line; a text with special characters needs quotes.");
    }

    private static Diagnostic notGoneOn(Place place, boolean braces, int begun) {
        return Diagnostic.error(
                place,
                "this does not continue the " + (braces ? "group in braces" : "list in brackets") + " begun in line "
                        + begun,
                braces ? "a comma and the next key, or }" : "a comma and the next value, or ]",
                "Close it with " + (braces ? "}" : "]")
                        + ", or put a text that holds a comma, a colon, a bracket or a brace " + "in quotes.");
    }
}
