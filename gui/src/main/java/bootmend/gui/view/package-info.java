/** The window's parts, each thin over its model. */
package bootmend.gui.view;
