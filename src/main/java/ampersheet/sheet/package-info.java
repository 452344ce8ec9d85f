/** Plan, roster, seats, sheet IDs; composes problems into documents. */
package ampersheet.sheet;
