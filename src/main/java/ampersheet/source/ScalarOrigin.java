package ampersheet.source;

/** Finds, for each character of a YAML scalar's value, the character of the file it came from. */
final class ScalarOrigin {
    private ScalarOrigin() {}

    /**
     * Aligns value and file from left to right: quotes, escapes and folded line breaks take more characters in the file
     * than in the value. Where the two cannot be aligned, the rest points at the last character that could.
     *
     * @param start offset of the scalar's first character, its quote or block indicator if it has one
     * @return offsets of each character and of the end
     */
    static int[] of(String file, int start, int end, String value, char style) {
        int at = start;
        if (style == '"' || style == '\'') {
            at++;
        } else if (style == '|' || style == '>') {
            at = blockContent(file, start, end);
        }
        int[] origin = new int[value.length() + 1];
        // Up to here blanks were looked through already, and no line ends behind them.
        int unfolded = 0;
        // Where the fold was looked for last, and what was found: line feeds that stand for one fold ask at the same
        // place.
        int foldedAt = -1;
        int foldedTo = -1;
        for (int i = 0; i < value.length(); i++) {
            char c = value.charAt(i);
            int length = 1;
            if (style == '"' && at < end && file.charAt(at) == '\\') {
                at = afterJoinedLines(file, at, end);
                length = at < end && file.charAt(at) == '\\' ? escapeLength(file, at, end) : 1;
            } else if (style == '\'' && c == '\'') {
                length = 2;
            } else if (c == ' ' || c == '\n') {
                int folded = at < unfolded ? at : at == foldedAt ? foldedTo : afterFold(file, at, end);
                foldedAt = at;
                foldedTo = folded;
                if (folded == at && at >= unfolded) {
                    unfolded = afterBlanksOfLine(file, at, end);
                }
                length = folded > at ? folded - at : 1;
                if (c == '\n' && i + 1 < value.length() && value.charAt(i + 1) == '\n') {
                    // The fold stands for several line feeds; the last of them takes it.
                    length = 0;
                }
            }
            origin[i] = Math.min(at, Math.max(start, end - 1));
            at += length;
        }
        origin[value.length()] = Math.min(at, end);
        return origin;
    }

    /** The first character of the text of a block scalar: after its header line and the indentation. */
    private static int blockContent(String file, int start, int end) {
        int line = file.indexOf('\n', start);
        return line < 0 || line >= end ? start : afterBlanks(file, line, end);
    }

    /** After a line break with the blanks around it, or {@code at} if there is none. */
    private static int afterFold(String file, int at, int end) {
        int next = afterBlanksOfLine(file, at, end);
        return next < end && file.charAt(next) == '\n' ? afterBlanks(file, next, end) : at;
    }

    private static int afterBlanksOfLine(String file, int at, int end) {
        int next = at;
        while (next < end && (file.charAt(next) == ' ' || file.charAt(next) == '\t')) {
            next++;
        }
        return next;
    }

    private static int afterBlanks(String file, int at, int end) {
        int next = at;
        while (next < end && (file.charAt(next) == ' ' || file.charAt(next) == '\t' || file.charAt(next) == '\n')) {
            next++;
        }
        return next;
    }

    /** A backslash at the end of a line of a double-quoted scalar joins the lines. */
    private static int afterJoinedLines(String file, int at, int end) {
        return at + 1 < end && file.charAt(at + 1) == '\n' ? afterBlanks(file, at + 1, end) : at;
    }

    private static int escapeLength(String file, int at, int end) {
        char kind = at + 1 < end ? file.charAt(at + 1) : ' ';
        return switch (kind) {
            case 'x' -> 4;
            case 'u' -> 6;
            case 'U' -> 10;
            default -> 2;
        };
    }
}
