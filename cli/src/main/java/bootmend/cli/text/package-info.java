/** Words, tables and pages for a terminal. */
package bootmend.cli.text;
