/** Changing a card: the plan, the undo record, the ordered commit, the read-back, and what is kept of each change. */
package bootmend.change;
