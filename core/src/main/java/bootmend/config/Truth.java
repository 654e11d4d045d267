package bootmend.config;

/** Three-valued logic: what is asked holds, does not hold, or cannot be told from what is known. */
public enum Truth {
    TRUE,
    FALSE,
    UNKNOWN;

    public static Truth of(boolean value) {
        return value ? TRUE : FALSE;
    }

    /** False where either is false, true where both are true, else unknown. */
    public Truth and(Truth other) {
        if (this == FALSE || other == FALSE) {
            return FALSE;
        }
        return this == TRUE && other == TRUE ? TRUE : UNKNOWN;
    }

    /** True where either is true, false where both are false, else unknown. */
    public Truth or(Truth other) {
        if (this == TRUE || other == TRUE) {
            return TRUE;
        }
        return this == FALSE && other == FALSE ? FALSE : UNKNOWN;
    }
}
