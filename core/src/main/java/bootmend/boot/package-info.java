/** The boot chain: what a board needs from a card, link by link, and what that comes to. */
package bootmend.boot;
