/**
 * The command line: the only place with exit codes, streams, clock and default folders. Start reading at
 * {@link ampersheet.command.Main}.
 */
package ampersheet.command;
