/**
 * Physical quantities: value with dimension, units and prefixes, preferred numbers, reading what a person types and
 * writing by the SI rules. Portable: {@code java.lang} and {@code java.util} only. Start reading at
 * {@link ampersheet.quantity.Quantity}.
 */
package ampersheet.quantity;
