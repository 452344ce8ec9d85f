/**
 * Plan, roster, seats, sheet IDs; composes problems into documents. Start reading at {@link ampersheet.sheet.Composer}.
 */
package ampersheet.sheet;
