package bootmend.cli.text;

/** The colour that goes with a word on what becomes of a line or a key; the word always stands beside it. */
final class EffectStyle {

    static final String COUNTS = "fg(yellow)";

    private EffectStyle() {}

    /** A style of picocli's markup; empty for none. */
    static String of(String effect) {
        return switch (effect) {
            case "set" -> COUNTS;
            case "depends" -> "fg(cyan)";
            default -> "faint";
        };
    }
}
