/** What was seen on a card: where, how heavy it is for which purpose, and what repairs it; the same from volume to screen. */
package bootmend.finding;
