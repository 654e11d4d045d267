/** The commands: one class each, over {@code bootmend.job}. */
package bootmend.cli;
