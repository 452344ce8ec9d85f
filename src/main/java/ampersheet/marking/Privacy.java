package ampersheet.marking;

import ampersheet.sheet.Roster;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Keeps the names of learners out of what is written, where that is wished; otherwise changes nothing. */
final class Privacy {
  static final Privacy NONE = new Privacy(false, List.of());
  private static final String WITHHELD = "(a name, withheld)";

  private final boolean on;
  private final List<String> words;

  private Privacy(boolean on, List<String> words) {
    this.on = on;
    this.words = List.copyOf(words);
  }

  static Privacy of(Roster roster) {
    List<String> words = new ArrayList<>();
    for (Roster.Seat seat : roster.seats()) {
      for (String word : wordsOf(seat.name())) {
        if (word.codePointCount(0, word.length()) > 1) {
          words.add(word);
        }
      }
    }
    return new Privacy(true, words);
  }

  boolean isOn() {
    return on;
  }

  /** A learner's name on a page, or nothing. */
  String name(Roster.Seat seat) {
    return on ? "" : seat.name();
  }

  /** How a file is called: file names often hold the name of who sent them. */
  String file(String name, int number) {
    return on ? "file " + number : name;
  }

  /** A line quoted from a file may hold anything. */
  String line(String source) {
    return on ? "" : source;
  }

  /** What a learner typed where no number could be read. */
  String text(String typed) {
    if (!on) {
      return typed;
    }
    List<String> said = wordsOf(typed);
    return words.stream().anyMatch(said::contains) ? WITHHELD : typed;
  }

  private static List<String> wordsOf(String text) {
    List<String> words = new ArrayList<>();
    StringBuilder word = new StringBuilder();
    (text + " ").toLowerCase(Locale.ROOT).codePoints().forEach(c -> {
      if (Character.isLetter(c)) {
        word.appendCodePoint(c);
      } else if (!word.isEmpty()) {
        words.add(word.toString());
        word.setLength(0);
      }
    });
    return words;
  }
}
