package ampersheet.sheet;

import ampersheet.language.Language;

/** What an archive holds, told to whoever opens it. */
final class ArchiveReadMe {
    /** Where the words stand beside the names of files. */
    private static final int MARGIN = 15;

    private static final String COMMANDS =
            "  check SHEET-ID --issued-with THIS-FILE    key SHEET-ID --issued-with THIS-FILE\n"
                    + "  mark ANSWERS --issued-with THIS-FILE --roster CLASS.csv --out DIR\n";

    private ArchiveReadMe() {}

    /** @param logo whether it holds a picture */
    static String text(Language language, boolean logo) {
        StringBuilder out = new StringBuilder();
        out.append(language.say("sheet.archive.about")).append("\n\n");
        out.append(COMMANDS).append('\n');
        out.append(language.say("sheet.archive.keys")).append("\n\n");
        line(out, IssuedArchive.PLAN, language.say("sheet.archive.plan"));
        line(out, IssuedArchive.PARTS, language.say("sheet.archive.parts"));
        line(out, IssuedArchive.TEMPLATES + "/", language.say("sheet.archive.templates"));
        line(out, IssuedArchive.SHEETS, language.say("sheet.archive.sheets"));
        line(out, IssuedArchive.NUMBERS, language.say("sheet.archive.numbers"));
        line(out, IssuedArchive.ANSWERS, language.say("sheet.archive.answers"));
        line(out, IssuedArchive.FORM_FILE, language.say("sheet.archive.form"));
        if (logo) {
            line(out, IssuedArchive.LOGO, language.say("sheet.archive.logo"));
        }
        return out.toString();
    }

    private static void line(StringBuilder out, String file, String words) {
        out.append(file)
                .append(" ".repeat(MARGIN - file.length()))
                .append(words.replace("\n", "\n" + " ".repeat(MARGIN)))
                .append('\n');
    }
}
