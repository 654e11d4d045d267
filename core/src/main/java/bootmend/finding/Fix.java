package bootmend.finding;

/** What repairs something that was found. */
public enum Fix {
    /** A repair of the card, without a guess. */
    REPAIR("A repair puts it right, and shows first what it writes."),
    /** Tuning put back to stock. */
    RESET("A reset of the tuning puts it right."),
    /** The file that was hurt, or all that the image lacks, brought from where it is whole. */
    OTHER_FILE("Copy what is concerned onto the card again from where it is whole."),
    /** Something that costs something, or of which only a person knows what was meant. */
    DECISION("Someone has to look at it and decide."),
    /** Nothing that can be named. */
    NOTHING(
            "Nothing repairs it here; make an image of the card before anything else writes to it, and copy off it what is"
                    + " needed.");

    private final String words;

    Fix(String words) {
        this.words = words;
    }

    /** One sentence on what to do. */
    public String words() {
        return words;
    }
}
