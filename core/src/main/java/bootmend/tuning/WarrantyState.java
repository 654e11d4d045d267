package bootmend.tuning;

/** What a revision code says about the warranty bit. */
public enum WarrantyState {
    SET("set: the warranty is void"),
    NOT_SET("not set"),
    NEVER_SET("never set on this board"),
    NOT_PUBLISHED("not set; whether this board ever sets it is not published");

    private final String word;

    WarrantyState(String word) {
        this.word = word;
    }

    /** How a listing says it. */
    public String word() {
        return word;
    }
}
