package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.language.Saying;
import ampersheet.render.PrintedLines;
import ampersheet.source.AsciiCase;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads a sheet's Markdown that a learner has filled in. A place for an answer is a line that begins with the name of
 * its question; what stands behind the equals sign, or behind the name where there is none, is the answer, and the
 * ruled line does not belong to it. Options are ticked with an x between the brackets: {@code - [x] yes}. The answers
 * belong to the sheet whose ID stands above them.
 */
final class FilledSheet {
    /** A symbol before the equals sign is short; an equals sign further on belongs to the answer. */
    private static final int LONGEST_SYMBOL = 24;

    private static final int SHORTEST_ID = 7;
    private static final String EXPECTED_PLACE = say("folder.filled.same-line");

    private final TextLines lines;
    private final List<TypedAnswer> answers = new ArrayList<>();
    private String sheet = "";
    private boolean anyPlace;

    private FilledSheet(TextLines lines) {
        this.lines = lines;
    }

    static ReturnedFile read(String file, String text, Privacy privacy) {
        FilledSheet sheet = new FilledSheet(TextLines.of(file, text, privacy));
        sheet.read();
        return new ReturnedFile(file, sheet.answers, sheet.lines.faults());
    }

    private void read() {
        if (lines.isBlank()) {
            lines.fault(0, Saying.of("report.file.empty"), say("folder.filled"), say("folder.filled.empty.next"));
            return;
        }
        for (int i = 1; i <= lines.count(); i++) {
            String line = plain(lines.line(i));
            if (PrintedLines.isKeyNotice(bare(line))) {
                lines.fault(i, Saying.of("report.file.key"), say("folder.filled"), say("folder.filled.key.next"));
                answers.clear();
                return;
            }
            if (line.isEmpty()) {
                continue;
            }
            String id = sheetId(line);
            String name = question(line);
            if (!id.isEmpty()) {
                sheet = id;
            } else if (!name.isEmpty()) {
                place(name, line, i);
            } else if (line.startsWith("**q")) {
                String asked = question(bare(line));
                if (!asked.isEmpty()) {
                    options(asked, i);
                }
            }
        }
        if (!anyPlace) {
            lines.fault(
                    0,
                    Saying.of("report.file.no-places"),
                    say("folder.filled.no-places.expected", "example", "q2a  R = 4k7"),
                    say("folder.filled.no-places.next"));
        }
    }

    private void place(String name, String line, int number) {
        String rest = line.substring(name.length()).strip();
        int equals = rest.indexOf('=');
        if (equals >= 0 && equals <= LONGEST_SYMBOL) {
            rest = rest.substring(equals + 1);
        } else if (rest.startsWith(":")) {
            rest = rest.substring(1);
        }
        String text = withoutRule(rest).strip();
        add(name, text, number);
        if (text.isEmpty() && number < lines.count()) {
            String next = plain(lines.line(number + 1));
            if (!next.isEmpty() && question(next).isEmpty()) {
                lines.fault(
                        number + 1,
                        Saying.of("report.file.line-below", "question", name),
                        EXPECTED_PLACE,
                        say("folder.filled.line-below.next"));
            }
        }
    }

    /** The list of options that follows a question, up to the next line that is neither an option nor empty. */
    private void options(String name, int from) {
        List<String> ticked = new ArrayList<>();
        boolean any = false;
        int tickedAt = from;
        for (int i = from + 1; i <= lines.count(); i++) {
            String line = plain(lines.line(i));
            if (line.isEmpty() || PrintedLines.isAboveOptions(line)) {
                continue;
            }
            if (!line.startsWith("- [")) {
                break;
            }
            any = true;
            int end = line.indexOf(']');
            if (end < 0) {
                lines.fault(
                        i,
                        Saying.of("report.file.open-bracket"),
                        say("folder.filled.bracket.expected"),
                        say("folder.filled.bracket.next"));
            } else if (!line.substring(3, end).isBlank()) {
                ticked.add(line.substring(end + 1).strip());
                tickedAt = i;
            }
        }
        if (ticked.size() > 1) {
            lines.fault(
                    tickedAt,
                    Saying.of("report.file.ticked", "count", Integer.toString(ticked.size()), "question", name),
                    say("folder.filled.ticked.expected"),
                    say("folder.filled.ticked.next"));
            add(name, "", from);
        } else if (any) {
            add(name, ticked.isEmpty() ? "" : ticked.get(0), tickedAt);
        }
    }

    private void add(String name, String text, int line) {
        anyPlace = true;
        if (sheet.isEmpty()) {
            lines.fault(
                    line,
                    Saying.of("report.file.no-id"),
                    say("folder.filled.no-id.expected", "line", Languages.ENGLISH.say("print.sheet", "sheet", "…")),
                    say("folder.filled.no-id.next"));
        } else if (lines.isPlain(text, line)) {
            answers.add(new TypedAnswer(sheet, name, text, lines.place(line), true));
        }
    }

    private static String sheetId(String line) {
        String id = PrintedLines.sheetId(bare(line));
        return id.length() >= SHORTEST_ID && id.indexOf(' ') < 0 && id.indexOf('-') > 0 ? id : "";
    }

    /** The name a line begins with, such as {@code q3}, {@code q3a} or {@code q3s2}; empty if with none. */
    private static String question(String line) {
        int end = 0;
        while (end < line.length()
                && line.charAt(end) != ' '
                && line.charAt(end) != '\t'
                && line.charAt(end) != ':'
                && line.charAt(end) != '='
                && line.charAt(end) != '*'
                && line.charAt(end) != '_') {
            end++;
        }
        String name = AsciiCase.small(line.substring(0, end));
        return QuestionName.is(name) ? name : "";
    }

    /** Without the marks of emphasis, headings and quotations around it. */
    private static String bare(String line) {
        int from = 0;
        int to = line.length();
        while (from < to && "*_#> ".indexOf(line.charAt(from)) >= 0) {
            from++;
        }
        while (to > from && "*_ ".indexOf(line.charAt(to - 1)) >= 0) {
            to--;
        }
        return line.substring(from, to);
    }

    /** The rule that was printed as the place to write, wherever the answer was typed in it. */
    private static String withoutRule(String text) {
        StringBuilder kept = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            boolean ruled = text.charAt(i) == '_'
                    && (i > 0 && text.charAt(i - 1) == '_'
                            || i + 1 < text.length() && text.charAt(i + 1) == '_'
                            || i == 0
                            || i + 1 == text.length());
            if (!ruled) {
                kept.append(text.charAt(i));
            }
        }
        return kept.toString();
    }

    /** Without the backslashes that keep Markdown from reading a character as a mark. */
    private static String plain(String line) {
        StringBuilder plain = new StringBuilder();
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            boolean escapes = c == '\\'
                    && i + 1 < line.length()
                    && line.charAt(i + 1) > ' '
                    && line.charAt(i + 1) < 0x7F
                    && !Character.isLetterOrDigit(line.charAt(i + 1));
            if (escapes) {
                i++;
            }
            plain.append(line.charAt(i));
        }
        return plain.toString().strip();
    }
}
