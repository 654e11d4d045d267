/** All that changes a card: worked out first, shown, then made. */
package bootmend.operation;
