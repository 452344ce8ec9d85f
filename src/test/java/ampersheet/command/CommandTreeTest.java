package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import picocli.CommandLine.Command;

class CommandTreeTest {
    @Test
    void eachCommandIsFoundByTheNameThatItsHelpShowsAndKnowsWhoseItIs() {
        CommandTree.commands().forEach((name, command) -> {
            assertEquals(name, command.getAnnotation(Command.class).name());
            String help = said(0, name, "--help");
            assertTrue(help.startsWith("Usage: ampersheet " + name), help);
        });
        String all = said(0, "--help");
        CommandTree.commands().keySet().forEach(name -> assertTrue(all.contains("\n  " + name + " "), all));
        assertFalse(said(2, "wrok").isBlank());
    }

    private static String said(int expected, String... arguments) {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        PrintStream out = new PrintStream(said, true, StandardCharsets.UTF_8);
        int exitCode = Main.run(arguments, new Streams(new BufferedReader(new StringReader("")), out, out));
        String text = said.toString(StandardCharsets.UTF_8);
        assertEquals(expected, exitCode, text);
        return text;
    }
}
