package bootmend.trial;

/**
 * A trial whose clock and voltage step are known.
 *
 * @param setting what was set, or stock where nothing was
 */
public record Placed(Trial trial, Setting setting) {

    boolean is(Verdict.Kind kind) {
        return trial.verdict().is(kind);
    }
}
