package ampersheet.marking;

import ampersheet.language.Language;
import ampersheet.language.Saying;
import ampersheet.source.Languages;
import java.util.List;
import java.util.regex.Pattern;

/**
 * An answer that was not marked, and why: nothing that came in is lost.
 *
 * @param why as the table of them tells it, in few words
 */
record SetAside(TypedAnswer answer, Saying why) {
    /** Reasons that say that another answer counts. */
    private static final List<String> ANOTHER_COUNTS = List.of(
            "report.aside.worse",
            "report.aside.replaced",
            "report.aside.contradicts",
            "report.aside.contradicts-itself",
            "report.aside.contradicts-many",
            "report.aside.dismissed",
            "report.aside.late");

    private static final List<Pattern> WRITTEN = Languages.codes().stream()
            .flatMap(code -> Languages.of(code).stream())
            .flatMap(language -> ANOTHER_COUNTS.stream().map(key -> written(language, key)))
            .toList();

    /** Of a later round after which the learner had fewer marks. */
    static SetAside worse(TypedAnswer answer) {
        return new SetAside(answer, Saying.of("report.aside.worse"));
    }

    static SetAside replaced(TypedAnswer answer, String file, int line) {
        return new SetAside(answer, Saying.of("report.aside.replaced", "file", file, "line", Integer.toString(line)));
    }

    /** @param files that hold something else; empty where it is the same file */
    static SetAside contradicted(TypedAnswer answer, List<String> files) {
        return new SetAside(
                answer,
                files.isEmpty()
                        ? Saying.of("report.aside.contradicts-itself")
                        : Saying.of("report.aside.contradicts", "files", String.join(", ", files)));
    }

    /** One of so many hand-ins that none is taken for one. */
    static SetAside ofMany(TypedAnswer answer, int handIns) {
        return new SetAside(answer, Saying.of("report.aside.contradicts-many", "count", Integer.toString(handIns)));
    }

    static SetAside dismissed(TypedAnswer answer) {
        return new SetAside(answer, Saying.of("report.aside.dismissed"));
    }

    /** To a sheet of another week or set, and marked with that. */
    static SetAside elsewhere(TypedAnswer answer) {
        return new SetAside(answer, Saying.of("report.aside.elsewhere"));
    }

    static SetAside late(TypedAnswer answer) {
        return new SetAside(answer, Saying.of("report.aside.late"));
    }

    static SetAside byHand(TypedAnswer answer) {
        return new SetAside(answer, Saying.of("report.aside.by-hand"));
    }

    /**
     * Whether nothing was wrong with it but that another was given, or that the instructor decided against it; read a
     * second time it would be in the way of that. The table may be of an earlier run, and of another language.
     */
    static boolean anotherCounts(String why) {
        return WRITTEN.stream().anyMatch(reason -> reason.matcher(why).matches());
    }

    private static Pattern written(Language language, String key) {
        String[] anything = language.slots(key).stream()
                .flatMap(slot -> List.of(slot, "\\E.*\\Q").stream())
                .toArray(String[]::new);
        return Pattern.compile("\\Q" + language.say(key, anything) + "\\E", Pattern.DOTALL);
    }
}
