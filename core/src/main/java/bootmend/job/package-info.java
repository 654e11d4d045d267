/** The operations a user names (show, reset, undo, ...): the only door that the commands and the window use. */
package bootmend.job;
