package bootmend.cli;

import java.util.Arrays;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.TypeConversionException;

/**
 * Whether what is printed is coloured: {@code auto} on a terminal unless the variable {@code NO_COLOR} is set, which is
 * common practice, no source.
 */
enum Colours {
    AUTO(Ansi.AUTO),
    ALWAYS(Ansi.ON),
    NEVER(Ansi.OFF);

    private static final String NAME = "--color";

    private final Ansi ansi;

    Colours(Ansi ansi) {
        this.ansi = ansi;
    }

    /** The option, which every command takes. */
    static OptionSpec option() {
        return OptionSpec.builder(NAME)
                .paramLabel("WHEN")
                .arity("1")
                .type(Colours.class)
                .converters(Colours::of)
                .scopeType(ScopeType.INHERIT)
                .description("Colours: auto (on a terminal), always or never.")
                .build();
    }

    private static Colours of(String word) {
        return Arrays.stream(values())
                .filter(each -> each.name().equalsIgnoreCase(word))
                .findFirst()
                .orElseThrow(() -> new TypeConversionException("say auto, always or never, not \"" + word + "\""));
    }

    /** Has a command line, with all its commands, print as the arguments ask for; what is wrong with them it finds itself. */
    static void apply(CommandLine line, String[] arguments) {
        asked(arguments).ifPresent(colours -> line.setColorScheme(CommandLine.Help.defaultColorScheme(colours.ansi)));
    }

    private static Optional<Colours> asked(String[] arguments) {
        for (int i = 0; i < arguments.length && !arguments[i].equals("--"); i++) {
            String value = arguments[i].startsWith(NAME + "=")
                    ? arguments[i].substring(NAME.length() + 1)
                    : arguments[i].equals(NAME) && i + 1 < arguments.length ? arguments[i + 1] : "";
            Optional<Colours> found = Arrays.stream(values())
                    .filter(each -> each.name().equalsIgnoreCase(value))
                    .findFirst();
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }
}
