/** The command line: the only place with exit codes, streams, clock and default folders. */
package ampersheet.command;
