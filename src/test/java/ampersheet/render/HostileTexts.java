package ampersheet.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Texts that try to break out of a page: by hand, and put together at random from the marks that mean something. */
public final class HostileTexts {
    public static final List<String> BY_HAND = List.of(
            "<script>alert(1)</script>",
            "](javascript:alert(1))",
            "[x](javascript:alert(1))",
            "<img src=x onerror=alert(1)>",
            "\"><svg/onload=alert(1)>",
            "'; alert(1); '",
            "]]>",
            "<!-- never closed",
            "<?php",
            "&lt;script&gt;",
            "&#60;b&#62;",
            "# not a heading",
            "not a heading\n===",
            "1. not a list",
            "- not a list",
            "> not a quote",
            "```\nnever closed",
            "~~~",
            "    not code",
            "| not | a | table |\n|---|---|---|",
            "*a* _b_ **c** __d__ `e` ~~f~~",
            "\\",
            "a\\",
            "`",
            "*",
            "_",
            "#",
            "C #",
            "\u202Eright to left",
            "\u0000\u0001\u001B[31m",
            "\uD800",
            "\uFFFF",
            "</style><style>*{display:none}",
            "</title>",
            "--><b>",
            "<https://example.org>",
            "<javascript:alert(1)>",
            "![x](https://example.org/x.png)",
            "[a]: javascript:alert(1)",
            "[a]",
            "$x$",
            "%00",
            "a\r\nb",
            "\u2028",
            "{{7*7}}",
            "${7*7}",
            "4.7\u00a0kΩ",
            "R_1 = 4,7 kΩ & more",
            "",
            " ",
            "\t");

    private static final String[] PIECES = {
        "<",
        ">",
        "&",
        "\"",
        "'",
        "`",
        "``",
        "*",
        "**",
        "_",
        "[",
        "]",
        "(",
        ")",
        "!",
        "#",
        "|",
        "\\",
        "~",
        "-",
        "+",
        "=",
        ":",
        "1.",
        "\n",
        "\n\n",
        "  \n",
        "\t",
        "    ",
        "> ",
        "- ",
        "script",
        "javascript:",
        "data:",
        "http://a",
        "<b>",
        "</p>",
        "<!--",
        "-->",
        "&lt;",
        "&#106;",
        "a",
        "V_s",
        "Ω",
        "9\u00a0V",
        "é",
        "\uD83D\uDE00",
        "\u0007",
        "\uDC00",
        "x y"
    };

    private HostileTexts() {}

    public static List<String> random(long seed, int count) {
        Random random = new Random(seed);
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            StringBuilder text = new StringBuilder();
            for (int pieces = 1 + random.nextInt(12); pieces > 0; pieces--) {
                text.append(PIECES[random.nextInt(PIECES.length)]);
            }
            texts.add(text.toString());
        }
        return texts;
    }
}
