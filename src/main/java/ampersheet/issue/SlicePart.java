package ampersheet.issue;

import ampersheet.problem.Refusal;
import ampersheet.problem.Tally;
import ampersheet.sheet.ClassIndex;
import ampersheet.source.CellRows;
import ampersheet.source.SourceFile;
import ampersheet.source.Unread;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;

/**
 * What a slice leaves beside the keys for whoever joins: what the index says of its seats, which files it wrote and
 * what is in them. The numbers of its sheets lie beside it as an archive. Holds answers, as keys do.
 *
 * @param command what was made from which class list, as {@link #command} tells it
 * @param seats by number
 * @param tallies of all draws up to its last seat
 */
record SlicePart(String command, Map<Integer, SeatPart> seats, Map<String, Tally> tallies) {
    /** With which the program knows such a file for its own. */
    static final String HEAD = "what,seat,number,name,value";

    private static final int LARGEST = 1 << 30;
    private static final String ACCEPTED = "accepted";

    /**
     * @param problems what the index says of each, in the order of the sheet
     * @param figures among the files, those that hold one
     * @param files the check sum of each, by their names in the folder
     */
    record SeatPart(
            List<ClassIndex.ProblemAnswers> problems,
            List<String> cautions,
            List<String> figures,
            Map<String, String> files) {}

    /** @param parts whatever makes a difference to what is written */
    static String command(Iterable<String> parts) {
        MessageDigest all = digest();
        for (String part : parts) {
            all.update((part.length() + " " + part + "\n").getBytes(StandardCharsets.UTF_8));
        }
        return HexFormat.of().formatHex(all.digest());
    }

    /** Empty if there is no such file. */
    static Optional<String> sum(Path file) throws IOException {
        return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                ? Optional.of(sum(Files.readAllBytes(file)))
                : Optional.empty();
    }

    private static String sum(byte[] bytes) {
        return HexFormat.of().formatHex(digest().digest(bytes));
    }

    private static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }

    String text() {
        StringBuilder out = new StringBuilder(HEAD).append('\n');
        row(out, "command", "", "", "", command);
        tallies.forEach((source, tally) -> {
            row(out, "draws", "", Long.toString(tally.accepted()), source, ACCEPTED);
            for (Refusal reason : Refusal.values()) {
                if (tally.refused(reason) > 0) {
                    row(out, "draws", "", Long.toString(tally.refused(reason)), source, reason.name());
                }
            }
        });
        seats.forEach((number, part) -> write(out, Integer.toString(number), part));
        row(out, "end", "", "", "", "");
        return out.toString();
    }

    private static void write(StringBuilder out, String seat, SeatPart part) {
        for (int i = 0; i < part.problems().size(); i++) {
            String number = Integer.toString(i + 1);
            row(out, "problem", seat, number, "", "");
            part.problems()
                    .get(i)
                    .answers()
                    .forEach((question, answer) -> row(out, "answer", seat, number, question, answer));
        }
        part.cautions().forEach(caution -> row(out, "caution", seat, "", caution, ""));
        part.figures().forEach(figure -> row(out, "figure", seat, "", figure, ""));
        part.files().forEach((file, sum) -> row(out, "file", seat, "", file, sum));
    }

    private static void row(StringBuilder out, String... cells) {
        out.append(CSVFormat.DEFAULT.format((Object[]) cells)).append('\n');
    }

    /** Empty if there is none, or none that is whole. */
    static Optional<SlicePart> read(Path file) {
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            return Optional.empty();
        }
        try {
            List<CellRows.Row> rows = CellRows.read(
                    SourceFile.decoded(SourceFile.bytes(file, LARGEST, SourceFile.Links.REFUSED)), ',', 1);
            return new Reading().read(rows);
        } catch (Unread | CellRows.Uneven | IllegalArgumentException | IndexOutOfBoundsException foreign) {
            // It is not as this program writes it, so that its slice is to be made again, which writes it anew.
            return Optional.empty();
        }
    }

    /** Of the rows of such a file. */
    private static final class Reading {
        private final Map<Integer, SeatPart> seats = new TreeMap<>();
        private final Map<Integer, List<Map<String, String>>> answers = new TreeMap<>();
        private final Map<String, Long> accepted = new LinkedHashMap<>();
        private final Map<String, Map<Refusal, Long>> refused = new LinkedHashMap<>();
        private String command = "";
        private boolean ended;

        Optional<SlicePart> read(List<CellRows.Row> rows) {
            rows.stream().skip(1).filter(row -> !row.isBlank()).forEach(this::take);
            if (!ended) {
                return Optional.empty();
            }
            Map<Integer, SeatPart> whole = new TreeMap<>();
            seats.forEach((seat, part) -> whole.put(
                    seat,
                    new SeatPart(
                            answers.get(seat).stream()
                                    .map(ClassIndex.ProblemAnswers::new)
                                    .toList(),
                            part.cautions(),
                            part.figures(),
                            part.files())));
            Map<String, Tally> tallies = new LinkedHashMap<>();
            accepted.forEach((source, count) ->
                    tallies.put(source, Tally.of(count, refused.getOrDefault(source, Map.of()))));
            return Optional.of(new SlicePart(command, whole, tallies));
        }

        private void take(CellRows.Row row) {
            switch (row.get(0)) {
                case "command" -> command = row.get(4);
                case "draws" -> takeDraws(row.get(3), Long.parseLong(row.get(2)), row.get(4));
                case "end" -> ended = true;
                default -> takeOfSeat(row, Integer.parseInt(row.get(1)));
            }
        }

        private void takeDraws(String source, long count, String what) {
            if (what.equals(ACCEPTED)) {
                accepted.put(source, count);
            } else {
                refused.computeIfAbsent(source, first -> new EnumMap<>(Refusal.class))
                        .put(Refusal.valueOf(what), count);
            }
        }

        private void takeOfSeat(CellRows.Row row, int seat) {
            SeatPart part = seats.computeIfAbsent(
                    seat, first -> new SeatPart(List.of(), new ArrayList<>(), new ArrayList<>(), new TreeMap<>()));
            List<Map<String, String>> problems = answers.computeIfAbsent(seat, first -> new ArrayList<>());
            switch (row.get(0)) {
                case "problem" -> problems.add(new LinkedHashMap<>());
                case "answer" -> problems.get(Integer.parseInt(row.get(2)) - 1).put(row.get(3), row.get(4));
                case "caution" -> part.cautions().add(row.get(3));
                case "figure" -> part.figures().add(row.get(3));
                case "file" -> part.files().put(row.get(3), row.get(4));
                default -> throw new IllegalArgumentException(row.get(0));
            }
        }
    }
}
