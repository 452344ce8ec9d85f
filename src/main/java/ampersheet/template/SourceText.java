package ampersheet.template;

import ampersheet.diagnostic.Place;
import java.util.ArrayList;
import java.util.List;

/** A file's text, in which every character has a place. */
public final class SourceText {
  private final String file;
  private final String text;
  private final List<Integer> lineStarts = new ArrayList<>();
  private final int codePoints;

  public SourceText(String file, String text) {
    this.file = file;
    this.text = text;
    this.codePoints = text.codePointCount(0, text.length());
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

  public String text() {
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

  /** Offset of a count of code points: the marks of the YAML reader count these. */
  int offsetOfCodePoint(int index) {
    int bounded = Math.max(0, Math.min(index, codePoints));
    return codePoints == text.length() ? bounded : text.offsetByCodePoints(0, bounded);
  }

  private String line(int index) {
    int start = lineStarts.get(index);
    int end = text.indexOf('\n', start);
    return text.substring(start, end < 0 ? text.length() : end);
  }
}
