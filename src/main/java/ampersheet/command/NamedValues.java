package ampersheet.command;

import static ampersheet.source.Told.say;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Arguments of the form {@code name=value}. */
final class NamedValues {
    private NamedValues() {}

    /**
     * @param example of what fits here
     * @throws WrongUsage for one without "=", without a name, or with a name that came before
     */
    static Map<String, String> of(List<String> arguments, String example) {
        Map<String, String> values = new LinkedHashMap<>();
        for (String argument : arguments) {
            int equals = argument.indexOf('=');
            if (equals < 1) {
                throw new WrongUsage(
                        argument,
                        say("command.value.unnamed"),
                        say("command.value.unnamed.expected", "example", example),
                        say("command.value.unnamed.next", "example", example));
            }
            String name = argument.substring(0, equals).strip();
            if (values.putIfAbsent(name, argument.substring(equals + 1).strip()) != null) {
                throw new WrongUsage(
                        argument,
                        say("command.value.twice", "name", name),
                        say("command.value.twice.expected"),
                        say("command.value.twice.next"));
            }
        }
        return values;
    }
}
