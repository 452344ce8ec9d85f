/**
 * From a template to a problem: draw the givens, work the steps, prove each value by a second route, refuse. Start
 * reading at {@link ampersheet.problem.Workshop}.
 */
package ampersheet.problem;
