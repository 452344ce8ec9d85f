package ampersheet.issue;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.ArchiveTables;
import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.ArchivedSheet;
import ampersheet.sheet.IssuedArchive;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Keeps what is issued in an archive beside the keys. Its name begins as the sheet IDs do, so that another version of
 * the templates never takes the place of the archive by which printed sheets are marked; a smaller class does not,
 * either: the sheets of the others stay in it. May be used by several threads.
 */
final class Keeping {
    private final ProblemSet set;
    private final Path file;
    private final Optional<ArchivedClass> earlier;

    /** @throws DiagnosticException if there is such an archive already and it cannot be read */
    Keeping(ProblemSet set, Path file) {
        this.set = set;
        this.file = file;
        this.earlier = Files.exists(file) ? Optional.of(ArchivedClass.read(file)) : Optional.empty();
    }

    Path file() {
        return file;
    }

    /** @throws DiagnosticException if the archive holds other numbers under the sheet's ID */
    ArchivedSheet keep(Sheet sheet) {
        return keep(ArchivedSheet.of(sheet, set.places(sheet.id().seat())));
    }

    /** The same of a sheet that was made elsewhere. */
    ArchivedSheet keep(ArchivedSheet sheet) {
        IssuedArchive.requireSameNumbers(earlier, sheet);
        return sheet;
    }

    /** The number of files that changed. */
    int write(List<ArchivedSheet> sheets, Output output) {
        return output.write(file, IssuedArchive.of(set, sheets, earlier)::write) ? 1 : 0;
    }

    /** The same for sheets that come one after another. */
    Writing writing(Output output) {
        return new Writing(output);
    }

    /**
     * The archive of a class that is never in memory as a whole: its tables lie in working files until all are told.
     */
    final class Writing implements AutoCloseable {
        private final Output output;
        private final Map<String, Path> places = new TreeMap<>();
        private final Map<String, Writer> open = new TreeMap<>();
        private final ArchiveTables tables;
        private final Iterator<ArchivedSheet> before;
        private Optional<ArchivedSheet> next;

        private Writing(Output output) {
            this.output = output;
            this.before = earlier.map(ArchivedClass::sheets).orElse(List.of()).iterator();
            this.next = nextBefore();
            try {
                for (String table : IssuedArchive.TABLES) {
                    Path place = output.working();
                    places.put(table, place);
                    open.put(table, Files.newBufferedWriter(place));
                }
                tables = new ArchiveTables(open);
            } catch (IOException failure) {
                close();
                throw new DiagnosticException(WholeFile.told(file, failure));
            } catch (DiagnosticException noPlace) {
                close();
                throw noPlace;
            }
        }

        private Optional<ArchivedSheet> nextBefore() {
            return before.hasNext() ? Optional.of(before.next()) : Optional.empty();
        }

        /** @param sheet of a later seat than all so far */
        void add(ArchivedSheet sheet) {
            addEarlier(sheet.id().seat());
            write(sheet);
        }

        /** Those of seats that are not made now stay, each in its place. */
        private void addEarlier(int until) {
            while (next.isPresent() && next.get().id().seat() <= until) {
                if (next.get().id().seat() < until) {
                    write(next.get());
                }
                next = nextBefore();
            }
        }

        private void write(ArchivedSheet sheet) {
            try {
                tables.add(sheet);
            } catch (IOException failure) {
                throw new DiagnosticException(WholeFile.told(file, failure));
            }
        }

        /** The number of files that changed. */
        int finish() {
            addEarlier(Integer.MAX_VALUE);
            try {
                for (Writer table : open.values()) {
                    table.close();
                }
                IssuedArchive.requireReadable(file, places);
            } catch (IOException failure) {
                throw new DiagnosticException(WholeFile.told(file, failure));
            }
            return output.write(file, IssuedArchive.of(set, places)::write) ? 1 : 0;
        }

        /** What cannot be closed or taken away keeps none of the others there; the first failure is told. */
        @Override
        public void close() {
            List<DiagnosticException> failures = new ArrayList<>();
            for (Writer table : open.values()) {
                try {
                    table.close();
                } catch (IOException failure) {
                    failures.add(new DiagnosticException(WholeFile.told(file, failure)));
                }
            }
            for (Path place : places.values()) {
                try {
                    output.drop(place);
                } catch (DiagnosticException failure) {
                    failures.add(failure);
                }
            }
            if (!failures.isEmpty()) {
                throw failures.get(0);
            }
        }
    }
}
