package ampersheet.sheet;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.problem.Inventory;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A week of a course or a retake that lies out, or will.
 *
 * @param code with which the IDs of its sheets begin, or would if they did not keep to any bins
 * @param places which variants its seats have, by {@linkplain ProblemSet#sources source}; none where bins say what can
 *     be drawn, since the parts of a course have lanes of their own then
 */
public record IssuedPart(Plan plan, String code, Map<String, Places> places) {
    public IssuedPart {
        places = Map.copyOf(places);
    }

    /**
     * Variants of a template that follow one another in its order.
     *
     * @param first from 0
     * @param end behind the last
     */
    record Places(int first, int end) {
        boolean meets(Places other) {
            return first < other.end && other.first < end;
        }
    }

    /**
     * Reads an archive, without its sheets.
     *
     * @param seed of the course or the plan
     * @param library at hand; where its templates are others by now, those in the archive count
     * @return empty if the archive is of something else
     * @throws DiagnosticException with what is wrong with it
     */
    public static Optional<IssuedPart> read(Path archive, String seed, TemplateLibrary library) {
        Plan plan = ArchivedClass.plan(archive);
        if (plan.portion().isWhole() || !plan.seed().equals(seed)) {
            return Optional.empty();
        }
        String code = IssuedArchive.set(archive.getFileName().toString());
        Optional<Inventory> bins = ArchivedClass.bins(archive);
        return Optional.of(of(known(plan, bins, code, library).orElseGet(() -> ArchivedClass.set(archive))));
    }

    /** What is not known in the library at hand as it was issued is read out of the archive, which takes longer. */
    private static Optional<ProblemSet> known(
            Plan plan, Optional<Inventory> bins, String code, TemplateLibrary library) {
        try {
            return Optional.of(ProblemSet.of(plan, library, bins))
                    .filter(set -> code(set).equals(code));
        } catch (DiagnosticException changed) {
            return Optional.empty(); // the archive has what the library lacks
        }
    }

    /** A part that is made now. */
    public static IssuedPart of(Plan plan, TemplateLibrary library) {
        return of(ProblemSet.of(plan, library));
    }

    static IssuedPart of(ProblemSet set) {
        return set.parts().isPresent()
                ? new IssuedPart(set.plan(), code(ProblemSet.of(set.plan(), set.library())), Map.of())
                : new IssuedPart(set.plan(), code(set), places(set));
    }

    static String code(ProblemSet set) {
        return set.id(1).set();
    }

    /** All that are kept for its seats, whoever came. A plan that stands for itself keeps none. */
    static Map<String, Places> places(ProblemSet set) {
        Map<String, Places> places = new TreeMap<>();
        Portion portion = set.plan().portion();
        if (portion.isWhole()) {
            return places;
        }
        for (String source : set.sources().keySet()) {
            int count = Math.toIntExact(set.taken(source, portion.seats()));
            if (count > 0) {
                int first = portion.taken().getOrDefault(source, 0);
                places.put(source, new Places(first, first + count));
            }
        }
        return places;
    }

    /** Whether a plan is this one, but for the place at which it begins. */
    boolean isSameAs(Plan other) {
        Portion own = plan.portion();
        Portion its = other.portion();
        // Who takes something again sits within the seats that are kept for it.
        boolean seated = own.retake() ? own.only().equals(its.only()) : own.seats() == its.seats();
        return isEditionOf(other)
                && seated
                && PlanFingerprint.of(other.with(own)).equals(PlanFingerprint.of(plan));
    }

    /** Whether it is the same week, or the same time that something is taken again, perhaps with other problems. */
    boolean isEditionOf(Plan other) {
        return plan.portion().week() == other.portion().week()
                && plan.portion().retake() == other.portion().retake()
                && (!other.portion().retake() || plan.title().equals(other.title()));
    }
}
