/** What is kept on this computer besides undo records: profiles, trials and what trials come to. */
package bootmend.record;
