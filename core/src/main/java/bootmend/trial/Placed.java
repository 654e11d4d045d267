package bootmend.trial;

/**
 * A trial whose clock and voltage are known.
 *
 * @param setting what was set, or stock where nothing was
 */
public record Placed(Trial trial, Setting setting) {

    public boolean is(Standing.Kind kind) {
        return trial.standing().is(kind);
    }
}
