/**
 * A document as Markdown that reads well as plain text. Start reading at
 * {@link ampersheet.render.markdown.MarkdownPage}.
 */
package ampersheet.render.markdown;
