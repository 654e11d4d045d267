package bootmend.cli.option;

import java.util.OptionalDouble;

/** What stands for an option that may not have been given. */
public final class Given {

    private Given() {}

    /** An option's value; empty where it was not given. */
    public static OptionalDouble number(Double option) {
        return option == null ? OptionalDouble.empty() : OptionalDouble.of(option);
    }
}
