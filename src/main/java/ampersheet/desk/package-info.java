/**
 * Everything the commands do, in the instructor's own browser, over the same plain files. It holds no rule of its own:
 * it reads and writes a course folder and calls what the commands call. Start reading at {@link ampersheet.desk.Desk}.
 */
package ampersheet.desk;
