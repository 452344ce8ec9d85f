package ampersheet.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class YamlReaderTest {
    private static Yaml.Mapping read(String text) {
        Faults faults = new Faults();
        Optional<Yaml> root = YamlReader.read(new SourceText("file.yaml", text), faults);
        assertEquals(List.of(), faults.inOrder());
        return (Yaml.Mapping) root.orElseThrow();
    }

    private static Yaml.Scalar scalar(String text, String key) {
        return (Yaml.Scalar) read(text).value(key).orElseThrow();
    }

    @Test
    void scalarsStayText() {
        Yaml.Mapping mapping = read("a: no\nb: 012\nc: 5.0\nd: ~\ne: 2026-01-01\nf: 0x1F\ng:\n");
        List<String> texts = mapping.entries().stream()
                .map(entry -> ((Yaml.Scalar) entry.value()).text())
                .toList();
        assertEquals(List.of("no", "012", "5.0", "~", "2026-01-01", "0x1F", ""), texts);
    }

    @Test
    void placesAreLineAndColumnFromOne() {
        Place place = scalar("a: 1\nkey: {inner: 2,\n      other: 3}\nlast:   value\n", "last")
                .place();
        assertEquals("file.yaml:4:9", place.toString());
        assertEquals("last:   value", place.sourceLine());
    }

    @Test
    void aCharacterOutsideTheBasicPlaneCountsAsJavaCountsIt() {
        Yaml.Scalar value = scalar("a: \uD83D\uDD0C x\nb: c\n", "b");
        assertEquals("file.yaml:2:4", value.place().toString());
        assertEquals("file.yaml:1:7", scalar("a: \uD83D\uDD0C x\n", "a").at(3).toString());
    }

    @Test
    void aCharacterAfterAnEscapeKeepsItsPlace() {
        Yaml.Scalar value = scalar("a: \"x\\u0041\\n\\\\yz\"\n", "a");
        assertEquals("xA\n\\yz", value.text());
        assertEquals("file.yaml:1:5", value.at(0).toString());
        assertEquals("file.yaml:1:6", value.at(1).toString());
        assertEquals("file.yaml:1:12", value.at(2).toString());
        assertEquals("file.yaml:1:14", value.at(3).toString());
        assertEquals("file.yaml:1:16", value.at(4).toString());
        assertEquals("file.yaml:1:17", value.at(5).toString());
    }

    @Test
    void aDoubledSingleQuoteIsOneCharacter() {
        Yaml.Scalar value = scalar("a: 'it''s x'\n", "a");
        assertEquals("it's x", value.text());
        assertEquals("file.yaml:1:7", value.at(2).toString());
        assertEquals("file.yaml:1:9", value.at(3).toString());
        assertEquals("file.yaml:1:11", value.at(5).toString());
    }

    @Test
    void blockScalarsPointIntoTheirLines() {
        Yaml.Scalar literal = scalar("a: |\n  first\n  second\n", "a");
        assertEquals(
                "file.yaml:3:3", literal.at(literal.text().indexOf("second")).toString());
        Yaml.Scalar folded = scalar("a: >-\n  first\n  second\n\n  third\n", "a");
        assertEquals("first second\nthird", folded.text());
        assertEquals("file.yaml:3:5", folded.at(folded.text().indexOf("cond")).toString());
        assertEquals("file.yaml:5:3", folded.at(folded.text().indexOf("third")).toString());
    }

    @Test
    void everyCharacterThatIsNotABlankPointsAtItself() {
        long seed = 20261125L;
        Random random = new Random(seed);
        for (int round = 0; round < 5_000; round++) {
            int style = random.nextInt(5);
            StringBuilder written = new StringBuilder();
            int words = 1 + random.nextInt(6);
            for (int i = 0; i < words; i++) {
                for (int k = 1 + random.nextInt(4); k > 0; k--) {
                    written.append((char) ('a' + random.nextInt(26)));
                }
                written.append(style == 1 && random.nextInt(5) == 0 ? "''" : "");
                if (i + 1 < words) {
                    int gap = random.nextInt(4);
                    written.append(gap == 0 ? "\n    " : gap == 1 && style != 0 ? "\n\n    " : gap == 2 ? "  " : " ");
                }
            }
            String body = written.toString();
            String file = switch (style) {
                case 0 -> "key: " + body + "\n";
                case 1 -> "key: '" + body + "'\n";
                case 2 -> "key: \"" + body + "\"\n";
                case 3 -> "key: |\n    " + body + "\n";
                default -> "key: >\n    " + body + "\n";
            };
            Yaml.Scalar value = scalar(file, "key");
            for (int i = 0; i < value.text().length(); i++) {
                char c = value.text().charAt(i);
                Place place = value.at(i);
                if (c != ' ' && c != '\n') {
                    assertEquals(
                            c,
                            place.sourceLine().charAt(place.column() - 1),
                            "seed " + seed + ", round " + round + ", character " + i + " of\n" + file);
                }
            }
        }
    }

    @Test
    void nothingButPlainValuesIsRead() {
        for (String text : List.of(
                "a: &x 1\n",
                "a: *x\n",
                "a: !!str 1\n",
                "a: 1\n---\nb: 2\n",
                "[a]: 1\n",
                "{a: 1}: 2\n",
                "",
                "a: \u0001\n",
                "a: [1\n",
                "\ta: 1\n",
                "a: 'x\n",
                "a: b: c\n",
                "? {x: y}\n: z\n",
                "%TAG ! x\n",
                "a: @x\n",
                "a: `x\n")) {
            Faults faults = new Faults();
            Optional<Yaml> root = YamlReader.read(new SourceText("f", text), faults);
            assertTrue(faults.hasErrors(), text);
            assertFalse(root.isPresent() && faults.inOrder().isEmpty(), text);
            for (Diagnostic diagnostic : faults.inOrder()) {
                assertFalse(
                        diagnostic.expected().isEmpty()
                                || diagnostic.nextAction().isEmpty(),
                        diagnostic.print());
            }
        }
    }

    @Test
    void deepAndLargeFilesEndInAFault() {
        for (String text : List.of(
                "[".repeat(50_000),
                "a: " + "{b: ".repeat(10_000),
                "- ".repeat(40_000),
                "[1,".repeat(60_000),
                "a: [" + "1,".repeat(30_000) + "]")) {
            Faults faults = new Faults();
            assertEquals(Optional.empty(), YamlReader.read(new SourceText("f", text), faults));
            assertEquals(1, faults.count());
        }
    }
}
