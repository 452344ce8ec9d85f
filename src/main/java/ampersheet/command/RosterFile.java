package ampersheet.command;

import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
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
        return RosterReader.read(InputFile.shown(file), InputFile.classList(file));
    }

    /** The same, where what there is to remark is told at once. */
    static Roster read(Path file, Streams streams) {
        Roster roster = read(file);
        roster.remarks().forEach(remark -> streams.err().print(remark.print()));
        return roster;
    }
}
