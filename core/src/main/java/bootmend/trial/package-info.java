/** Trials of settings on boards, their store and logs, and what follows from them: frontier, next step, heat, gain. */
package bootmend.trial;
