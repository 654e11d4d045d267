package bootmend.tuning;

import java.util.List;

/** The bits of the board's throttle report, a mask such as {@code 0x50005}. */
public final class ThrottleBits {

    private static final int LAST_BIT = 31;

    private final List<ThrottleBit> all;

    private ThrottleBits(List<ThrottleBit> all) {
        this.all = all;
    }

    static ThrottleBits read(DataFile file) {
        return new ThrottleBits(file.withColumns("bit", "meaning", "source").map(ThrottleBits::bit, ThrottleBit::bit));
    }

    private static ThrottleBit bit(DataRow row) {
        return new ThrottleBit(row.number("bit", 0, LAST_BIT), row.required("meaning"));
    }

    public List<ThrottleBit> all() {
        return all;
    }

    /** The known bits that are set in a report. */
    public List<ThrottleBit> decode(long report) {
        return all.stream().filter(bit -> (report >>> bit.bit() & 1) == 1).toList();
    }

    /** The set bits of a report that no published meaning covers, as a mask; 0 where there are none. */
    public long unknown(long report) {
        return all.stream().mapToLong(bit -> 1L << bit.bit()).reduce(report, (rest, bit) -> rest & ~bit);
    }
}
