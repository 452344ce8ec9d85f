package ampersheet.sheet;

import java.util.List;

/**
 * A place for one problem on every sheet of a set.
 *
 * @param number from 0, in the order the plan lists
 * @param choice from 0; slots of one choice show the same template, an example and its twin
 * @param member which of the pool's members, counted on from the seat's own, this slot shows
 * @param pool names of the templates that may stand here; each stands here for an equal share of the class
 * @param example whether this is the worked example before its twin
 * @param fixed which givens are the same for everybody, in words; empty if all are drawn
 */
record Slot(int number, int choice, int member, List<String> pool, Support support, boolean example, String fixed) {
    Slot {
        pool = List.copyOf(pool);
    }

    /** The name under which draws of a template that are limited alike are counted. */
    String source(String template) {
        return fixed.isEmpty() ? template : template + " with " + fixed;
    }
}
