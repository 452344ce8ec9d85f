package ampersheet.command;

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
                        "this is not a name with a value",
                        "name=value without blanks, such as " + example,
                        "Put a value with blanks in quotation marks: \"" + example + "\".");
            }
            String name = argument.substring(0, equals).strip();
            if (values.putIfAbsent(name, argument.substring(equals + 1).strip()) != null) {
                throw new WrongUsage(argument, name + " is given twice", "each name once", "Remove one of the two.");
            }
        }
        return values;
    }
}
