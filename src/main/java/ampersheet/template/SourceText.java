package ampersheet.template;

import ampersheet.diagnostic.Place;
import java.util.ArrayList;
import java.util.List;

/** A file's text, in which every character has a place. */
final class SourceText {
  private final String file;
  private final String text;
  private final List<Integer> lineStarts = new ArrayList<>();

  SourceText(String file, String text) {
    this.file = file;
    this.text = text;
    lineStarts.add(0);
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) == '\n') {
        lineStarts.add(i + 1);
      }
    }
  }

  String file() {
    return file;
  }

  String text() {
    return text;
  }

  /** The place of the character at an offset; beyond the end, of the end. */
  Place at(int offset) {
    int bounded = Math.max(0, Math.min(offset, text.length()));
    int line = 0;
    while (line + 1 < lineStarts.size() && lineStarts.get(line + 1) <= bounded) {
      line++;
    }
    return new Place(file, line + 1, bounded - lineStarts.get(line) + 1, line(line));
  }

  /** @param line from 1 @param column from 1, in characters */
  Place at(int line, int column) {
    int index = Math.max(0, Math.min(line - 1, lineStarts.size() - 1));
    return new Place(file, index + 1, Math.max(1, column), line(index));
  }

  /** Offset of a count of code points: the marks of the YAML reader count these. */
  int offsetOfCodePoint(int codePoints) {
    int all = text.codePointCount(0, text.length());
    return text.offsetByCodePoints(0, Math.max(0, Math.min(codePoints, all)));
  }

  private String line(int index) {
    int start = lineStarts.get(index);
    int end = text.indexOf('\n', start);
    return text.substring(start, end < 0 ? text.length() : end);
  }
}
