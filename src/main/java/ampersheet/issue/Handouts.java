package ampersheet.issue;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.render.pdf.ExtraFont;
import ampersheet.render.pdf.PdfBook;
import ampersheet.render.pdf.PrintableLetters;
import ampersheet.render.pdf.Profile;
import ampersheet.sheet.CheckLetters;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.IssuedArchive;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateLibrary;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;

/** A plan and a number of learners become one PDF to be printed, and where wanted another one with the keys. */
public final class Handouts {
    private Handouts() {}

    public enum Keys {
        /** The answers of the whole class on a few leaves, behind all sheets. */
        GRID,
        /** Behind all sheets, each on leaves of its own. */
        LAST,
        /** In a file beside, named after it. */
        APART,
        NONE
    }

    /**
     * How the handouts are to look.
     *
     * @param paper if folded, every sheet becomes a booklet, and what is not for learners goes into a file beside
     * @param host whether a page for whoever runs the evening comes first
     * @param sharedExamples whether worked examples are printed once for all
     * @param extra font for names in letters that the shipped ones lack
     */
    public record Wish(
            Document.Paper paper,
            Profile profile,
            Keys keys,
            boolean checkLetters,
            boolean host,
            boolean sharedExamples,
            Optional<ExtraFont> extra) {
        public Wish(Document.Paper paper, Profile profile, Keys keys, boolean checkLetters) {
            this(paper, profile, keys, checkLetters, false, false, Optional.empty());
        }

        /** The same sheets and nothing besides them. */
        public Wish onlySheets(boolean letters) {
            return new Wish(paper, profile, Keys.NONE, letters, false, sharedExamples, extra);
        }

        /** Whether there is a file for the host's eyes only. */
        boolean hasKeysApart() {
            return keys == Keys.APART || paper.isFolded() && (host || keys != Keys.NONE);
        }
    }

    /**
     * What was printed.
     *
     * @param sides of paper in both files, empty ones included
     * @param files those with sheets and, where apart, with keys
     * @param grid an empty table beside them, to type answers from paper into
     * @param archive of all that the sheets were made from
     * @param left keys of an earlier run under the name that this run's would have, if it wrote none there
     */
    public record Printed(
            int sheets, int sides, List<Path> files, Path grid, Path archive, int written, Optional<Path> left) {
        public Printed {
            files = List.copyOf(files);
        }
    }

    /**
     * Each file is whole or not there; the same inputs give the same bytes.
     *
     * @throws ampersheet.diagnostic.DiagnosticException with all faults of plan and templates, if a template has too
     *     few variants, if a name has letters that cannot be printed, or if a file cannot be written
     */
    public static Printed print(Plan plan, Roster roster, TemplateLibrary templates, Path out, Wish wish) {
        return print(ProblemSet.of(plan, templates), roster, out, wish);
    }

    /** @param set with the bins of the workshop, if the sheets shall be built */
    public static Printed print(ProblemSet set, Roster roster, Path out, Wish wish) {
        return print(set, roster, out, wish, Output.Terms.NONE);
    }

    /** The same, on these terms with what is found beside the file. */
    public static Printed print(ProblemSet set, Roster roster, Path out, Wish wish, Output.Terms terms) {
        return print(set, roster, out, wish, terms, count -> true);
    }

    /**
     * The same, once it is known how much paper it takes.
     *
     * @param goOn whether to write anything
     */
    public static Printed print(
            ProblemSet set, Roster learners, Path out, Wish wish, Output.Terms terms, Predicate<PaperCount> goOn) {
        Roster roster = set.sitting(learners);
        Plan plan = set.plan();
        requirePrintable(plan, roster, wish.extra());
        SheetMaker maker = new SheetMaker(set);
        maker.prepare(roster);
        boolean apart = wish.hasKeysApart();
        try (Output output = Output.file(out, ".pdf", terms);
                PdfBook sheets = sheets(plan, wish, output.folder());
                PdfBook keys = new PdfBook(
                        plan.language().say("sheet.key.title", "title", plan.title()),
                        plan.language(),
                        wish.profile(),
                        wish.extra(),
                        output.folder())) {
            Path archive = archiveBeside(out, set);
            output.require(apart ? List.of(out, keysBeside(out), archive) : List.of(out, archive));
            Keeping keeping = new Keeping(set, archive);
            LaidOut laidOut = new LaidOut(maker, wish, sheets, apart ? keys : sheets, keeping);
            roster.seats().forEach(seat -> {
                laidOut.add(seat);
                terms.progress()
                        .made(say("folder.making.handouts"), roster.seats().size());
            });
            PaperCount count = laidOut.finish(output.folder());
            List<Path> files = new ArrayList<>(List.of(out));
            int written = 0;
            if (goOn.test(count)) {
                written = output.write(out, sheets::write) ? 1 : 0;
                if (apart) {
                    files.add(keysBeside(out));
                    written += output.write(keysBeside(out), keys::write) ? 1 : 0;
                }
                written += AnswerGrid.write(laidOut.grid(), gridBeside(out, set), output);
                written += keeping.write(laidOut.kept(), output);
                output.finish();
            } else {
                files.clear();
            }
            return new Printed(
                    roster.seats().size(),
                    count.sides(),
                    files,
                    gridBeside(out, set),
                    keeping.file(),
                    written,
                    apart ? Optional.empty() : left(out));
        }
    }

    private static PdfBook sheets(Plan plan, Wish wish, Path workingFolder) {
        return wish.paper().isFolded()
                ? PdfBook.ofBooklets(plan.title(), plan.language(), wish.extra(), workingFolder)
                : new PdfBook(plan.title(), plan.language(), wish.profile(), wish.extra(), workingFolder);
    }

    /**
     * The paper that it would take; nothing is written.
     *
     * @throws DiagnosticException as for printing
     */
    public static PaperCount count(ProblemSet set, Roster roster, Wish wish) {
        List<PaperCount> counted = new ArrayList<>();
        Path folder = null;
        try {
            folder = Files.createTempDirectory("ampersheet-count-");
            print(set, roster, folder.resolve("counted.pdf"), wish, Output.Terms.NONE, paper -> {
                counted.add(paper);
                return false;
            });
            return counted.get(0);
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(Path.of("counted.pdf"), failure));
        } finally {
            if (folder != null) {
                folder.toFile().delete();
            }
        }
    }

    /**
     * Looks at title and names before anything is made.
     *
     * @throws DiagnosticException naming everybody whose name cannot be printed
     */
    static void requirePrintable(Plan plan, Roster roster, Optional<ExtraFont> extra) {
        List<Diagnostic> faults = new ArrayList<>();
        try (PrintableLetters letters = new PrintableLetters(extra)) {
            refuse(
                    letters.missingIn(plan.title()),
                    plan.file(),
                    missing -> say("folder.letters.title", "letters", missing),
                    faults);
            roster.seats()
                    .forEach(seat -> refuse(
                            letters.missingIn(seat.name()),
                            say("folder.letters.class-list"),
                            missing -> say(
                                    "folder.letters.name",
                                    "seat",
                                    Integer.toString(seat.number()),
                                    "name",
                                    seat.name(),
                                    "letters",
                                    missing),
                            faults));
        }
        if (!faults.isEmpty()) {
            throw new DiagnosticException(faults);
        }
    }

    private static void refuse(Set<String> missing, String file, UnaryOperator<String> told, List<Diagnostic> faults) {
        if (!missing.isEmpty()) {
            faults.add(Diagnostic.error(
                    Place.inFile(file),
                    told.apply(String.join(" ", missing)),
                    say("folder.letters.expected"),
                    say("folder.letters.next")));
        }
    }

    /** One learner's sheet and key as files of their own; the number of files that changed. */
    static int beside(Sheet sheet, String learner, Path out, String name, Output output, Optional<ExtraFont> extra) {
        Document handout = CheckLetters.addedTo(Composer.sheet(sheet, learner), sheet);
        return alone(handout, out.resolve("sheets").resolve(name + ".pdf"), output, extra)
                + alone(Composer.key(sheet, learner), out.resolve("keys").resolve(name + ".pdf"), output, extra);
    }

    private static int alone(Document document, Path file, Output output, Optional<ExtraFont> extra) {
        try (PdfBook book =
                new PdfBook(document.title(), document.language(), Profile.COMPACT, extra, output.folder())) {
            book.add(document);
            return output.write(file, book::write) ? 1 : 0;
        }
    }

    /** One learner's sheet as it is printed, while nothing is written. */
    public static byte[] printed(Sheet sheet, String learner, Optional<ExtraFont> extra) {
        Roster.Seat seat = new Roster.Seat(1, learner);
        requirePrintable(sheet.plan(), new Roster(List.of(seat)), extra);
        Document handout = CheckLetters.addedTo(Composer.sheet(sheet, learner), sheet);
        Path folder = null;
        try {
            folder = Files.createTempDirectory("ampersheet-print-");
            try (PdfBook book = new PdfBook(handout.title(), handout.language(), Profile.COMPACT, extra, folder)) {
                book.add(handout);
                ByteArrayOutputStream out = new ByteArrayOutputStream();
                book.write(out);
                return out.toByteArray();
            }
        } catch (IOException failure) {
            throw new DiagnosticException(WholeFile.told(Path.of("sheet.pdf"), failure));
        } finally {
            if (folder != null) {
                folder.toFile().delete();
            }
        }
    }

    /** {@code tonight.pdf} has its keys in {@code tonight-keys.pdf}. */
    static Path keysBeside(Path out) {
        return out.resolveSibling(stem(out) + "-keys.pdf");
    }

    private static Optional<Path> left(Path out) {
        return Optional.of(keysBeside(out)).filter(Files::exists);
    }

    /** Of {@code tonight.pdf} it is {@code tonight-issued-A7K3M.zip}. */
    public static Path archiveBeside(Path out, ProblemSet set) {
        return out.resolveSibling(stem(out) + "-" + IssuedArchive.fileName(set));
    }

    private static Path gridBeside(Path out, ProblemSet set) {
        return out.resolveSibling(stem(out) + "-" + AnswerGrid.name(Issue.code(set)));
    }

    private static String stem(Path out) {
        String name = out.getFileName().toString();
        return name.endsWith(".pdf") ? name.substring(0, name.length() - ".pdf".length()) : name;
    }
}
