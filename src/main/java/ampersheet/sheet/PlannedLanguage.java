package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Languages;
import ampersheet.source.Told;

/** The language of a plan, and how numbers are written in it where the plan does not say. */
final class PlannedLanguage {
    private PlannedLanguage() {}

    /** English unless said; a language that the program does not speak is told as a fault. */
    static Language read(Fields fields, Faults faults) {
        return fields.text("language")
                .map(written -> Languages.of(written.text()).orElseGet(() -> {
                    faults.error(
                            written.place(),
                            say("plan.language.unknown", "language", written.text()),
                            Told.either(Languages.codes()),
                            say("plan.language.unknown.next"));
                    return Languages.ENGLISH;
                }))
                .orElse(Languages.ENGLISH);
    }

    static DecimalMarker usualMarker(Language language) {
        return language.say("number.decimal").equals(",") ? DecimalMarker.COMMA : DecimalMarker.POINT;
    }
}
