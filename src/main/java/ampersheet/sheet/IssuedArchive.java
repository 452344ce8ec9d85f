package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.quantity.Unit;
import ampersheet.source.StoredZip;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;

/**
 * What a class was given, in one file that every later version of the program can work from: plan, templates, parts
 * list and the numbers on the sheets. The numbers are kept because a later version may refuse other draws, so that plan
 * and templates alone would lead to others.
 */
public final class IssuedArchive {
    static final String FORM_FILE = "form.txt";
    static final String FORM = "1";
    static final String READ_ME = "READ-ME.txt";
    static final String PLAN = "plan.yaml";
    static final String SEED = "seed.txt";
    static final String PARTS = "parts.csv";
    /** The picture over the sheets, whatever the plan calls it. */
    static final String LOGO = "logo.png";

    static final String SHEETS = "sheets.csv";
    static final String NUMBERS = "numbers.csv";
    static final String ANSWERS = "answers.csv";
    static final String TEMPLATES = "templates";
    static final List<String> SHEETS_HEAD = List.of("sheet", "seat", "problem", "place", "template");
    static final List<String> NUMBERS_HEAD = List.of("sheet", "problem", "name", "value", "unit", "written");
    static final List<String> ANSWERS_HEAD =
            List.of("sheet", "problem", "question", "step", "value", "unit", "written");
    /** Stands in the column of units for what has none. */
    static final String WORD = "word";

    private final Map<String, String> files;
    private final Optional<Logo> logo;

    private IssuedArchive(Map<String, String> files, Optional<Logo> logo) {
        this.files = files;
        this.logo = logo;
    }

    /**
     * The name by which an archive is told from those of the same plan with other templates: it begins as the sheet IDs
     * do.
     */
    public static String fileName(ProblemSet set) {
        SheetId id = set.id(1);
        return "issued-" + id.plan() + id.templates() + ".zip";
    }

    /**
     * @param sheets made of the set; of those that an earlier archive of the same IDs holds, the others are kept
     * @throws DiagnosticException if the earlier archive has other numbers under one of these IDs
     */
    public static IssuedArchive of(ProblemSet set, List<ArchivedSheet> sheets, Optional<ArchivedClass> earlier) {
        Map<Integer, ArchivedSheet> bySeat = new TreeMap<>();
        earlier.ifPresent(
                before -> before.sheets().forEach(sheet -> bySeat.put(sheet.id().seat(), sheet)));
        sheets.forEach(sheet -> bySeat.put(sheet.id().seat(), sheet));
        Map<String, String> files = new LinkedHashMap<>();
        files.put(FORM_FILE, FORM + "\n");
        Optional<Logo> logo = set.plan().heading().logo();
        files.put(READ_ME, ArchiveReadMe.text(set.plan().language(), logo.isPresent()));
        files.put(PLAN, set.plan().written());
        if (set.plan().seeding() instanceof Plan.Seeding.Drawn drawn) {
            files.put(SEED, drawn.secret().characters() + "\n");
        }
        set.parts().ifPresent(parts -> files.put(PARTS, parts.written()));
        Table head = new Table(SHEETS_HEAD);
        Table numbers = new Table(NUMBERS_HEAD);
        Table answers = new Table(ANSWERS_HEAD);
        bySeat.values()
                .forEach(
                        sheet -> sheet.problems().forEach(problem -> add(sheet.id(), problem, head, numbers, answers)));
        files.put(SHEETS, head.toString());
        files.put(NUMBERS, numbers.toString());
        files.put(ANSWERS, answers.toString());
        addTemplates(set, files);
        return new IssuedArchive(Collections.unmodifiableMap(files), logo);
    }

    /** @throws DiagnosticException if an earlier archive has other numbers under the sheet's ID */
    public static void requireSameNumbers(Optional<ArchivedClass> earlier, ArchivedSheet sheet) {
        earlier.ifPresent(before -> before.sheet(sheet.id().seat())
                .filter(known -> !known.hasNumbersOf(sheet))
                .ifPresent(known -> {
                    throw new DiagnosticException(Diagnostic.error(
                            Place.inFile(before.file()),
                            say(
                                    "plan.archive.other-numbers",
                                    "sheet",
                                    sheet.id().toString()),
                            say("plan.archive.other-numbers.expected"),
                            say("plan.archive.other-numbers.next")));
                }));
    }

    private static void add(SheetId id, ArchivedProblem problem, Table head, Table numbers, Table answers) {
        String sheet = id.toString();
        String number = Integer.toString(problem.number());
        head.row(sheet, Integer.toString(id.seat()), number, Integer.toString(problem.place()), problem.template());
        problem.numbers()
                .forEach(given -> numbers.row(
                        sheet,
                        number,
                        given.name(),
                        given.isWord()
                                ? given.written()
                                : ExactNumber.write(given.quantity().value()),
                        given.isWord() ? WORD : symbol(given.unit()),
                        given.written()));
        problem.answers()
                .forEach(answer -> answers.row(
                        sheet,
                        number,
                        answer.question(),
                        answer.step(),
                        ExactNumber.write(answer.value()),
                        symbol(answer.unit()),
                        answer.written()));
    }

    private static String symbol(Unit unit) {
        return unit.symbol().isEmpty() ? "1" : unit.symbol();
    }

    /** Templates from folders with other limits lie in a folder of their own. */
    private static void addTemplates(ProblemSet set, Map<String, String> files) {
        TemplateLibrary library = set.library();
        Map<Optional<String>, String> roots = new LinkedHashMap<>();
        for (ProblemTemplate template : set.templates()) {
            Optional<String> limits = library.limits(template.name());
            String root = roots.computeIfAbsent(
                    limits, other -> roots.isEmpty() ? TEMPLATES : TEMPLATES + "-" + (roots.size() + 1));
            limits.ifPresent(text -> files.put(root + "/" + TemplateFiles.LIMITS, text));
            library.texts(template.name(), template.language())
                    .forEach((file, text) -> files.put(root + "/" + template.name() + "/" + file, text));
        }
    }

    /** Text of each file by its path, in the order in which they are packed. */
    Map<String, String> files() {
        return files;
    }

    /** As a zip archive. */
    public void write(OutputStream to) throws IOException {
        StoredZip zip = new StoredZip(to);
        for (Map.Entry<String, String> file : files.entrySet()) {
            zip.add(file.getKey(), file.getValue());
        }
        if (logo.isPresent()) {
            zip.add(LOGO, logo.get().png());
        }
        zip.finish();
    }

    /** Comma-separated values. */
    private static final class Table {
        private final StringBuilder out = new StringBuilder();

        Table(List<String> head) {
            row(head.toArray(new String[0]));
        }

        void row(String... cells) {
            out.append(CSVFormat.DEFAULT.format((Object[]) cells)).append('\n');
        }

        @Override
        public String toString() {
            return out.toString();
        }
    }
}
