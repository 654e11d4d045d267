/** Running a command: asking, one card or many, stopping. */
package bootmend.cli.run;
