/** The main flow: a plan and a roster become sheets, keys and an index. */
package ampersheet.issue;
