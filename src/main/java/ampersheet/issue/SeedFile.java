package ampersheet.issue;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.sheet.Plan;
import ampersheet.sheet.Secret;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * The seed of a plan that names none: drawn when the plan is first issued, and kept in a file beside it,
 * {@code plan.yaml.seed}. The title alone would not do, since it is printed on every sheet.
 */
public final class SeedFile {
    /** What its name ends in, behind that of the plan. */
    public static final String ENDING = ".seed";

    private static final long LARGEST = 2_000;

    private SeedFile() {}

    /**
     * A plan that is about to be issued, and how it came by its seed.
     *
     * @param drawn where its seed was put, if it was drawn now
     * @param guessable whether its title stays its seed, because sheets of it were printed so
     */
    public record Seeded(Plan plan, Optional<Path> drawn, boolean guessable) {}

    /**
     * The plan as it was issued, if it was. A plan without a seed and without a seed file was issued by an earlier
     * version, by which the title was the seed.
     *
     * @param file in which the plan stands
     * @throws DiagnosticException if the seed file cannot be read
     */
    public static Plan known(Plan plan, Path file) {
        if (!(plan.seeding() instanceof Plan.Seeding.Title)) {
            return plan;
        }
        return read(beside(file)).map(plan::drawnWith).orElse(plan);
    }

    /**
     * The plan with the seed that everything is made of that is handed out; drawn, if there is none yet.
     *
     * @param issuedByTitle whether sheets were printed by an earlier version, by which the title was the seed; these
     *     stay
     * @throws DiagnosticException if the seed file cannot be read, or none can be written
     */
    public static Seeded issued(Plan plan, Path file, Predicate<Plan> issuedByTitle) {
        Plan known = known(plan, file);
        if (!(known.seeding() instanceof Plan.Seeding.Title)) {
            return new Seeded(known, Optional.empty(), false);
        }
        if (issuedByTitle.test(plan)) {
            return new Seeded(plan, Optional.empty(), true);
        }
        Path beside = beside(file);
        Secret secret = Secret.drawn();
        if (write(beside, secret)) {
            return new Seeded(plan.drawnWith(secret), Optional.of(beside), false);
        }
        return new Seeded(known(plan, file), Optional.empty(), false);
    }

    /** Beside the file itself, whatever links lead to it, so that all who issue the plan have one seed. */
    private static Path beside(Path file) {
        try {
            Path real = file.toRealPath();
            return real.resolveSibling(real.getFileName() + ENDING);
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(file, failure));
        }
    }

    private static Optional<Secret> read(Path file) {
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        Place place = Place.inFile(Output.shown(file));
        try {
            if (Files.isRegularFile(file) && Files.size(file) <= LARGEST) {
                String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
                Optional<Secret> secret = text.lines()
                        .filter(line -> !line.startsWith("#") && !line.isBlank())
                        .findFirst()
                        .flatMap(Secret::read);
                if (secret.isPresent()) {
                    return secret;
                }
            }
        } catch (IOException failure) {
            throw new DiagnosticException(Diagnostic.error(
                    place,
                    say("folder.seed.unreadable", "reason", String.valueOf(failure.getMessage())),
                    say("folder.seed.unreadable.expected"),
                    say("folder.seed.unreadable.next")));
        }
        throw new DiagnosticException(Diagnostic.error(
                place,
                say("folder.seed.foreign"),
                say("folder.seed.foreign.expected"),
                say("folder.seed.foreign.next")));
    }

    /** @return false if another run was first */
    private static boolean write(Path file, Secret secret) {
        String plan = file.getFileName().toString().replace(ENDING, "");
        String text = "# " + say("folder.seed.remark", "plan", plan).replace("\n", "\n# ") + "\n" + secret.characters()
                + "\n";
        try {
            Path part = Files.createTempFile(file.toAbsolutePath().getParent(), ".ampersheet-seed-", ".part");
            try {
                Files.writeString(part, text, StandardCharsets.UTF_8);
                WholeFile.keep(part);
                claim(part, file);
                WholeFile.keepNames(file.toAbsolutePath().getParent());
            } finally {
                Files.deleteIfExists(part);
            }
            return true;
        } catch (FileAlreadyExistsException other) {
            return false;
        } catch (IOException | ReadOnlyFileSystemException failure) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(Output.shown(file)),
                    say("folder.seed.unkept"),
                    say("folder.seed.unkept.expected"),
                    // With more room around it than sentences leave.
                    say("folder.seed.unkept.next", "line", " seed: " + secret.characters() + " ")));
        }
    }

    /** Takes the name only if nobody has it yet; a link does so at one stroke. */
    private static void claim(Path part, Path file) throws IOException {
        try {
            Files.createLink(file, part);
        } catch (UnsupportedOperationException noLinks) {
            Files.move(part, file);
        }
    }
}
