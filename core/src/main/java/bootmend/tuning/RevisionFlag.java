package bootmend.tuning;

/**
 * A bit of the new-style revision code that bars something.
 *
 * <p>Source: "Revision codes", revision-codes.adoc, commit 0456a78c.
 */
public enum RevisionFlag {
    OTP_READ_BARRED(29, "reading of one-time memory barred"),
    OTP_PROGRAM_BARRED(30, "programming of one-time memory barred"),
    OVER_VOLTAGE_BARRED(31, "over-voltage barred");

    private final int bit;
    private final String word;

    RevisionFlag(int bit, String word) {
        this.bit = bit;
        this.word = word;
    }

    /** How a listing says it. */
    public String word() {
        return word;
    }

    long mask() {
        return 1L << bit;
    }

    boolean isIn(long code) {
        return (code & mask()) != 0;
    }
}
