/** What is on a card and what words mean, worked out without a write, as values to show. */
package bootmend.view;
