/** A class issued and marked by many machines; read {@code ClassJob} first. Not in the program's own jar. */
package ampersheet.spark;
