package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.io.Reader;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;

/** Words of help stand among the sentences: each once, each shown. */
class HelpWordsTest {
    private static final String KEY = "command\\.[a-z]+(\\.[a-z-]+)+";

    @Test
    void annotationsNameSentencesAndHoldNone() {
        for (CommandSpec command : commands()) {
            for (ArgSpec argument : command.args()) {
                String which = command.name() + " " + argument.paramLabel() + ": " + argument.descriptionKey();
                assertTrue(
                        argument.descriptionKey() != null
                                && argument.descriptionKey().matches(KEY),
                        which);
                assertEquals(0, argument.description().length, which);
            }
            for (String line : command.usageMessage().description()) {
                assertTrue(line.matches(KEY), command.name() + ": " + line);
            }
            for (String line : command.usageMessage().footer()) {
                boolean typed = line.isEmpty() || line.startsWith("  ");
                assertTrue(typed || line.matches(KEY), command.name() + ": " + line);
            }
        }
    }

    @Test
    void helpShowsEachSentenceThatItsCommandNamesAndNoKey() throws IOException {
        Properties sentences = sentences();
        for (CommandSpec command : commands()) {
            String help = help(command.name()).replaceAll("\\s+", "");
            List<String> keys = new ArrayList<>(
                    command.args().stream().map(ArgSpec::descriptionKey).toList());
            Stream.of(
                            command.usageMessage().description(),
                            command.usageMessage().footer())
                    .flatMap(Stream::of)
                    .filter(line -> line.matches(KEY))
                    .forEach(keys::add);
            for (String key : keys) {
                assertTrue(help.contains(sentences.getProperty(key, "?").replaceAll("\\s+", "")), key + "\n" + help);
            }
            assertFalse(help.contains("command."), help);
        }
    }

    @Test
    void theListOfAllCommandsSaysOfEachWhatItDoes() throws IOException {
        Properties sentences = sentences();
        String all = help().replaceAll("\\s+", "");
        for (CommandSpec command : commands()) {
            String does = sentences.getProperty(command.usageMessage().description()[0]);
            assertTrue(all.contains(does.replaceAll("\\s+", "")), command.name());
        }
    }

    @Test
    void noSentenceOfTheCommandsStandsTwice() throws IOException {
        Properties sentences = sentences();
        Map<String, String> keys = new TreeMap<>();
        for (String key : new TreeSet<>(sentences.stringPropertyNames())) {
            String other = keys.put(sentences.getProperty(key), key);
            assertEquals(null, other, key + " says the same");
        }
    }

    private static List<CommandSpec> commands() {
        List<CommandSpec> commands = new ArrayList<>();
        Streams nowhere = streams(new ByteArrayOutputStream());
        CommandTree.commands()
                .values()
                .forEach(command -> commands.add(CommandSpec.forAnnotatedObject(command, new CommandLine.IFactory() {
                    @Override
                    public <K> K create(Class<K> wanted) throws Exception {
                        return wanted == command
                                ? wanted.getDeclaredConstructor(Streams.class).newInstance(nowhere)
                                : CommandLine.defaultFactory().create(wanted);
                    }
                })));
        assertFalse(commands.isEmpty());
        return commands;
    }

    private static String help(String... command) {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        List<String> arguments = new ArrayList<>(List.of(command));
        arguments.add("--help");
        assertEquals(0, Main.run(arguments.toArray(new String[0]), streams(said)));
        return said.toString(StandardCharsets.UTF_8);
    }

    private static Streams streams(ByteArrayOutputStream said) {
        PrintStream out = new PrintStream(said, true, StandardCharsets.UTF_8);
        return new Streams(new BufferedReader(new StringReader("")), out, out);
    }

    private static Properties sentences() throws IOException {
        Properties sentences = new Properties();
        try (Reader text = new InputStreamReader(
                HelpWordsTest.class.getResourceAsStream("/ampersheet/language/en/command.properties"),
                StandardCharsets.UTF_8)) {
            sentences.load(text);
        }
        return sentences;
    }
}
