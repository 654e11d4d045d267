package bootmend.config;

/**
 * An include line that could not be followed.
 *
 * @param kind what is wrong
 * @param file the file that the include line is in
 * @param line the include line's number, counted from 1
 * @param name the file it names
 */
public record IncludeProblem(Kind kind, String file, int line, String name) {

    /** Why an include line could not be followed. */
    public enum Kind {
        MISSING("names %s, which is not on the boot partition; put the file there or take the line out"),
        LOOP("names %s, which is being read already; take one of the include lines out"),
        TOO_DEEP("names %s, the last of a long row of files that include each other; put their text into one file"),
        TOO_MUCH("names %s, and the included files are too many or too long to follow; include less");

        private final String words;

        Kind(String words) {
            this.words = words;
        }
    }

    /** The problem and what to do, in one sentence that is safe to show. */
    public String sentence() {
        return "Line " + line + " of " + VisibleText.of(file) + " " + String.format(kind.words, VisibleText.of(name))
                + ".";
    }
}
