package ampersheet.sheet;

import ampersheet.problem.Inventory;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * An archive of issued sheets that has been read.
 *
 * @param file as its reader knows it
 * @param templates as they were
 * @param sheets by seat
 */
public record ArchivedClass(
        String file, Plan plan, Optional<Inventory> parts, TemplateLibrary templates, List<ArchivedSheet> sheets) {
    public ArchivedClass {
        Map<Integer, ArchivedSheet> bySeat = new TreeMap<>();
        sheets.forEach(sheet -> bySeat.put(sheet.id().seat(), sheet));
        sheets = List.copyOf(bySeat.values());
    }

    /**
     * Reads an archive, which may have come from anywhere: nothing of it is written to disk, and all sizes are limited.
     *
     * @throws ampersheet.diagnostic.DiagnosticException with what is wrong with it
     */
    public static ArchivedClass read(Path file) {
        return new ArchiveReader(file).read();
    }

    /**
     * What an archive's sheets are of, without reading them.
     *
     * @throws ampersheet.diagnostic.DiagnosticException with what is wrong with it
     */
    public static Plan plan(Path file) {
        return new ArchiveReader(file).readPlan();
    }

    /** The bins from which they were drawn, if there were any. */
    static Optional<Inventory> bins(Path file) {
        return new ArchiveReader(file).readBins();
    }

    /**
     * What an archive's sheets are of, with the templates and the bins that lie in it.
     *
     * @throws ampersheet.diagnostic.DiagnosticException with what is wrong with it
     */
    static ProblemSet set(Path file) {
        return new ArchiveReader(file).readSet();
    }

    Optional<ArchivedSheet> sheet(int seat) {
        int at = placeOf(seat);
        return at < sheets.size() && sheets.get(at).id().seat() == seat
                ? Optional.of(sheets.get(at))
                : Optional.empty();
    }

    /** Where this seat is among the sheets, or would be. */
    private int placeOf(int seat) {
        int least = 0;
        int most = sheets.size();
        while (least < most) {
            int middle = (least + most) / 2;
            if (sheets.get(middle).id().seat() < seat) {
                least = middle + 1;
            } else {
                most = middle;
            }
        }
        return least;
    }

    /** Any of its IDs; all begin alike. */
    SheetId anyId() {
        return sheets.get(0).id();
    }
}
