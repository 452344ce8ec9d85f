package ampersheet.command;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.source.ForeignText;
import java.nio.file.Path;

/** Reads the class list named on the command line, however the instructor's spreadsheet wrote it. */
final class RosterFile {
    private RosterFile() {}

    /**
     * The class, with remarks on how it was read.
     *
     * @throws WrongUsage if it is no file that can be read
     * @throws ampersheet.diagnostic.DiagnosticException with all faults of the list at once
     */
    static Roster read(Path file) {
        String shown = InputFile.shown(file);
        ForeignText text = InputFile.table(file, "a class list");
        Roster roster = RosterReader.read(shown, text.text());
        return text.note()
                .map(note -> roster.remarking(
                        Diagnostic.warning(Place.inFile(shown), note.problem(), "", note.nextAction())))
                .orElse(roster);
    }

    /** The same, where what there is to remark is told at once. */
    static Roster read(Path file, Streams streams) {
        Roster roster = read(file);
        roster.remarks().forEach(remark -> streams.err().print(remark.print()));
        return roster;
    }
}
