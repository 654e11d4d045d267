package bootmend.earlier;

/** What a line by itself says of the text that it stands in. */
enum LineLook {
    /** Such a line stands in config files and hardly anywhere else. */
    KNOWN,
    /** A blank line or a comment: it says nothing. */
    NEUTRAL,
    /** It has the form of a setting, of a key that is not known. */
    UNKNOWN,
    /** No board would take it for a line of its config file. */
    FOREIGN
}
