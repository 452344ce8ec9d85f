/**
 * The models of a problem: what a template plans, and what is made of it with numbers in, solved when first asked. A
 * {@link ampersheet.model.Measure} reads one value off a model; start with {@link ampersheet.model.Models}.
 */
package ampersheet.model;
