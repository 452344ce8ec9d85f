/**
 * What the program says, by key: one text for each language. Start reading at {@link ampersheet.language.Language}. The
 * texts stand in the resources, a file for each face of the program.
 */
package ampersheet.language;
