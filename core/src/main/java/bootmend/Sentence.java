package bootmend;

/** Makes whole sentences of clauses, such as those that errors carry. */
public final class Sentence {

    private Sentence() {}

    /** The clause with a capital in front and a full stop behind, each only where it has none. */
    public static String of(String clause) {
        String text = clause.isEmpty() ? clause : Character.toUpperCase(clause.charAt(0)) + clause.substring(1);
        return text.endsWith(".") ? text : text + ".";
    }
}
