/**
 * The same files and the same judgement in a browser: requests become calls, and judgements become JSON. Nothing is kept
 * but the files of one folder.
 */
package outwind.web;
