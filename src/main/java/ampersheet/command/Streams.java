package ampersheet.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.util.Optional;

/** Where a command reads and writes; UTF-8, whatever the machine's own encoding. */
record Streams(BufferedReader in, PrintStream out, PrintStream err) {

  /** Always a line feed, on every system. */
  void line(String text) {
    out.print(text);
    out.print('\n');
  }

  /** Empty at the end of what was typed. */
  Optional<String> readLine() {
    out.flush();
    try {
      return Optional.ofNullable(in.readLine());
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }
}
