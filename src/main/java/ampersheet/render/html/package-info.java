/** A document as one self-contained, accessible HTML file that prints well. */
package ampersheet.render.html;
