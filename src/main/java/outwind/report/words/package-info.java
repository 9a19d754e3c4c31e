/**
 * The words that every output shares. {@link outwind.report.words.Figures} is the only place where a number becomes
 * words; read it first, then {@link outwind.report.words.Sentences}.
 */
package outwind.report.words;
