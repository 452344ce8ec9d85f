/** Heat networks of resistances and capacities: steady and transient temperatures, losses that depend on them. */
package ampersheet.thermal;
