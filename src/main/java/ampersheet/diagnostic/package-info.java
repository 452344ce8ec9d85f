/** What is wrong, where, what was expected, and what to do next. Portable: no library. */
package ampersheet.diagnostic;
