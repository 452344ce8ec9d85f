package ampersheet.source;

import static ampersheet.source.Told.say;

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
                    place, say("plan.yaml.colon"), say("plan.yaml.colon.expected"), say("plan.yaml.colon.next"));
        }
        if (said.contains("TAB")) {
            return Diagnostic.error(
                    place, say("plan.yaml.tab"), say("plan.yaml.tab.expected"), say("plan.yaml.tab.next"));
        }
        if (during.contains("flow mapping") || during.contains("flow sequence")) {
            return notGoneOn(place, during.contains("mapping"), begun);
        }
        if (during.contains("block mapping")
                || during.contains("block collection")
                || said.contains("could not find expected ':'")) {
            return Diagnostic.error(
                    place,
                    say("plan.yaml.not-gone-on"),
                    say("plan.yaml.not-gone-on.expected"),
                    say("plan.yaml.not-gone-on.next"));
        }
        if (during.contains("double-quoted")) {
            return Diagnostic.error(
                    place, say("plan.yaml.escape"), say("plan.yaml.escape.expected"), say("plan.yaml.escape.next"));
        }
        if (during.contains("quoted scalar")) {
            return Diagnostic.error(
                    place, say("plan.yaml.quote"), say("plan.yaml.quote.expected"), say("plan.yaml.quote.next"));
        }
        if (said.contains("cannot start any token")) {
            return Diagnostic.error(
                    place, say("plan.yaml.begins"), say("plan.yaml.begins.expected"), say("plan.yaml.begins.next"));
        }
        return Diagnostic.error(
                place,
                during.isEmpty()
                        ? say("plan.yaml.none", "reason", said)
                        : say("plan.yaml.none-during", "during", during, "reason", said),
                "YAML 1.2",
                say("plan.yaml.none.quote"));
    }

    private static Diagnostic notGoneOn(Place place, boolean braces, int begun) {
        return Diagnostic.error(
                place,
                braces
                        ? say("plan.yaml.group", "line", Integer.toString(begun))
                        : say("plan.yaml.list", "line", Integer.toString(begun)),
                braces ? say("plan.yaml.group.expected") : say("plan.yaml.list.open.expected"),
                say("plan.yaml.group.next", "end", braces ? "}" : "]"));
    }
}
