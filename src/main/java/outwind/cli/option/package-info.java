/**
 * The options that commands share, each with the converter of its values. Read {@link
 * outwind.cli.option.BoardOptions} first.
 */
package outwind.cli.option;
