/**
 * Figures as shapes, as SVG and as words: a circuit, a chain of tiles, a heat path, a curve. Start reading at
 * {@link ampersheet.figure.Figure}.
 */
package ampersheet.figure;
