/** Commands that change cards. */
package bootmend.cli.change;
