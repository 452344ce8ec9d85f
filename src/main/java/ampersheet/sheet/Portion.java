package ampersheet.sheet;

import ampersheet.problem.Draws.Stretch;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Which part of something larger a plan is, a week of a course or a retake, so that nobody meets there a variant that
 * another part shows. All parts draw from one order for each template: the sheets one after the other from its front,
 * practice pages and bench cards from its last quarter, in lanes of their own.
 *
 * @param week from 1; 0 for a plan that belongs to no course
 * @param weeks of the course; 0 where there is none
 * @param retake whether it follows a sheet that went wrong
 * @param seats for so many variants are kept; nobody sits behind them
 * @param taken how many variants go before those of this part, by {@linkplain ProblemSet#sources source}
 * @param only for each seat that has a sheet, which problems of the plan's list it gets, from 1; empty for all
 * @param variation changes the IDs and nothing else, where other parts have those without it; 0 for the usual ones
 */
public record Portion(
        int week,
        int weeks,
        boolean retake,
        int seats,
        Map<String, Integer> taken,
        Map<Integer, List<Integer>> only,
        int variation) {
    /** Of a plan that stands for itself. */
    public static final Portion WHOLE = new Portion(0, 0, false, SheetId.LAST_SEAT, Map.of(), Map.of(), 0);

    public Portion {
        if (week < 0 || week > weeks) {
            throw new IllegalArgumentException("week " + week + " of " + weeks);
        }
        taken = Collections.unmodifiableMap(new TreeMap<>(taken));
        only = Collections.unmodifiableMap(new TreeMap<>(only));
    }

    public boolean isWhole() {
        return equals(WHOLE);
    }

    /** The same behind other variants. */
    Portion behind(Map<String, Integer> others) {
        return new Portion(week, weeks, retake, seats, others, only, variation);
    }

    /** The same with other IDs. */
    Portion varied() {
        return new Portion(week, weeks, retake, seats, taken, only, variation + 1);
    }

    /** The same for some seats, or for some of their problems. */
    Portion forOnly(Map<Integer, List<Integer>> others) {
        return new Portion(week, weeks, retake, seats, taken, others, variation);
    }

    public boolean isOfCourse() {
        return week > 0;
    }

    /** Those of a class who get a sheet. */
    public Roster sitting(Roster roster) {
        return only.isEmpty()
                ? roster
                : new Roster(
                        roster.seats().stream()
                                .filter(seat -> only.containsKey(seat.number()))
                                .toList(),
                        roster.columns(),
                        roster.remarks());
    }

    /** Whether a seat gets a problem, by its number in the plan's list, from 0. */
    boolean gives(int seat, int problem) {
        return only.isEmpty() || only.getOrDefault(seat, List.of()).contains(problem + 1);
    }

    /**
     * How many variants of a source go before.
     *
     * @param fromBins whether a stock of parts says what can be drawn: it is full again for each part, so that others
     *     are refused each time, and counting would not keep the parts from meeting
     */
    int before(String source, boolean fromBins) {
        return fromBins && isOfCourse() ? 0 : taken.getOrDefault(source, 0);
    }

    Stretch ofSheets(boolean fromBins) {
        if (!isOfCourse()) {
            return Stretch.WHOLE;
        }
        return fromBins ? new Stretch(false, true, (retake ? weeks : 0) + week - 1, 2 * weeks) : Stretch.FRONT;
    }

    /** For a page to practise with. */
    public Stretch ofPractice() {
        return isOfCourse() ? Stretch.lane(week - 1, 2 * weeks) : Stretch.FROM_THE_END;
    }

    Stretch ofCards() {
        return isOfCourse() ? Stretch.lane(weeks + week - 1, 2 * weeks) : Stretch.FROM_THE_END;
    }

    /** What a plan's fingerprint says of it; nothing of a whole one, so that its IDs stay. */
    List<String> stored() {
        if (isWhole()) {
            return List.of();
        }
        List<String> stored = new ArrayList<>(List.of(
                "portion",
                week + " of " + weeks,
                Boolean.toString(retake),
                Integer.toString(seats),
                written(taken),
                written(only)));
        if (variation > 0) {
            stored.add("variation " + variation);
        }
        return stored;
    }

    /**
     * What it says of the numbers themselves.
     *
     * @param sources from which they are drawn
     * @param fromBins whether a stock of parts says what can be drawn
     */
    List<String> drawn(Set<String> sources, boolean fromBins) {
        Map<String, Integer> before = new TreeMap<>();
        sources.forEach(source -> before.put(source, before(source, fromBins)));
        return List.of(ofSheets(fromBins).toString(), written(before), written(only));
    }

    private static String written(Map<?, ?> map) {
        StringBuilder text = new StringBuilder();
        map.forEach((key, value) -> text.append(key).append(": ").append(value).append("; "));
        return text.toString();
    }
}
