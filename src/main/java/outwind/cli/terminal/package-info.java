/**
 * How text reaches the terminal: folded, cleaned, in letters it can show. Read {@link outwind.cli.terminal.Terminal}
 * first.
 */
package outwind.cli.terminal;
