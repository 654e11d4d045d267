/**
 * A full look at a FAT volume, what is wrong with it, and the sectors that repair it, worked out and written nowhere.
 *
 * <p>Sources throughout: as in {@code bootmend.fat}; which of two claims is believed where a volume contradicts itself is
 * this project's own judgement, told where it is made.
 */
package bootmend.fat.check;
