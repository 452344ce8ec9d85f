package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.source.StoredZip;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a class was given, in one file that every later version of the program can work from: plan, templates, parts
 * list and the numbers on the sheets. The numbers are kept because a later version may refuse other draws, so that plan
 * and templates alone would lead to others.
 */
public final class IssuedArchive {
    private static final String ENDING = ".zip";
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
    /** In the order in which they are packed. */
    public static final List<String> TABLES = List.of(SHEETS, NUMBERS, ANSWERS);

    static final String TEMPLATES = "templates";
    static final List<String> SHEETS_HEAD = List.of("sheet", "seat", "problem", "place", "template");
    static final List<String> NUMBERS_HEAD = List.of("sheet", "problem", "name", "value", "unit", "written");
    static final List<String> ANSWERS_HEAD =
            List.of("sheet", "problem", "question", "step", "value", "unit", "written");
    /** Stands in the column of units for what has none. */
    static final String WORD = "word";

    private final Map<String, String> files;
    /** Of a large class: where its tables are. */
    private final Map<String, Path> tables;

    private final Optional<Logo> logo;

    private IssuedArchive(Map<String, String> files, Map<String, Path> tables, Optional<Logo> logo) {
        this.files = files;
        this.tables = tables;
        this.logo = logo;
    }

    /**
     * The name by which an archive is told from those of the same plan with other templates: it begins as the sheet IDs
     * do.
     */
    public static String fileName(ProblemSet set) {
        SheetId id = set.id(1);
        return "issued-" + id.plan() + id.templates() + ENDING;
    }

    /** What the sheet IDs of an archive begin with, by its name; whatever stands there if it has another one. */
    public static String set(String fileName) {
        String stem = fileName.endsWith(ENDING) ? fileName.substring(0, fileName.length() - ENDING.length()) : fileName;
        return stem.substring(stem.lastIndexOf('-') + 1);
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
        Map<String, StringBuilder> tables = new LinkedHashMap<>();
        TABLES.forEach(name -> tables.put(name, new StringBuilder()));
        try {
            ArchiveTables rows = new ArchiveTables(tables);
            for (ArchivedSheet sheet : bySeat.values()) {
                rows.add(sheet);
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException("memory is no device that fails", impossible);
        }
        Map<String, String> files = files(set);
        tables.forEach((name, text) -> files.put(name, text.toString()));
        return new IssuedArchive(
                Collections.unmodifiableMap(files),
                Map.of(),
                set.plan().heading().logo());
    }

    /**
     * The same of a class too large to be held in memory.
     *
     * @param tables where {@link ArchiveTables} has written each of {@link #TABLES}
     */
    public static IssuedArchive of(ProblemSet set, Map<String, Path> tables) {
        return new IssuedArchive(
                Collections.unmodifiableMap(files(set)),
                tables,
                set.plan().heading().logo());
    }

    /**
     * What cannot be read again is of no use for marking, however long it took to make.
     *
     * @param archive as which the tables would be packed
     * @throws DiagnosticException if they are larger than what is read of an archive
     */
    public static void requireReadable(Path archive, Map<String, Path> tables) throws IOException {
        long all = 0;
        long largest = 0;
        for (Path table : tables.values()) {
            long size = Files.size(table);
            largest = Math.max(largest, size);
            all += size;
        }
        if (largest > ArchiveReader.LARGEST_TABLE || all > ArchiveReader.MOST_BYTES) {
            throw new DiagnosticException(Diagnostic.error(
                    Place.inFile(archive.toString().replace('\\', '/')),
                    say("plan.archive.class-too-large", "megabytes", Long.toString(largest >> 20)),
                    say(
                            "plan.archive.class-too-large.expected",
                            "megabytes",
                            Long.toString(ArchiveReader.LARGEST_TABLE >> 20)),
                    say("plan.archive.class-too-large.next")));
        }
    }

    /** In the order in which they are packed, the tables still empty. */
    private static Map<String, String> files(ProblemSet set) {
        Map<String, String> files = new LinkedHashMap<>();
        files.put(FORM_FILE, FORM + "\n");
        files.put(
                READ_ME,
                ArchiveReadMe.text(
                        set.plan().language(), set.plan().heading().logo().isPresent()));
        files.put(PLAN, set.plan().written());
        if (set.plan().seeding() instanceof Plan.Seeding.Drawn drawn) {
            files.put(SEED, drawn.secret().characters() + "\n");
        }
        set.parts().ifPresent(parts -> files.put(PARTS, parts.written()));
        TABLES.forEach(name -> files.put(name, ""));
        addTemplates(set, files);
        return files;
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
            Path table = tables.get(file.getKey());
            if (table == null) {
                zip.add(file.getKey(), file.getValue());
            } else {
                zip.add(file.getKey(), table);
            }
        }
        if (logo.isPresent()) {
            zip.add(LOGO, logo.get().png());
        }
        zip.finish();
    }
}
