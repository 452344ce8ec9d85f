package ampersheet.sheet;

import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Languages;

/** The language of a plan, and how numbers are written in it where the plan does not say. */
final class PlannedLanguage {
    private PlannedLanguage() {}

    /** English unless said; a language that the program does not speak is told as a fault. */
    static Language read(Fields fields, Faults faults) {
        return fields.text("language")
                .map(written -> Languages.of(written.text()).orElseGet(() -> {
                    faults.error(
                            written.place(),
                            "there are no words in the language \"" + written.text() + "\"",
                            String.join(" or ", Languages.codes()),
                            "Write one of them, or leave the line out for English.");
                    return Languages.ENGLISH;
                }))
                .orElse(Languages.ENGLISH);
    }

    static DecimalMarker usualMarker(Language language) {
        return language.say("number.decimal").equals(",") ? DecimalMarker.COMMA : DecimalMarker.POINT;
    }
}
