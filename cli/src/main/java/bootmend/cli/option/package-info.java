/** Options and arguments that several commands share, and what they come to. */
package bootmend.cli.option;
