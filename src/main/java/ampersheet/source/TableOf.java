package ampersheet.source;

import static ampersheet.source.Told.say;

import ampersheet.language.Saying;
import java.util.List;
import java.util.Optional;

/**
 * The table of a spreadsheet file as text with commas.
 *
 * @param name of the sheet it stands on
 * @param others sheets with something on them that are not read
 */
record TableOf(String text, String name, List<String> others) {
    TableOf {
        others = List.copyOf(others);
    }

    /** As the text of any other file; what is not read is told. */
    ForeignText told() {
        return new ForeignText(
                text,
                others.isEmpty()
                        ? Optional.empty()
                        : Optional.of(new ForeignText.Note(
                                Saying.of("report.unread.one-table", "name", name),
                                say("folder.file.one-table.next"))));
    }
}
