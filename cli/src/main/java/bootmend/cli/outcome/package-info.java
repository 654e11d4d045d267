/** How a command ended: exit codes, counts, and the files it may make. */
package bootmend.cli.outcome;
