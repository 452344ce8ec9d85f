package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import ampersheet.diagnostic.Diagnostic;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Whatever an author mistypes ends in a template or in faults that can be mended, never in a crash. */
class DamagedTemplatesTest {
    private static final int ROUNDS = Integer.getInteger("ampersheet.damaged.rounds", 400);

    @Test
    void anyDamageEndsInATemplateOrInFaultsWithPlaces() {
        TemplateFiles sound = TemplateFiles.builtIn();
        List<String> names = sound.names();
        long seed = Long.getLong("ampersheet.damaged.seed", 20261125L);
        for (int round = 0; round < ROUNDS; round++) {
            Random random = new Random(seed + round);
            String name = names.get(round % names.size());
            Map<String, String> texts = new TreeMap<>();
            sound.files(name)
                    .forEach(file -> texts.put(file, sound.text(name, file).orElseThrow()));
            String file = random.nextInt(5) == 0 ? "statement.md.ftl" : "problem.yaml";
            String damaged = texts.get(file);
            for (int i = 1 + random.nextInt(3); i > 0; i--) {
                damaged = damage(damaged, random);
            }
            texts.put(file, damaged);
            String replay = "seed " + (seed + round) + " of " + name + "/" + file + ":\n" + damaged;
            try {
                TemplateReader.Checked checked = new AlteredTemplate(name, texts).check();
                assertEquals(
                        checked.template().isEmpty(),
                        checked.diagnostics().stream()
                                .anyMatch(fault -> fault.severity() == ampersheet.diagnostic.Severity.ERROR),
                        replay);
                for (Diagnostic fault : checked.diagnostics()) {
                    assertTrue(
                            fault.place().file().contains(name)
                                    && !fault.problem().isBlank()
                                    && !fault.expected().isBlank()
                                    && !fault.nextAction().isBlank(),
                            () -> fault.print() + replay);
                }
            } catch (RuntimeException | StackOverflowError crash) {
                fail(crash + " with " + replay, crash);
            }
        }
    }

    private static String damage(String text, Random random) {
        if (text.isEmpty()) {
            return "x";
        }
        int at = random.nextInt(text.length());
        List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
        int line = random.nextInt(lines.size());
        switch (random.nextInt(7)) {
            case 0:
                return text.substring(0, at) + text.substring(at + 1);
            case 1:
                String pieces = "{}[]:,\"'#&*!|>%@`-?<=+/^().$\n \t~0179aVxE\u03a9\\";
                return text.substring(0, at) + pieces.charAt(random.nextInt(pieces.length())) + text.substring(at);
            case 2:
                lines.remove(line);
                return String.join("\n", lines);
            case 3:
                lines.add(line, lines.get(random.nextInt(lines.size())));
                return String.join("\n", lines);
            case 4:
                return text.substring(0, at);
            case 5:
                List<String> words = words(text);
                return words.isEmpty()
                        ? text
                        : text.substring(0, at)
                                + text.substring(at)
                                        .replaceFirst("[A-Za-z_]\\w*|[0-9.]+", words.get(random.nextInt(words.size())));
            default:
                List<String> odd = List.of(
                        "0",
                        "-1",
                        "1e22",
                        "1e-22",
                        "[]",
                        "{}",
                        "\"\"",
                        "Vs",
                        "1 kohm",
                        "99999999999",
                        "sqrt(-1)",
                        "1 / 0",
                        "true",
                        "null",
                        "E24",
                        "power(R1)",
                        "temperature(air)",
                        "turn(0, 0)",
                        "next_up(0, E24)",
                        "0 V");
                return text.substring(0, at)
                        + text.substring(at)
                                .replaceFirst(
                                        "(?<=: )[^,}\n]+",
                                        java.util.regex.Matcher.quoteReplacement(odd.get(random.nextInt(odd.size()))));
        }
    }

    private static List<String> words(String text) {
        List<String> words = new ArrayList<>();
        java.util.regex.Matcher matcher =
                java.util.regex.Pattern.compile("[A-Za-z_]\\w*").matcher(text);
        while (matcher.find()) {
            words.add(matcher.group());
        }
        return words;
    }
}
