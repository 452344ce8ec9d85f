package ampersheet.sheet;

import java.security.SecureRandom;
import java.util.Optional;

/**
 * What is drawn once for a plan that names no seed, so that nobody can make its keys from what a sheet shows: 80 bits,
 * in the alphabet of sheet IDs. Of all that is handed out only the ten bits of the plan in a sheet ID follow from it.
 */
public final class Secret {
    private static final int CHARACTERS = 16;

    private final String characters;

    private Secret(String characters) {
        this.characters = characters;
    }

    /**
     * The only thing in the program that two runs do not have in common; it is kept, see
     * {@code ampersheet.issue.SeedFile}.
     */
    public static Secret drawn() {
        SecureRandom random = new SecureRandom();
        StringBuilder drawn = new StringBuilder();
        for (int i = 0; i < CHARACTERS; i++) {
            drawn.append(SheetId.ALPHABET.charAt(random.nextInt(SheetId.ALPHABET.length())));
        }
        return new Secret(drawn.toString());
    }

    /** Empty unless the text is such a secret, and blanks around it. */
    public static Optional<Secret> read(String text) {
        String stripped = text.strip();
        boolean fits =
                stripped.length() == CHARACTERS && stripped.chars().allMatch(c -> SheetId.ALPHABET.indexOf(c) >= 0);
        return fits ? Optional.of(new Secret(stripped)) : Optional.empty();
    }

    public String characters() {
        return characters;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Secret secret && secret.characters.equals(characters);
    }

    @Override
    public int hashCode() {
        return characters.hashCode();
    }

    /** Says nothing, so that no message tells it by mistake. */
    @Override
    public String toString() {
        return "a secret";
    }
}
