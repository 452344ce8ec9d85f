/**
 * Heat networks of resistances and capacities: steady and transient temperatures, losses that depend on them. Start
 * reading at {@link ampersheet.thermal.HeatSolver}.
 */
package ampersheet.thermal;
