package ampersheet.command;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

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
        streams.line(HandoutCommand.printed(
                count("command.count.cards", printed.cards()), printed.sides(), printed.written()));
        streams.line("  " + InputFile.shown(printed.file()));
        streams.line(say("command.cards.numbers"));
        printed.left()
                .forEach(one -> streams.line(
                        say("command.cards.left-out", "template", one.template(), "because", one.because())));
        streams.line(say("command.cards.print"));
    }
}
