/** Problems as lines for a terminal. */
package ampersheet.render.text;
