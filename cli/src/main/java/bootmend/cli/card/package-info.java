/** Commands that look at cards and explain. */
package bootmend.cli.card;
