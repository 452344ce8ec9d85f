package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.Handouts;
import ampersheet.render.html.Fragment;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SetFacts;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/** The sheet of any seat, or its key, with what an instructor wants to know of it. */
final class SeatSheet {
    static final int LAST_SEAT = 9_999;

    private final CourseSet set;
    private final Frame frame;

    SeatSheet(CourseSet set, Frame frame) {
        this.set = set;
        this.frame = frame;
    }

    /**
     * Where it is looked at.
     *
     * @param place of the desk
     * @param sheet address of a sheet, as far as the seat
     * @param print address of its PDF, as far as the seat
     * @param paper address that tells how much paper it takes; empty where that and what a sheet is like is told
     *     already
     * @param back address from which one looked
     */
    record Around(String place, String sheet, String print, String paper, String back) {}

    /** @param maker may refuse what does not fit */
    Reply show(Call call, Around around, Supplier<SheetMaker> maker) {
        int seat = call.query().number("seat", 1, LAST_SEAT, 1);
        boolean key = isKey(call);
        Map<String, Object> values;
        try {
            values = shown(maker.get(), seat, key, around.paper().isEmpty());
        } catch (DiagnosticException unfit) {
            values = Pages.values("faults", Frame.told(unfit.diagnostics()), "warnings", List.of());
        }
        values.putAll(Pages.values(
                "seat", seat,
                "side", key ? "key" : "sheet",
                "sheet", around.sheet(),
                "print", around.print(),
                "paper", around.paper(),
                "back", around.back()));
        return call.part()
                ? frame.part("sheet-part", values)
                : frame.page(Reply.FINE, call, around.place(), "sheet", values);
    }

    static boolean isKey(Call call) {
        return call.query().text("side").equals("key");
    }

    private Map<String, Object> shown(SheetMaker maker, int seat, boolean key, boolean toldAlready) {
        String name = nameAt(seat);
        Sheet sheet = sheet(maker, seat);
        Document document = key ? Composer.key(sheet, name) : Composer.sheet(sheet, name);
        List<String> warnings =
                new ArrayList<>(toldAlready ? List.of() : SetFacts.of(sheet).warnings());
        set.roster().ifPresent(roster -> enough(maker, roster, warnings));
        return Pages.values(
                "faults", List.of(),
                "title", document.title(),
                "subtitle", document.subtitle(),
                "id", document.sheetId(),
                "logo", Pages.html(Fragment.logo(document)),
                "html", Pages.html(Fragment.printed(document, "sheet-", 1)),
                "facts", facts(SetFacts.of(sheet)),
                "warnings", warnings);
    }

    private static Sheet sheet(SheetMaker maker, int seat) {
        if (seat > maker.plan().portion().seats()) {
            maker.prepare(seat); // is refused: these numbers are those of another week
        }
        return maker.sheet(seat);
    }

    /** The first of the class. */
    int firstSeat() {
        try {
            return set.roster().map(class_ -> class_.seats().get(0).number()).orElse(1);
        } catch (DiagnosticException broken) {
            return 1; // the place of the class tells
        }
    }

    private String nameAt(int seat) {
        return set.roster().stream()
                .flatMap(roster -> roster.seats().stream())
                .filter(one -> one.number() == seat)
                .map(Roster.Seat::name)
                .findFirst()
                .orElse("");
    }

    /** The sheet of a seat as it comes out of the printer. */
    Reply print(Call call, String place, Supplier<SheetMaker> maker) {
        int seat = call.query().number("seat", 1, LAST_SEAT, 1);
        try {
            return Reply.shown("application/pdf", Handouts.printed(sheet(maker.get(), seat), nameAt(seat), set.font()));
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, place, say("desk.sheet.unfit"), unfit);
        }
    }

    private static void enough(SheetMaker maker, Roster roster, List<String> warnings) {
        try {
            maker.prepare(roster);
        } catch (DiagnosticException tooFew) {
            tooFew.diagnostics().forEach(fault -> warnings.add(Frame.said(fault)));
        }
    }

    private static Map<String, Object> facts(SetFacts facts) {
        return Pages.values(
                "problems", facts.problems(),
                "examples", facts.examples(),
                "minutes", facts.minutes(),
                "levels",
                        facts.levels().entrySet().stream()
                                .map(one -> say(
                                        "desk.sheet.level",
                                        "problems",
                                        one.getValue().toString(),
                                        "level",
                                        one.getKey().toString()))
                                .toList(),
                "mixed", facts.mixed(),
                "pairs", facts.pairs());
    }
}
