package ampersheet.issue;

import static ampersheet.source.Told.say;

import ampersheet.language.Language;
import ampersheet.page.HomeworkPage;
import ampersheet.problem.Tally;
import ampersheet.render.html.HtmlPage;
import ampersheet.render.markdown.MarkdownPage;
import ampersheet.render.pdf.ExtraFont;
import ampersheet.sheet.ArchivedSheet;
import ampersheet.sheet.ClassIndex;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.IssuedArchive;
import ampersheet.sheet.PagedIndex;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetId;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** A plan and a class become sheets, keys apart from them, and an index page. */
public final class Issue {
    static final String INDEX = "index.html";
    private static final String SHEETS = "sheets";
    static final String KEYS = "keys";
    private static final String HOMEWORK = "homework";
    /** Seats after which a large class is noted as made so far. */
    static final int STEP = 50;

    private static final int STEPS_AT_ONCE = 2;

    private Issue() {}

    /**
     * What was issued.
     *
     * @param problemsPerSheet at most: of a plan that is taken again, not everybody gets all
     * @param written files that were new or changed; the others already held what they should
     * @param tallies draws tried and refused, by template
     * @param left what lies in the folder from earlier runs and was not written now
     */
    public record Issued(
            int sheets,
            int problemsPerSheet,
            int written,
            Path index,
            Path archive,
            Map<String, Tally> tallies,
            LeftOver left) {}

    /**
     * Sheets, keys and homework pages of earlier runs.
     *
     * @param issue by which the IDs of the sheets issued now begin
     * @param byIssue names within the folder, by what the IDs on them begin with, or "unknown"
     * @param removed whether they were removed
     */
    public record LeftOver(String issue, Map<String, List<String>> byIssue, boolean removed) {
        public int files() {
            return byIssue.values().stream().mapToInt(List::size).sum();
        }

        /** Whether it is known which issue the files under this name belong to. */
        public static boolean isKnown(String issue) {
            return Manifest.isKnown(issue);
        }
    }

    /**
     * Writes {@code sheets/seat-007.html} and {@code .md}, the same in {@code keys/}, an archive of all that the sheets
     * were made from, {@code keys/issued-A7K3M.zip}, {@code index.html}, {@code answer-grid-A7K3M.csv} to type answers
     * from paper into, and {@code manifest.csv}, which tells what belongs to which issue. Each file is whole or not
     * there, and the same inputs give the same bytes, so that a run may be repeated or taken up again.
     *
     * @throws ampersheet.diagnostic.DiagnosticException with all faults of plan and templates, and if a template has
     *     too few variants for the class, before anything is written; or if a file cannot be written
     */
    public static Issued issue(Plan plan, Roster roster, TemplateLibrary templates, Path out, int threads) {
        return issue(plan, roster, templates, out, threads, false);
    }

    /** @param homework whether each learner also gets a page to answer in, {@code homework/seat-007.html} */
    public static Issued issue(
            Plan plan, Roster roster, TemplateLibrary templates, Path out, int threads, boolean homework) {
        return issue(ProblemSet.of(plan, templates), roster, out, threads, new Besides(homework, false));
    }

    /**
     * What each learner gets besides sheet and key.
     *
     * @param homework a page to answer in, {@code homework/seat-007.html}
     * @param pdf sheet and key for a printer, {@code sheets/seat-007.pdf} and {@code keys/seat-007.pdf}
     * @param drawings each figure as a file beside the Markdown, which shows it, {@code sheets/seat-007-1.svg}
     * @param extra font for names on PDFs in letters that the shipped ones lack
     */
    public record Besides(boolean homework, boolean pdf, boolean drawings, Optional<ExtraFont> extra) {
        public Besides(boolean homework, boolean pdf) {
            this(homework, pdf, false, Optional.empty());
        }

        /** In words for a program: what makes a difference to what is written. */
        String told() {
            return "homework " + homework + ", PDF " + pdf + ", drawings " + drawings + ", font "
                    + extra.map(ExtraFont::name).orElse("none");
        }
    }

    /** @param set with the bins of the workshop, if the sheets shall be built */
    public static Issued issue(ProblemSet set, Roster roster, Path out, int threads, Besides besides) {
        return issue(set, roster, out, threads, besides, Output.Terms.NONE);
    }

    /** The same, on these terms with what is found in the folder. */
    public static Issued issue(
            ProblemSet set, Roster learners, Path out, int threads, Besides besides, Output.Terms terms) {
        Roster roster = set.sitting(learners);
        if (besides.pdf()) {
            Handouts.requirePrintable(set.plan(), roster, besides.extra());
        }
        SheetMaker maker = new SheetMaker(set);
        maker.prepare(roster);
        Path archive = archive(set, out);
        try (Output output = Output.folder(out, terms)) {
            IssuedFolder folder = IssuedFolder.open(output, out, code(set), files(roster, besides, archive));
            Run run = new Run(maker, roster, out, output, new Keeping(set, archive));
            folder.begin();
            SliceParts parts = new SliceParts(set, roster, out, besides);
            int steps = (roster.seats().size() + STEP - 1) / STEP;
            Issued issued;
            if (steps <= STEPS_AT_ONCE) {
                List<Written> seats = run.seats(roster.seats(), threads, besides, terms.progress());
                issued = run.end(seats::forEach, files(seats), maker.tallies(), folder);
            } else {
                Steps all = new Steps(new Slice(1, 1), steps);
                int files = all.make(run, parts, threads, terms.progress());
                issued = run.end(to -> all.each(run, parts, to), files, maker.tallies(), folder);
            }
            parts.removeAll(output);
            return issued;
        }
    }

    static int files(List<Written> seats) {
        return seats.stream().mapToInt(Written::files).sum();
    }

    /** What was made of each seat, in their order. */
    @FunctionalInterface
    interface Made {
        void each(Consumer<Written> to);
    }

    /** What a class, or a slice of it, is written with. */
    record Run(SheetMaker maker, Roster roster, Path out, Output output, Keeping keeping) {

        /** Sheets, keys and what else each of these seats gets. */
        List<Written> seats(List<Roster.Seat> seats, int threads, Besides besides, Progress progress) {
            return InOrder.map(seats, threads, seat -> {
                Sheet sheet = maker.sheet(seat.number());
                ArchivedSheet kept = keeping.keep(sheet);
                Written written = issueSeat(sheet, seat, out, besides, output).keeping(kept);
                progress.made(say("folder.making.sheets"), seats.size());
                return written;
            });
        }

        /** What is about all of them. @param files of seats that changed */
        Issued end(Made seats, int files, Map<String, Tally> tallies, IssuedFolder folder) {
            try (WholeClass whole = new WholeClass(this)) {
                seats.each(whole::add);
                return whole.end(files, tallies, folder);
            }
        }
    }

    /** Where {@link #issue} keeps what sheets were made from. */
    public static Path archive(ProblemSet set, Path out) {
        return out.resolve(KEYS).resolve(IssuedArchive.fileName(set));
    }

    /** By which all sheet IDs of a set begin. */
    static String code(ProblemSet set) {
        return set.id(1).set();
    }

    /** By their names within the folder. */
    static Set<String> files(Roster roster, Besides besides, Path archive) {
        Set<String> files = files(roster.seats(), besides);
        files.addAll(List.of(INDEX, KEYS + "/" + archive.getFileName()));
        for (int page = 1; page <= PagedIndex.pages(roster.seats().size()); page++) {
            files.add(PagedIndex.fileName(INDEX, page));
        }
        return files;
    }

    /** Those of these seats, but for figures, which nobody can name before they are drawn. */
    static Set<String> files(List<Roster.Seat> seats, Besides besides) {
        Set<String> files = new NamesBySeat();
        for (Roster.Seat seat : seats) {
            String name = "/" + fileName(seat.number());
            for (String ending : besides.pdf() ? List.of(".html", ".md", ".pdf") : List.of(".html", ".md")) {
                files.addAll(List.of(SHEETS + name + ending, KEYS + name + ending));
            }
            if (besides.homework()) {
                files.add(HOMEWORK + name + ".html");
            }
        }
        return files;
    }

    /** What was made of a seat, and how many files of it changed. */
    record Written(ClassIndex.Line line, int files, List<String> figures, Optional<ArchivedSheet> kept) {
        Written keeping(ArchivedSheet sheet) {
            return new Written(line, files, figures, Optional.of(sheet));
        }
    }

    /** A sheet or a key in both forms: how many files changed, and which hold figures. */
    private record Both(int files, List<String> figures) {
        Both and(Both other) {
            return new Both(
                    files + other.files,
                    Stream.concat(figures.stream(), other.figures.stream()).toList());
        }
    }

    static List<ClassIndex.Link> links(String name, Besides besides, Language language) {
        List<ClassIndex.Link> links = new ArrayList<>();
        links.add(new ClassIndex.Link(
                language.say("problem.file.sheet"),
                language.say("problem.file.sheet.link"),
                SHEETS + "/" + name + ".html"));
        if (besides.pdf()) {
            links.add(new ClassIndex.Link(
                    language.say("problem.file.sheet-to-print"),
                    language.say("problem.file.sheet-to-print.link"),
                    SHEETS + "/" + name + ".pdf"));
        }
        if (besides.homework()) {
            links.add(new ClassIndex.Link(
                    language.say("problem.file.homework"),
                    language.say("problem.file.homework.link"),
                    HOMEWORK + "/" + name + ".html"));
        }
        links.add(new ClassIndex.Link(
                language.say("problem.file.key"), language.say("problem.file.key.link"), KEYS + "/" + name + ".html"));
        if (besides.pdf()) {
            links.add(new ClassIndex.Link(
                    language.say("problem.file.key-to-print"),
                    language.say("problem.file.key-to-print.link"),
                    KEYS + "/" + name + ".pdf"));
        }
        return links;
    }

    private static Written issueSeat(Sheet sheet, Roster.Seat seat, Path out, Besides besides, Output output) {
        String name = fileName(seat.number());
        int pages = besides.homework()
                ? write(output, out.resolve(HOMEWORK).resolve(name + ".html"), HomeworkPage.render(sheet, seat.name()))
                : 0;
        int prints = besides.pdf() ? Handouts.beside(sheet, seat.name(), out, name, output, besides.extra()) : 0;
        boolean drawings = besides.drawings();
        Both both = writeBoth(Composer.sheet(sheet, seat.name()), out, SHEETS, name, drawings, output)
                .and(writeBoth(Composer.key(sheet, seat.name()), out, KEYS, name, drawings, output));
        return new Written(
                ClassIndex.line(seat, sheet, links(name, besides, sheet.plan().language())),
                pages + prints + both.files(),
                both.figures(),
                Optional.empty());
    }

    /**
     * A sheet and its key again, under the names that {@link #issue} gives them, on these terms with what is found in
     * the folder, and with drawings if they lie there; the number of files that changed.
     */
    public static int again(Document sheet, Document key, SheetId id, Path out, Output.Terms terms) {
        String name = fileName(id.seat());
        Set<String> files = new TreeSet<>();
        List.of(SHEETS, KEYS)
                .forEach(folder -> List.of(".html", ".md").forEach(ending -> files.add(folder + "/" + name + ending)));
        try (Output output = Output.folder(out, terms)) {
            IssuedFolder folder = IssuedFolder.open(output, out, id.set(), files);
            folder.beginAgain();
            boolean drawings = Files.exists(out.resolve(SHEETS).resolve(name + "-1.svg"));
            Both both = writeBoth(sheet, out, SHEETS, name, drawings, output)
                    .and(writeBoth(key, out, KEYS, name, drawings, output));
            folder.endAgain(both.figures());
            output.finish();
            return both.files();
        }
    }

    private static Both writeBoth(
            Document document, Path out, String in, String name, boolean drawings, Output output) {
        Path folder = out.resolve(in);
        MarkdownPage.Illustrated page = drawings
                ? MarkdownPage.illustrated(document, name)
                : new MarkdownPage.Illustrated(MarkdownPage.render(document), Map.of());
        int files = write(output, folder.resolve(name + ".html"), HtmlPage.render(document));
        for (Map.Entry<String, String> figure : page.figures().entrySet()) {
            files += write(output, folder.resolve(figure.getKey()), figure.getValue());
        }
        files += write(output, folder.resolve(name + ".md"), page.text());
        return new Both(
                files,
                page.figures().keySet().stream().map(file -> in + "/" + file).toList());
    }

    private static int write(Output output, Path file, String text) {
        return output.write(file, text) ? 1 : 0;
    }

    public static String fileName(int seat) {
        return Roster.fileName(seat);
    }
}
