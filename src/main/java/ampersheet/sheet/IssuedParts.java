package ampersheet.sheet;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.IssuedPart.Places;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * What lies out of a course, or of a plan that is taken again, as far as it is known. Where each part begins follows
 * from the course as it is written, and that may have changed since some were issued: so what would meet numbers that
 * lie out begins behind them, and what lies out itself stays as it was issued.
 */
public final class IssuedParts {
    public static final IssuedParts NONE = new IssuedParts(List.of(), List.of());

    private final List<IssuedPart> parts;
    private final List<Path> unread;

    private IssuedParts(List<IssuedPart> parts, List<Path> unread) {
        this.parts = List.copyOf(parts);
        this.unread = List.copyOf(unread);
    }

    /**
     * What archives tell.
     *
     * @param archives of whatever was issued
     * @param seed of the course or the plan; what has another one draws in another order
     */
    public static IssuedParts read(List<Path> archives, String seed, TemplateLibrary library) {
        List<IssuedPart> parts = new ArrayList<>();
        List<Path> unread = new ArrayList<>();
        for (Path archive : archives) {
            try {
                IssuedPart.read(archive, seed, library).ifPresent(parts::add);
            } catch (DiagnosticException damaged) {
                unread.add(archive); // whoever marks by it is told why
            }
        }
        return new IssuedParts(parts, unread);
    }

    /** Archives that could not be read, so that nothing keeps clear of what they hold. */
    public List<Path> unread() {
        return unread;
    }

    IssuedParts and(List<IssuedPart> more) {
        return new IssuedParts(Stream.concat(parts.stream(), more.stream()).toList(), unread);
    }

    IssuedParts only(Predicate<IssuedPart> which) {
        return new IssuedParts(parts.stream().filter(which).toList(), unread);
    }

    /**
     * A part that meets nothing else.
     *
     * @param moved whether it begins elsewhere than the course as written would have it begin
     */
    record Apart(ProblemSet set, boolean moved) {}

    /** A part as it was issued; if it was not, behind what it would meet, and with IDs that nothing else has. */
    Apart apart(Plan computed, TemplateLibrary library) {
        ProblemSet set = ProblemSet.of(computed, library);
        Optional<IssuedPart> issued = issued(computed);
        if (issued.isPresent()) {
            Portion portion = issued.get().plan().portion();
            return new Apart(
                    portion.equals(computed.portion()) ? set : ProblemSet.of(computed.with(portion), library), false);
        }
        Map<String, Integer> taken = behind(set);
        boolean moved = !taken.equals(computed.portion().taken());
        if (moved) {
            set = ProblemSet.of(computed.with(computed.portion().behind(taken)), library);
        }
        Set<String> codes = new TreeSet<>();
        parts.forEach(part -> codes.add(part.code()));
        while (codes.contains(IssuedPart.code(set))) {
            set = ProblemSet.of(set.plan().with(set.plan().portion().varied()), library);
        }
        return new Apart(set, moved);
    }

    private Optional<IssuedPart> issued(Plan computed) {
        List<IssuedPart> same =
                parts.stream().filter(part -> part.isSameAs(computed)).toList();
        return same.stream()
                .filter(part -> part.plan().portion().equals(computed.portion()))
                .findFirst()
                .or(() -> same.stream().findFirst());
    }

    /** What goes before a part; an earlier edition of the same part may have what this one has. */
    private Map<String, Integer> behind(ProblemSet set) {
        List<IssuedPart> others = new ArrayList<>(
                parts.stream().filter(part -> !part.isEditionOf(set.plan())).toList());
        Map<String, Integer> taken = new TreeMap<>(set.plan().portion().taken());
        IssuedPart.places(set).forEach((source, own) -> {
            List<Places> theirs = others.stream()
                    .map(part -> part.places().get(source))
                    .filter(Objects::nonNull)
                    .toList();
            if (theirs.stream().anyMatch(own::meets)) {
                taken.put(source, theirs.stream().mapToInt(Places::end).max().orElseThrow());
            }
        });
        return taken;
    }
}
