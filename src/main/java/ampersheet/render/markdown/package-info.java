/** A document as Markdown that reads well as plain text. */
package ampersheet.render.markdown;
