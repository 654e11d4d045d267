package bootmend.finding;

/** How heavy a finding is for a purpose, the heaviest first. */
public enum Severity {
    /** The card should not be used for the purpose as it is. */
    BLOCKER("blocker"),
    /** Someone should look at it and decide. */
    WARNING("warning"),
    /** Good to know. */
    NOTE("note");

    private final String word;

    Severity(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
