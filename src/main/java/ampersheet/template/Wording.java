package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the texts that are printed, and keeps mains work out of them. */
final class Wording {
    /** Characters of a text that is printed as it stands. */
    static final int MOST_PRINTED = 1_000;

    private static final int CASE = Pattern.CASE_INSENSITIVE;
    private static final Pattern MAINS = Pattern.compile(
            "\\b(mains|live (wire|conductor|terminal)s?|neutral (wire|conductor|terminal)s?|live and neutral"
                    + "|wall (socket|outlet)s?|household (current|voltage|supply)|line voltage)\\b",
            CASE);
    private static final Pattern VOLTS =
            Pattern.compile("\\b(\\d{1,6}(?:[.,]\\d{1,6})?)[ \\u00A0\\u202F]?(kV|V|volts?)\\b");

    private final Faults faults;

    Wording(Faults faults) {
        this.faults = faults;
    }

    /** A printed text; {@code ${...}} is not filled in. */
    Optional<String> text(Fields fields, String key) {
        Optional<Yaml.Scalar> text = fields.text(key);
        text.ifPresent(scalar -> {
            check(scalar.text(), scalar::at);
            if (scalar.text().length() > MOST_PRINTED) {
                faults.error(
                        scalar.at(MOST_PRINTED),
                        "the text of \"" + key + "\" is longer than " + MOST_PRINTED + " characters",
                        "a few short sentences",
                        "Shorten it.");
            }
            int fill = scalar.text().indexOf("${");
            if (fill >= 0) {
                faults.error(
                        scalar.at(fill),
                        "${...} is not filled in here",
                        "plain words; only the statement and prompts are filled in",
                        "Say it without the number.");
            }
        });
        return text.map(scalar -> scalar.text().strip());
    }

    /** @param expected what should stand there, if the key is missing */
    Optional<String> needText(Fields fields, String key, String expected) {
        fields.need(key, expected);
        return text(fields, key);
    }

    /** Nothing but extra-low voltage is taught: mains words and high voltages are errors. */
    void check(String text, IntFunction<Place> at) {
        Matcher mains = MAINS.matcher(text);
        while (mains.find()) {
            refuse(at.apply(mains.start()), "\"" + mains.group() + "\" speaks of mains work");
        }
        Matcher volts = VOLTS.matcher(text);
        while (volts.find()) {
            double value = Double.parseDouble(volts.group(1).replace(',', '.'))
                    * (volts.group(2).equals("kV") ? 1000 : 1);
            if (value > ExtraLowVoltage.VOLTS) {
                refuse(at.apply(volts.start()), "\"" + volts.group() + "\" is above " + ExtraLowVoltage.LIMIT);
            }
        }
    }

    private void refuse(Place place, String problem) {
        faults.error(
                place,
                problem,
                "extra-low voltage only: at most " + ExtraLowVoltage.LIMIT + " direct voltage, from a certified supply",
                "Leave it out; mains work is outside these sheets.");
    }
}
