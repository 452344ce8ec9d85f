package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Reads the group {@code portion:} of a plan, which the program itself has written. */
final class PortionReader {
    private static final int MOST_TAKEN = 10_000_000;
    private static final int MOST_VARIATIONS = 10_000;
    private static final String AS_WRITTEN = say("plan.portion.next");

    private final Fields fields;
    private final Faults faults;

    private PortionReader(Yaml.Mapping group, Faults faults) {
        this.fields = new Fields(group, "portion", faults);
        this.faults = faults;
    }

    static Portion read(Yaml.Mapping group, Faults faults) {
        return new PortionReader(group, faults).read();
    }

    private Portion read() {
        List<Integer> week = fields.text("week").map(this::week).orElse(List.of(0, 0));
        boolean retake =
                fields.text("retake").map(said -> said.text().equals("yes")).orElse(false);
        int seats = fields.text("seats")
                .flatMap(said -> number(said, SheetId.LAST_SEAT))
                .orElse(SheetId.LAST_SEAT);
        Map<String, Integer> taken = new TreeMap<>();
        fields.group("taken")
                .ifPresent(group -> group.entries()
                        .forEach(entry -> number(entry.value(), MOST_TAKEN)
                                .ifPresent(count -> taken.put(entry.key().text(), count))));
        Map<Integer, List<Integer>> only = new TreeMap<>();
        fields.group("only")
                .ifPresent(group -> group.entries()
                        .forEach(entry -> number(entry.key(), SheetId.LAST_SEAT)
                                .ifPresent(seat -> only.put(seat, problems(entry.value())))));
        int variation = fields.text("variation")
                .flatMap(said -> number(said, MOST_VARIATIONS))
                .orElse(0);
        fields.finish();
        return new Portion(week.get(0), week.get(1), retake, seats, taken, only, variation);
    }

    /** Its number, and how many there are. */
    private List<Integer> week(Yaml.Scalar written) {
        String[] parts = written.text().split(" of ", -1);
        if (parts.length == 2 && isNumber(parts[0]) && isNumber(parts[1])) {
            int week = Integer.parseInt(parts[0]);
            int weeks = Integer.parseInt(parts[1]);
            if (week >= 1 && week <= weeks && weeks <= CoursePlan.MOST_WEEKS) {
                return List.of(week, weeks);
            }
        }
        faults.error(
                written.place(),
                say("plan.portion.week", "written", written.text()),
                say("plan.portion.week.expected"),
                AS_WRITTEN);
        return List.of(0, 0);
    }

    private List<Integer> problems(Yaml written) {
        List<Integer> problems = new ArrayList<>();
        for (Yaml item : written instanceof Yaml.Sequence list ? list.items() : List.of(written)) {
            number(item, PlanReader.MOST_PROBLEMS).ifPresent(problems::add);
        }
        return problems;
    }

    private Optional<Integer> number(Yaml written, int most) {
        if (written instanceof Yaml.Scalar scalar && isNumber(scalar.text())) {
            int value = Integer.parseInt(scalar.text());
            if (value >= 1 && value <= most) {
                return Optional.of(value);
            }
        }
        faults.error(
                written.place(),
                say("plan.portion.number"),
                say("plan.whole-number-to", "most", Integer.toString(most)),
                AS_WRITTEN);
        return Optional.empty();
    }

    private static boolean isNumber(String text) {
        return !text.isEmpty() && text.length() <= 8 && text.chars().allMatch(c -> c >= '0' && c <= '9');
    }
}
