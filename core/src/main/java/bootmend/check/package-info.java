/** Rules that turn what was read from a card into findings, for a purpose: ship, firmware update, stability run. */
package bootmend.check;
