/**
 * Documents on paper: one tagged, accessible PDF (PDF/UA-1) of many handouts, the same bytes for the same documents.
 * Start reading at {@link ampersheet.render.pdf.PdfBook}.
 */
package ampersheet.render.pdf;
