/** Commands on trials. */
package bootmend.cli.trial;
