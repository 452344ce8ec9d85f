/**
 * Template files: read, checked as a whole, every fault told with file, line, column, caret and next action. Start
 * reading at {@link ampersheet.template.TemplateReader}.
 */
package ampersheet.template;
