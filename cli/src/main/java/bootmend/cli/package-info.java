/** The commands: one class each, over core's upper rooms. */
package bootmend.cli;
