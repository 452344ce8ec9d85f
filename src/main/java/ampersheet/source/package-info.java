/** What comes in from outside: files read whole and within bounds, tables taken apart, faults kept to what one reads. */
package ampersheet.source;
