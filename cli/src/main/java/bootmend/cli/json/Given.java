package bootmend.cli.json;

import java.util.OptionalDouble;
import java.util.OptionalLong;

/** Goes between values that may be missing and the null that options and JSON have for them. */
public final class Given {

    private Given() {}

    /** An option's value; empty where it was not given. */
    public static OptionalDouble number(Double option) {
        return option == null ? OptionalDouble.empty() : OptionalDouble.of(option);
    }

    /** A value for JSON; null where there is none. */
    public static Double orNull(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }

    /** A value for JSON; null where there is none. */
    public static Long orNull(OptionalLong value) {
        return value.isPresent() ? value.getAsLong() : null;
    }
}
