package bootmend.tuning;

/** What a board does with the warranty bit of its revision code. */
public enum WarrantyBit {
    /** The board can set it, for good. */
    TRACKED("tracked"),
    NEVER_SET("never set"),
    NOT_PUBLISHED("not published");

    private final String word;

    WarrantyBit(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
