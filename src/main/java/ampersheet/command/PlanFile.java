package ampersheet.command;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.issue.SeedFile;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;
import java.util.function.Predicate;

/** The plan named on a command line, with the seed that its sheets have. */
final class PlanFile {
    private PlanFile() {}

    /** For judging: the plan as it was issued. */
    static Plan issued(Path file) {
        return SeedFile.known(read(file), file);
    }

    /**
     * For handing out: a plan without a seed gets one that nobody can guess, and keeps it.
     *
     * @param issuedByTitle whether an earlier version issued it to the same place, when the title was the seed
     */
    static Plan toHandOut(Path file, Plan read, Streams streams, Predicate<Plan> issuedByTitle) {
        SeedFile.Seeded seeded = SeedFile.issued(read, file, issuedByTitle);
        seeded.drawn()
                .ifPresent(beside -> streams.err()
                        .print("The plan names no seed. One was drawn for it, which nobody can guess, " + "and kept in "
                                + InputFile.shown(beside)
                                + ": leave that file beside the plan, and hand it to no learner.\n"));
        if (seeded.guessable()) {
            streams.err()
                    .print(Diagnostic.warning(
                                    Place.inFile(InputFile.shown(file)),
                                    "this plan names no seed, and its sheets were issued"
                                            + " with the title as seed. They stay as they are; but whoever writes "
                                            + "the plan down again from a sheet gets everybody's key",
                                    "",
                                    "For the next class name another folder, or write a seed into the plan that "
                                            + "nobody can guess.")
                            .print());
        }
        return seeded.plan();
    }

    /** The same for what is no sheet; a plan that does not fit its templates gets no seed. */
    static Plan toHandOut(Path file, Streams streams, TemplateLibrary templates) {
        return toHandOut(file, read(file), streams, plan -> {
            ProblemSet.of(plan, templates);
            return false;
        });
    }

    /** As it is written, without a seed that lies beside it. */
    static Plan read(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        return PlanReader.read(InputFile.shown(file), InputFile.read(file, "a plan"), PlanReader.Beside.in(folder));
    }
}
