/**
 * How {@code record} asks for readings. Read {@link outwind.cli.ask.Dialogue} first.
 */
package outwind.cli.ask;
