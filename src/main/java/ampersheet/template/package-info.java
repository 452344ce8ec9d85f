/** Template files: read, checked as a whole, every fault told with file, line, column, caret and next action. */
package ampersheet.template;
