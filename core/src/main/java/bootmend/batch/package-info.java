/** Many cards: their names, the work on several at a time, and a station that waits for cards. */
package bootmend.batch;
