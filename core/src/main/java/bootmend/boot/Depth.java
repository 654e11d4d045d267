package bootmend.boot;

/** How far a boot chain is looked at. */
public enum Depth {
    /** Names and sizes of the root folder and of folders that prefixes name, and the settings; nothing else is read. */
    LISTING,
    /** Names and sizes, the settings, the command line and the first bytes of the root partition; no boot file. */
    NAMES,
    /** Every boot file that the board takes, to its end where only that tells whether it is whole. */
    CONTENTS
}
