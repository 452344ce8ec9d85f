/**
 * What comes in from outside: files read whole and within bounds, tables taken apart, faults kept to what one reads;
 * what was made of a text before; and the archive in which files go out and come in again. Start reading at
 * {@link ampersheet.source.SourceFile}.
 */
package ampersheet.source;
