/** Cards that are open, and the config files on them; front ends never hold one. */
package bootmend.card;
