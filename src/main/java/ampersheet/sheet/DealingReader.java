package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.source.Faults;
import ampersheet.source.Fields;
import java.util.Map;

/** Reads the keys of a plan that say whom variants go to. */
final class DealingReader {
    private static final Map<String, Boolean> REPEATS = PlanReader.ordered("refused", false, "allowed", true);
    private static final Map<String, Boolean> EXAMPLES = PlanReader.ordered("own", false, "shared", true);
    private static final Map<String, Boolean> EVEN = PlanReader.ordered("no", false, "yes", true);

    private final PlanReader plan;
    private final Fields fields;
    private final Faults faults;

    DealingReader(PlanReader plan, Fields fields, Faults faults) {
        this.plan = plan;
        this.fields = fields;
        this.faults = faults;
    }

    Plan.Dealing read() {
        Plan.Dealing dealing = new Plan.Dealing(
                plan.choice(fields, "repeats", REPEATS, false),
                plan.choice(fields, "examples", EXAMPLES, false),
                plan.choice(fields, "even", EVEN, false));
        if (dealing.even() && dealing.repeats()) {
            faults.error(
                    fields.placeOf("even"),
                    say("plan.dealing.even-repeats"),
                    say("plan.dealing.even-repeats.expected"),
                    say("plan.dealing.even-repeats.next"));
        }
        return dealing;
    }
}
