/**
 * What is wrong, where, what was expected, and what to do next. Portable: no library. Start reading at
 * {@link ampersheet.diagnostic.Diagnostic}.
 */
package ampersheet.diagnostic;
