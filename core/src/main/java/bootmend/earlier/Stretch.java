package bootmend.earlier;

import java.util.List;

/**
 * Text that runs on from one place in free clusters.
 *
 * @param cluster where it begins
 * @param offset byte of that cluster at which it begins; over 0 behind the end of another text
 * @param bytes the text; not to be changed
 * @param ended whether zeros follow up to the end of its last sector, as behind a file's last byte
 * @param unit bytes of a sector
 * @param behind the clusters in which it goes on, in order
 * @param seams offsets at which it goes on in a cluster that is not the next
 */
record Stretch(
        long cluster, int offset, byte[] bytes, boolean ended, int unit, List<Long> behind, List<Integer> seams) {

    /** Whether one file may end here and another begin: a sector begins, and a line ended before it. */
    boolean mayEndAt(int at) {
        return at > 0 && (offset + at) % unit == 0 && bytes[at - 1] == '\n';
    }
}
