package bootmend.boot;

/** What a fault most likely came from; a guess from its kind, never more. */
public enum Origin {
    CUT_WRITE("most likely a write that was cut short, as when power fails or a card is pulled"),
    HIGH_CLOCK("most likely a write under a clock or voltage that the board did not hold"),
    WRONG_EDIT("most likely an edit of the settings"),
    OTHER_CARD("most likely a copy from another card"),
    STOPPED_COPY("most likely an image whose copying was stopped"),
    INCOMPLETE_COPY("most likely a copy of files that left some out, or a file that was deleted"),
    OTHER_BOARD("most likely a card that was made for another board"),
    ON_PURPOSE("put there on purpose, most likely"),
    NOT_KNOWN("the card does not tell what it came from");

    private final String words;

    Origin(String words) {
        this.words = words;
    }

    /** A phrase that follows a comma or stands in brackets. */
    public String words() {
        return words;
    }
}
