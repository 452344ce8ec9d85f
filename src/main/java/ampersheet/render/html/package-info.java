/**
 * A document as one self-contained, accessible HTML file that prints well. {@link ampersheet.render.html.HtmlPage} is
 * the frame, BlockMarkup what stands in it, ProseMarkup the author's words, {@code sheet.css} how it looks.
 */
package ampersheet.render.html;
