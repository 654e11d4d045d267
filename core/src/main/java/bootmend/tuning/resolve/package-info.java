/** What a board will really run: every key's value with the line it comes from, or what it depends on. */
package bootmend.tuning.resolve;
