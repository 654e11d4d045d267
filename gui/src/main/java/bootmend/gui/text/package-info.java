/** The window's words, kept in resource bundles. */
package bootmend.gui.text;
