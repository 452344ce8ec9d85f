/** Problems as lines for a terminal. Start reading at {@link ampersheet.render.text.TerminalText}. */
package ampersheet.render.text;
