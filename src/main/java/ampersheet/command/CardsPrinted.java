package ampersheet.command;

import ampersheet.issue.BenchCardFile;

/** Tells which bench cards were made, and which were not and why. */
record CardsPrinted(Streams streams, BenchCardFile.Printed printed) {
    void tell(boolean json) {
        if (json) {
            streams.line(Json.of(told -> told.number("cards", printed.cards())
                    .number("sides", printed.sides())
                    .number("files_written", printed.written())
                    .text("file", InputFile.shown(printed.file()))
                    .texts(
                            "left_out",
                            printed.left().stream()
                                    .map(one -> one.template() + ": " + one.because())
                                    .toList())));
            return;
        }
        streams.line(printed.cards() + (printed.cards() == 1 ? " card on " : " cards on ") + printed.sides()
                + (printed.sides() == 1 ? " side" : " sides") + " of paper (" + printed.written()
                + (printed.written() == 1 ? " file" : " files") + " written)");
        streams.line("  " + InputFile.shown(printed.file()));
        streams.line("The cards show other numbers than the sheets, so that they give no answer away.");
        printed.left().forEach(one -> streams.line("No card of " + one.template() + ": " + one.because() + "."));
        streams.line("Print on one side, at actual size, and cut along the marks.");
    }
}
