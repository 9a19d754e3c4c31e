/**
 * The command line: reads arguments, prints, and sets the exit code; nothing else does.
 *
 * <p>{@link outwind.cli.Main} starts it; each command is a class of its own. Exit 0 when the question was answered, 1
 * when the input was bad, 2 when the command line was.
 */
package outwind.cli;
