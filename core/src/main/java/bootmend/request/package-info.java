/** What a user names: a card, a board and what is known about it. */
package bootmend.request;
