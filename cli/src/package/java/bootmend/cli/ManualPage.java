package bootmend.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.codegen.docgen.manpage.ManPageGenerator;

/**
 * A command's manual page in AsciiDoc.
 *
 * <p>picocli's generator writes most of it. It takes a whole description for the name's line where a command has no
 * header, and leaves the help's last part out; both are made good here.
 *
 * @param version what stands at the page's foot
 */
record ManualPage(String version) {

    private static final String EXIT_CODES = "Exit codes: ";
    private static final String EXAMPLE = "Example:";
    private static final String EXAMPLES = "Examples:";
    private static final String INDENT = "  ";

    /** The page's name, such as {@code bootmend-show}. */
    static String name(CommandLine line) {
        return line.getCommandSpec().qualifiedName("-");
    }

    String of(CommandLine line) {
        CommandSpec spec = line.getCommandSpec();
        spec.versionProvider(null).version(version);
        if (spec.usageMessage().header().length == 0) {
            spec.usageMessage().header(firstSentence(spec.usageMessage().description()[0]));
        }
        StringWriter page = new StringWriter();
        ManPageGenerator.writeSingleManPage(new PrintWriter(page), spec);
        return page.toString()
                        .replaceFirst("(?m)^:manmanual: .*$", ":manmanual: bootmend manual")
                        .replaceAll("(?m)^(== .*):$", "$1")
                + footer(List.of(spec.usageMessage().footer()))
                + seeAlso(line);
    }

    private static String firstSentence(String text) {
        int end = text.indexOf(". ");
        return end < 0 ? text : text.substring(0, end + 1);
    }

    private static String footer(List<String> lines) {
        StringBuilder page = new StringBuilder();
        boolean example = false;
        for (String line : lines) {
            if (line.equals(EXAMPLE) || line.equals(EXAMPLES)) {
                page.append("\n== ").append(line, 0, line.length() - 1).append("\n\n");
                example = true;
            } else if (example && line.startsWith(INDENT)) {
                // An indented line is shown as it stands.
                page.append(line).append('\n');
            } else if (line.startsWith(EXIT_CODES)) {
                page.append("\n== Exit status\n\n");
                for (String code : line.substring(EXIT_CODES.length())
                        .replaceAll("\\.$", "")
                        .split("; ", -1)) {
                    page.append(code.replaceFirst(" ", ":: ")).append('\n');
                }
            } else if (!line.isBlank()) {
                page.append(example ? "\n" : "\n== Note\n\n").append(line).append("\n\n");
            }
        }
        return page.toString();
    }

    private static String seeAlso(CommandLine line) {
        List<CommandLine> others = new ArrayList<>(line.getSubcommands().values());
        for (CommandLine above = line.getParent(); above != null; above = above.getParent()) {
            others.add(0, above);
        }
        return others.stream()
                .map(other -> "*" + name(other) + "*(1)")
                .collect(Collectors.joining(", ", "\n== See also\n\n", "\n"));
    }
}
