package bootmend.finding;

/** What a card is checked for. */
public enum Purpose {
    /** The card goes out to whoever will use it. */
    SHIP("ship"),
    /** The board's boot firmware is about to be updated with this card. */
    FIRMWARE_UPDATE("firmware-update"),
    /** A setting is about to be tried under full load. */
    STABILITY_RUN("stability-run");

    private final String word;

    Purpose(String word) {
        this.word = word;
    }

    /** How a user writes it. */
    public String word() {
        return word;
    }

    @Override
    public String toString() {
        return word;
    }
}
