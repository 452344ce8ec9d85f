/**
 * What a learner's practice is: the record of what was done, and the rules of support, order and being settled, as pure
 * functions of record, event and day. {@link ampersheet.practice.Practice} is the way in.
 */
package ampersheet.practice;
