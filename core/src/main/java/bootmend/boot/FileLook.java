package bootmend.boot;

/**
 * What a look into a boot file came to.
 *
 * @param state never missing
 * @param kind what the file is, in words, such as {@code a gzip file}
 * @param why what is wrong or not known, in a clause that follows the file's name; empty where it is whole
 * @param check what was looked at, in a clause
 * @param isCut whether it ends too early, rather than being something else
 */
record FileLook(LinkState state, String kind, String why, String check, boolean isCut) {

    static FileLook whole(String kind, String check) {
        return new FileLook(LinkState.WHOLE, kind, "", check, false);
    }

    static FileLook unknown(String kind, String why) {
        return new FileLook(LinkState.UNKNOWN, kind, why, why, false);
    }

    static FileLook damaged(String kind, String why) {
        return new FileLook(LinkState.DAMAGED, kind, why, why, false);
    }

    static FileLook cut(String kind, String why) {
        return new FileLook(LinkState.DAMAGED, kind, why, why, true);
    }

    boolean isWhole() {
        return state == LinkState.WHOLE;
    }
}
