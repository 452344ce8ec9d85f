package ampersheet.marking;

import ampersheet.language.Language;
import ampersheet.sheet.MarkingPolicy;

/** Numbers as marks and reports print them: the same digits on every machine; in tables for machines with a point. */
final class Amounts {
    private Amounts() {}

    /** Hundredths of a mark as marks, without zeros at the end: {@code 7.5}. */
    static String marks(int hundredths) {
        return MarkingPolicy.decimal(hundredths);
    }

    /** The same as a report prints it. */
    static String marks(int hundredths, Language language) {
        return marked(marks(hundredths), language);
    }

    /** Tenths of a percent as a report prints them. */
    static String tenths(int tenths, Language language) {
        return marked(MarkingPolicy.tenths(tenths), language);
    }

    private static String marked(String number, Language language) {
        return number.replace(".", language.say("number.decimal"));
    }

    /** Of 1: {@code 83 %}. */
    static String percent(double share, Language language) {
        return Double.isNaN(share) ? language.say("report.not-defined") : fixed(100 * share, 0) + "\u00A0%";
    }

    /** With this many digits behind the point and a true minus sign; a half is rounded away from zero. */
    static String decimal(double value, int places, Language language) {
        return Double.isNaN(value) ? language.say("report.not-defined") : marked(fixed(value, places), language);
    }

    static String fixed(double value, int places) {
        long scale = 1;
        for (int i = 0; i < places; i++) {
            scale *= 10;
        }
        long units = (long) Math.floor(Math.abs(value) * scale + 0.5 + 1e-9);
        String whole = Long.toString(units / scale);
        String digits =
                places == 0 ? "" : "." + Long.toString(scale + units % scale).substring(1);
        return (value < 0 && units > 0 ? "−" : "") + whole + digits;
    }

    /** {@code 3 of 4}. */
    static String of(String some, String all, Language language) {
        return language.say("report.of", "some", some, "all", all);
    }
}
