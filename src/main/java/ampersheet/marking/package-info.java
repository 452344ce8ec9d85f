/**
 * Returned answers are judged by the engine that made the sheets: marks, a page for each learner, a report on the
 * class. Start reading at {@link ampersheet.marking.Marking}.
 */
package ampersheet.marking;
