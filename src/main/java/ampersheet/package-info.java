/** Worked-example problem sets for bench electronics: solved twice, printed with keys, checked by the same engine. */
package ampersheet;
