/**
 * The main flow: a plan and a roster become sheets, keys and an index. Start reading at {@link ampersheet.issue.Issue}.
 */
package ampersheet.issue;
