package ampersheet.desk;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.issue.Handouts;
import ampersheet.issue.PaperCount;
import ampersheet.render.pdf.Profile;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SheetMaker;
import java.util.List;
import java.util.Optional;

/**
 * How many sides the sheets of a class take. Laying a sheet out takes longest of all that is shown beside the set, so
 * that a few are laid out for each time it is asked, and what is known of them is told meanwhile.
 */
final class PaperRange {
    private static final int AT_ONCE = 2;
    /** Sheets that are laid out; more would keep the machine at work for a figure that hardly changes. */
    private static final int MOST = 12;

    private static final int WITHOUT_A_CLASS = 6;

    private SheetMaker of;
    private List<Roster.Seat> seats = List.of();
    private int counted;
    private int least;
    private int most;

    /**
     * What is known.
     *
     * @param words with what they rest on
     * @param isAll whether no more sheets will be laid out
     */
    record Known(String words, boolean isAll) {}

    /**
     * What is known after a few more sheets, or after all.
     *
     * @param roster empty while there is no class
     */
    synchronized Known more(SheetMaker maker, Optional<Roster> roster, boolean all) {
        List<Roster.Seat> looked =
                roster
                        .map(Roster::seats)
                        .orElseGet(() -> Seats.withoutNames(WITHOUT_A_CLASS).seats())
                        .stream()
                        .limit(MOST)
                        .toList();
        if (of != maker || !looked.equals(seats)) {
            of = maker;
            seats = looked;
            counted = 0;
            least = Integer.MAX_VALUE;
            most = 0;
        }
        int to = all ? seats.size() : Math.min(seats.size(), counted + AT_ONCE);
        if (counted < to) {
            PaperCount count = Handouts.count(
                    maker.set(),
                    Seats.withoutNames(seats.subList(counted, to)),
                    new Handouts.Wish(maker.plan().paper(), Profile.COMPACT, Handouts.Keys.NONE, true));
            least = Math.min(least, count.least());
            most = Math.max(most, count.most());
            counted = to;
        }
        return new Known(words(roster), counted == seats.size());
    }

    private String words(Optional<Roster> roster) {
        String sides = least == most
                ? count("desk.sheet.paper", most)
                : say("desk.sheet.paper.from-to", "least", Integer.toString(least), "most", Integer.toString(most));
        int learners = roster.map(all -> all.seats().size()).orElse(0);
        if (roster.isEmpty()) {
            return say("desk.sheet.paper.seats", "sides", sides, "counted", Integer.toString(counted));
        }
        return counted == learners
                ? say("desk.sheet.paper.class", "sides", sides)
                : count("desk.sheet.paper.some", learners, "sides", sides, "counted", Integer.toString(counted));
    }
}
