package ampersheet.sheet;

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
                    "this plan deals evenly and lets problems come again, and cannot do both: a variant that is dealt "
                            + "to another seat of its group would come again beside a seat that has it",
                    "even: yes without repeats: allowed, or the other way round",
                    "Take one of the two out; for a large class put other templates of the skill into a pool.");
        }
        return dealing;
    }
}
