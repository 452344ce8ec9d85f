package ampersheet.sheet;

import ampersheet.language.Language;
import ampersheet.problem.Difficulty;
import ampersheet.template.Statement;

/** What makes a variant harder than another, in words. */
public final class FingerprintText {
    private FingerprintText() {}

    /**
     * What is alike in many variants of one template. Digits of the givens are left out: they differ so often that
     * hardly two learners would share a group.
     */
    public static String shared(Difficulty of, Language language) {
        String divisions = Integer.toString(of.inversions());
        String prefixes = Integer.toString(of.prefixCrossings());
        String unending = Integer.toString(of.nonTerminating());
        String nearest = nearest(of.nearest(), language);
        return of.branches().isEmpty()
                ? language.say(
                        "sheet.fingerprint",
                        "divisions",
                        divisions,
                        "prefixes",
                        prefixes,
                        "unending",
                        unending,
                        "nearest",
                        nearest)
                : language.say(
                        "sheet.fingerprint.cases",
                        "divisions",
                        divisions,
                        "prefixes",
                        prefixes,
                        "unending",
                        unending,
                        "cases",
                        of.branches().toString(),
                        "nearest",
                        nearest);
    }

    /** All of it, for a key; Markdown. */
    static String whole(Difficulty of, Language language) {
        return language.say(
                "sheet.key.fingerprint",
                "steps",
                Integer.toString(of.steps()),
                "digits",
                Integer.toString(of.digits()),
                "shared",
                Statement.escape(shared(of, language)),
                "points",
                Integer.toString(of.points()));
    }

    private static String nearest(Difficulty.Nearness nearness, Language language) {
        return switch (nearness) {
            case NEAR -> language.say("sheet.fingerprint.mistake-near");
            case MIDDLING -> language.say("sheet.fingerprint.mistake-middling");
            case FAR -> language.say("sheet.fingerprint.mistake-far");
        };
    }
}
