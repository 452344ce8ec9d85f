package ampersheet.quantity;

/**
 * Words that are read in German as their like are in English, whatever the language of the sheet: who learns in one
 * language may think in the other, and no word here means something else there.
 */
final class GermanWords {
    /** From 0 on. */
    static final String[] CARDINALS = {
        "null",
        "eins",
        "zwei",
        "drei",
        "vier",
        "fünf",
        "sechs",
        "sieben",
        "acht",
        "neun",
        "zehn",
        "elf",
        "zwölf",
        "dreizehn",
        "vierzehn",
        "fünfzehn",
        "sechzehn",
        "siebzehn",
        "achtzehn",
        "neunzehn",
    };

    /** From 20 on. */
    static final String[] TENS = {
        "zwanzig", "dreißig", "vierzig", "fünfzig", "sechzig", "siebzig", "achtzig", "neunzig",
    };

    /** From 1 on. */
    static final String[] ORDINALS = {
        "erste", "zweite", "dritte", "vierte", "fünfte", "sechste", "siebte", "achte", "neunte", "zehnte", "elfte",
        "zwölfte",
    };

    /** What makes another number of the one before it, and is not read. */
    static final String[] LARGER = {
        "hundert",
        "tausend",
        "million",
        "millionen",
        "milliarde",
        "dutzend",
        "halb",
        "halbe",
        "halber",
        "hälfte",
        "drittel",
        "viertel",
        "anderthalb",
        "eineinhalb",
        "komma",
        "und",
    };

    /** What stands before a number without changing it. */
    static final String[] BEFORE = {
        "ungefähr",
        "etwa",
        "rund",
        "zirka",
        "fast",
        "knapp",
        "genau",
        "nummer",
        "das sind",
        "das ist",
        "es sind",
        "es ist",
        "die antwort ist",
        "antwort",
    };

    /** What stands behind it without changing it. */
    static final String[] BEHIND = {
        "ungefähr", "etwa", "rund", "zirka", "insgesamt", "zusammen", "gesamt", "je", "jeweils",
    };

    /** What is counted on these sheets. */
    static final String[] NOUNS = {
        "kachel",
        "kacheln",
        "widerstand",
        "widerstände",
        "diode",
        "dioden",
        "sicherung",
        "sicherungen",
        "stück",
        "stücke",
        "paar",
        "paare",
        "reihe",
        "reihen",
        "zeile",
        "zeilen",
        "spalte",
        "spalten",
        "gruppe",
        "gruppen",
        "zweig",
        "zweige",
        "teil",
        "teile",
        "platz",
        "plätze",
        "stelle",
        "stellen",
        "zelle",
        "zellen",
        "streifen",
        "seite",
        "seiten",
        "kante",
        "kanten",
        "stecker",
        "buchse",
        "buchsen",
        "kontakt",
        "kontakte",
        "ader",
        "adern",
        "leitung",
        "leitungen",
        "kabel",
        "adresse",
        "adressen",
        "kanal",
        "kanäle",
        "position",
        "positionen",
        "wert",
        "werte",
        "schritt",
        "schritte",
        "stufe",
        "stufen",
        "ecke",
        "ecken",
        "schraube",
        "schrauben",
        "versorgung",
        "versorgungen",
        "lage",
        "lagen",
        "puls",
        "pulse",
        "impuls",
        "impulse",
        "knoten",
        "farbe",
        "farben",
        "last",
        "lasten",
        "kombination",
        "kombinationen",
        "umdrehung",
        "umdrehungen",
        "windung",
        "windungen",
        "pixel",
        "bild",
        "bilder",
        "paket",
        "pakete",
        "abschnitt",
        "abschnitte",
        "messung",
        "messungen",
        "mal",
        "leds",
        "bits",
        "bytes",
    };

    /** Between such nouns. */
    static final String[] BETWEEN = {
        "von",
        "in",
        "reihe",
        "parallel",
        "der",
        "die",
        "das",
        "pro",
        "und",
        "je",
        "jeweils",
        "ganze",
        "ganzen",
        "volle",
        "vollen",
    };

    /** Units, and their symbols. */
    static final String[][] UNITS = {
        {"sekunde", "s"},
        {"sekunden", "s"},
        {"sek", "s"},
        {"minuten", "min"},
        {"stunde", "h"},
        {"stunden", "h"},
        {"std", "h"},
        {"gramm", "g"},
        {"prozent", "%"},
        {"bild", "frame"},
        {"bilder", "frame"},
        {"umdrehung", "turn"},
        {"umdrehungen", "turn"},
        {"u", "turn"},
        {"widerstand", "1"},
        {"widerstände", "1"},
        {"kachel", "1"},
        {"kacheln", "1"},
        {"stück", "1"},
        {"kiloohm", "kΩ"},
        {"megaohm", "MΩ"},
    };

    private GermanWords() {}
}
