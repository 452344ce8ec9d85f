package ampersheet.spark;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.MarkedFolder;
import ampersheet.issue.Output;
import ampersheet.issue.Slice;
import ampersheet.marking.Marking;
import ampersheet.marking.OtherSheets;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetMaker;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Serializable;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import scala.Tuple2;

/**
 * Marks of a class by slices: each hand-in goes to the slice whose sheet it names, each slice is marked into a folder of
 * its own by what the command does, and the tables are joined in the order of the seats.
 *
 * @param answers folder of the hand-ins, a file of each learner
 */
record SlicedMarking(ClassFiles files, int slices, String answers) implements Serializable {
    private static final Pattern SHEET = Pattern.compile("[0-9A-Za-z]{5}-[0-9]{3,6}-[0-9A-Za-z]");
    /** Those that have a line for each learner or answer, and their first line alike. */
    private static final List<String> TABLES = List.of("marks.csv", "answers.csv");

    private static final String FEEDBACK = "feedback";

    /** Of all hand-ins. */
    List<String> names() throws IOException {
        try (Stream<Path> all = Files.list(Path.of(answers))) {
            return all.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    /** Each file with the slice of every sheet that it names. */
    Iterator<Tuple2<Integer, String>> bySlice(Iterator<String> names) throws IOException {
        ProblemSet set = files.set();
        Roster roster = set.sitting(files.learners());
        TreeMap<Integer, Integer> sliceFrom = new TreeMap<>();
        for (int number = 1; number <= slices; number++) {
            List<Roster.Seat> seats = new Slice(number, slices).of(roster);
            if (!seats.isEmpty()) {
                sliceFrom.put(seats.get(0).number(), number);
            }
        }
        List<Tuple2<Integer, String>> told = new ArrayList<>();
        while (names.hasNext()) {
            String name = names.next();
            TreeSet<Integer> named = new TreeSet<>();
            Matcher typed =
                    SHEET.matcher(new String(Files.readAllBytes(Path.of(answers, name)), StandardCharsets.UTF_8));
            while (typed.find()) {
                seat(set, typed.group())
                        .map(sliceFrom::floorEntry)
                        .map(Map.Entry::getValue)
                        .ifPresent(named::add);
            }
            named.forEach(slice -> told.add(new Tuple2<>(slice, name)));
        }
        return told.iterator();
    }

    private static Optional<Integer> seat(ProblemSet set, String typed) {
        try {
            return Optional.of(set.readId(typed).seat());
        } catch (DiagnosticException another) {
            return Optional.empty(); // letters that look like an ID and are none
        }
    }

    private Path folder(int slice) {
        return files.folder().resolve("slices").resolve(Integer.toString(slice));
    }

    /** Marks these files of a slice; how many learners sent something. */
    int mark(int number, Iterable<String> names) throws IOException {
        Path sent = folder(number).resolve("answers");
        Files.createDirectories(sent);
        for (String name : names) {
            Files.copy(Path.of(answers, name), sent.resolve(name), StandardCopyOption.REPLACE_EXISTING);
        }
        ProblemSet set = files.set();
        Roster all = set.sitting(files.learners());
        Roster roster = new Roster(new Slice(number, slices).of(all), all.columns(), List.of());
        SheetMaker maker = new SheetMaker(set);
        maker.prepare(all.lastSeat());
        Marking.Task task = new Marking.Task(
                sent,
                maker,
                Optional.empty(),
                roster,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OtherSheets.NONE,
                false);
        return MarkedFolder.write(task, folder(number).resolve("marks"), List.of(), Output.Terms.NONE)
                .marked()
                .learners();
    }

    /** Tables in the order of the seats, feedback pages in one folder; what slices needed besides is removed. */
    void join() throws IOException {
        Files.createDirectories(files.folder().resolve(FEEDBACK));
        for (String table : TABLES) {
            try (BufferedWriter out = Files.newBufferedWriter(files.folder().resolve(table))) {
                boolean begun = false;
                for (int number = 1; number <= slices; number++) {
                    Path part = folder(number).resolve("marks").resolve(table);
                    begun |= Files.exists(part) && append(part, begun, out);
                }
            }
        }
        for (int number = 1; number <= slices; number++) {
            Path pages = folder(number).resolve("marks").resolve(FEEDBACK);
            if (Files.isDirectory(pages)) {
                try (Stream<Path> some = Files.list(pages)) {
                    for (Path page : some.toList()) {
                        Files.move(
                                page,
                                files.folder().resolve(FEEDBACK).resolve(page.getFileName()),
                                StandardCopyOption.REPLACE_EXISTING);
                    }
                }
            }
        }
    }

    private static boolean append(Path part, boolean withoutHead, BufferedWriter out) throws IOException {
        String text = Files.readString(part);
        out.write(withoutHead ? text.substring(text.indexOf('\n') + 1) : text);
        return true;
    }
}
