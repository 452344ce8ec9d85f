package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.source.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Reads sheet IDs as people type them: capitals or not, O for 0, I or L for 1, with or without hyphens and blanks. An
 * ID that was not issued for the plan at hand is refused, each cause with its own sentence.
 */
final class SheetIdReader {
    private static final String FIRST = say("plan.sheet-id");
    private static final int SET_CHARACTERS = SheetId.PLAN_CHARACTERS + SheetId.TEMPLATE_CHARACTERS;
    private static final int MOST_HINTS = 3;
    /** The set, nine digits at most, the check character, and one that slipped in. */
    private static final int MOST_CHARACTERS = SET_CHARACTERS + 11;

    private final String plan;
    private final String templates;
    private final String planName;
    private final String set;

    /**
     * @param plan the two characters that stand for the plan at hand
     * @param templates the three characters that stand for its templates
     * @param planName the plan's file as its reader knows it
     */
    SheetIdReader(String plan, String templates, String planName) {
        this.plan = plan;
        this.templates = templates;
        this.planName = planName;
        this.set = plan + templates;
    }

    /** @throws DiagnosticException for anything but an ID of this plan with these templates */
    SheetId read(String typed) {
        String characters = significant(typed);
        if (characters.length() > MOST_CHARACTERS) {
            throw refusal(typed, 0, say("plan.sheet-id.long"), say("plan.sheet-id.type"));
        }
        if (characters.length() < SET_CHARACTERS + 2) {
            throw refusal(typed, 0, say("plan.sheet-id.short"), hint(characters));
        }
        SheetId read =
                whole(characters).orElseThrow(() -> refusal(typed, 0, say("plan.sheet-id.slip"), hint(characters)));
        if (read.plan().equals(plan)
                && read.templates().equals(templates)
                && read.characters().equals(characters)) {
            return read;
        }
        SortedSet<String> near = corrections(characters);
        if (!read.plan().equals(plan)) {
            throw refusal(
                    typed,
                    0,
                    say("plan.sheet-id.other-plan", "file", planName),
                    near.isEmpty()
                            ? say("plan.sheet-id.other-plan.next", "plan", plan, "templates", templates)
                            : hint(near));
        }
        if (!read.templates().equals(templates)) {
            throw refusal(
                    typed,
                    0,
                    say("plan.sheet-id.other-templates"),
                    near.isEmpty()
                            ? say(
                                    "plan.sheet-id.other-templates.next",
                                    "issued-plan",
                                    read.plan(),
                                    "issued-templates",
                                    read.templates(),
                                    "plan",
                                    plan,
                                    "templates",
                                    templates)
                            : hint(near));
        }
        throw refusal(typed, 0, say("plan.sheet-id.zeros"), hint(near));
    }

    /** What an ID begins with, of whatever sheets; empty for anything else. */
    static Optional<String> set(String typed) {
        String characters;
        try {
            characters = significant(typed);
        } catch (DiagnosticException other) {
            return Optional.empty();
        }
        return whole(characters).map(id -> id.set());
    }

    /** The ID of whatever sheet, if the check character fits; its own characters may be others by zeros. */
    private static Optional<SheetId> whole(String characters) {
        if (characters.length() > MOST_CHARACTERS
                || characters.length() < SET_CHARACTERS + 2
                || !CheckCharacter.fits(characters)) {
            return Optional.empty();
        }
        String digits = characters.substring(SET_CHARACTERS, characters.length() - 1);
        return isSeat(digits)
                ? Optional.of(new SheetId(
                        characters.substring(0, SheetId.PLAN_CHARACTERS),
                        characters.substring(SheetId.PLAN_CHARACTERS, SET_CHARACTERS),
                        Integer.parseInt(digits)))
                : Optional.empty();
    }

    private static boolean isSeat(String digits) {
        if (digits.isEmpty() || digits.length() > 9) {
            return false;
        }
        for (int i = 0; i < digits.length(); i++) {
            if (digits.charAt(i) < '0' || digits.charAt(i) > '9') {
                return false;
            }
        }
        int seat = Integer.parseInt(digits);
        return seat >= 1 && seat <= SheetId.LAST_SEAT;
    }

    /**
     * Capitals of the ID's alphabet, look-alikes replaced, blanks and hyphens dropped; of a long text no more than
     * tells so.
     */
    private static String significant(String typed) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < typed.length() && out.length() <= MOST_CHARACTERS; i++) {
            char c = typed.charAt(i);
            if (Character.isWhitespace(c)
                    || Character.isSpaceChar(c)
                    || Character.getType(c) == Character.DASH_PUNCTUATION
                    || c == '\u2212'
                    || c == '_') {
                continue;
            }
            String capital = String.valueOf(c).toUpperCase(Locale.ROOT);
            String plain = switch (capital) {
                case "O" -> "0";
                case "I", "L" -> "1";
                default -> capital;
            };
            if (plain.length() != 1 || SheetId.ALPHABET.indexOf(plain.charAt(0)) < 0) {
                throw refusal(
                        typed,
                        i + 1,
                        say("plan.sheet-id.character", "character", Character.toString(c)),
                        say("plan.sheet-id.type"));
            }
            out.append(plain);
        }
        return out.toString();
    }

    private String hint(String characters) {
        return hint(corrections(characters));
    }

    private static String hint(SortedSet<String> near) {
        if (near.isEmpty()) {
            return say("plan.sheet-id.compare");
        }
        List<String> first = new ArrayList<>(near).subList(0, Math.min(MOST_HINTS, near.size()));
        return Told.count("plan.sheet-id.compare.near", first.size(), "ids", String.join(", ", first));
    }

    /**
     * IDs of this plan one wrong character or one swap away; if there are none, one missing or extra character away.
     */
    private SortedSet<String> corrections(String characters) {
        SortedSet<String> found = new TreeSet<>();
        for (int i = 0; i < characters.length(); i++) {
            for (int a = 0; a < SheetId.ALPHABET.length(); a++) {
                keepIfIssued(
                        characters.substring(0, i) + SheetId.ALPHABET.charAt(a) + characters.substring(i + 1), found);
            }
            if (i + 1 < characters.length()) {
                keepIfIssued(SheetId.swapped(characters, i), found);
            }
        }
        if (!found.isEmpty()) {
            return found;
        }
        for (int i = 0; i <= characters.length(); i++) {
            for (int a = 0; a < SheetId.ALPHABET.length(); a++) {
                keepIfIssued(characters.substring(0, i) + SheetId.ALPHABET.charAt(a) + characters.substring(i), found);
            }
            if (i < characters.length()) {
                keepIfIssued(characters.substring(0, i) + characters.substring(i + 1), found);
            }
        }
        return found;
    }

    private void keepIfIssued(String characters, SortedSet<String> found) {
        if (characters.startsWith(set)) {
            whole(characters)
                    .filter(id -> id.characters().equals(characters))
                    .ifPresent(id -> found.add(id.toString()));
        }
    }

    private static DiagnosticException refusal(String typed, int column, String problem, String nextAction) {
        Place place = new Place(FIRST, column == 0 ? 0 : 1, column, typed);
        return new DiagnosticException(Diagnostic.error(place, problem, "", nextAction));
    }
}
