/** Documents on paper: one tagged, accessible PDF (PDF/UA-1) of many handouts, the same bytes for the same documents. */
package ampersheet.render.pdf;
