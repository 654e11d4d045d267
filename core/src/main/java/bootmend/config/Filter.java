package bootmend.config;

import java.util.List;

/**
 * A section line of the config file: what must hold for the lines below it to count.
 *
 * <p>Source: "Conditional filters", config_txt/conditional.adoc, commits 23cc7a36 and 3e67d54c.
 */
public sealed interface Filter {

    /** The filter as a section line writes it, safe to show. */
    String text();

    /** {@code [all]}: clears every filter. */
    record All() implements Filter {

        @Override
        public String text() {
            return "[all]";
        }
    }

    /** {@code [none]}: lets nothing through. */
    record None() implements Filter {

        @Override
        public String text() {
            return "[none]";
        }
    }

    /** A model, such as {@code [pi4]}. */
    record Model(String token) implements Filter {

        @Override
        public String text() {
            return "[" + token + "]";
        }
    }

    /** {@code [board-type=0xNN]}: the type number of the revision code, 0 to 255. */
    record BoardType(int type) implements Filter {

        @Override
        public String text() {
            return String.format("[board-type=0x%02x]", type);
        }
    }

    /** {@code [0xSERIAL]}: the serial number's last eight hexadecimal digits, 0 to 0xFFFFFFFF. */
    record Serial(long digits) implements Filter {

        @Override
        public String text() {
            return String.format("[0x%08x]", digits);
        }
    }

    /** {@code [gpioN=0]} or {@code [gpioN=1]}: the level of a pin, 0 to 255. */
    record Pin(int pin, boolean high) implements Filter {

        @Override
        public String text() {
            return "[gpio" + pin + "=" + (high ? 1 : 0) + "]";
        }
    }

    /** {@code [EDID=NAME]}: a monitor of this name is attached. */
    record Monitor(String name) implements Filter {

        @Override
        public String text() {
            return "[EDID=" + VisibleText.of(name) + "]";
        }
    }

    /** {@code [HDMI:0]} or {@code [HDMI:1]}: a display port. */
    record Hdmi(int port) implements Filter {

        @Override
        public String text() {
            return "[HDMI:" + port + "]";
        }
    }

    /** {@code [tryboot]}: the board was started with its try-once flag. */
    record Tryboot() implements Filter {

        @Override
        public String text() {
            return "[tryboot]";
        }
    }

    /**
     * An expression on a boot variable, such as {@code [partition=2]} or {@code [boot_arg1&0xF0=0x10]}.
     *
     * @param value what to compare with, 0 to 0xFFFFFFFF; 0 for {@link Comparison#NOT_ZERO}
     * @param mask bits to keep before comparing; 0xFFFFFFFF where the expression has no mask
     */
    record BootVariable(String name, long mask, Comparison comparison, long value) implements Filter {

        /** The mask of an expression that has none. */
        static final long NO_MASK = 0xFFFF_FFFFL;

        /** Every boot variable there is. */
        public static final List<String> NAMES = List.of(
                "boot_arg1",
                "cust_otp0",
                "cust_otp1",
                "cust_otp2",
                "cust_otp3",
                "cust_otp4",
                "cust_otp5",
                "cust_otp6",
                "cust_otp7",
                "bootvar0",
                "boot_count",
                "boot_partition",
                "partition",
                "board_attributes");

        /** Whether the expression holds for this value of the variable. */
        public boolean holdsFor(long variable) {
            long kept = variable & mask;
            return switch (comparison) {
                case EQUAL -> kept == value;
                case NOT_ZERO -> kept != 0;
                case LESS -> kept < value;
                case GREATER -> kept > value;
            };
        }

        @Override
        public String text() {
            String masked = mask == NO_MASK ? name : String.format("%s&0x%x", name, mask);
            return "[" + masked
                    + switch (comparison) {
                        case EQUAL -> "=" + value;
                        case NOT_ZERO -> "";
                        case LESS -> "<" + value;
                        case GREATER -> ">" + value;
                    }
                    + "]";
        }
    }

    /** How a boot variable is compared. */
    enum Comparison {
        EQUAL,
        NOT_ZERO,
        LESS,
        GREATER
    }

    /** Anything else in square brackets; no source says what the board does with it. */
    record Unknown(String raw) implements Filter {

        @Override
        public String text() {
            return VisibleText.of(raw);
        }
    }
}
