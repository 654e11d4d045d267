/** The desktop window: how it starts and what it keeps between starts. */
package bootmend.gui;
