/**
 * Formulas with dimensions: parse once, check, evaluate, and fold the one tree into text, MathML and the line with the
 * numbers put in. Portable: {@code java.lang} and {@code java.util} only. Start reading at
 * {@link ampersheet.formula.Expression}.
 */
package ampersheet.formula;
