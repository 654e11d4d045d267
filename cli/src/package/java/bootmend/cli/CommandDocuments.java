package bootmend.cli;

import bootmend.workplace.Workplace;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import picocli.AutoComplete;
import picocli.CommandLine;

/** Writes what comes of the commands' own words when bootmend is packaged: the shells' completion and manual pages. */
public final class CommandDocuments {

    private CommandDocuments() {}

    /** @param arguments the version, the folder for AsciiDoc manual pages, and the completion's file */
    public static void main(String[] arguments) throws IOException {
        Path folder = Files.createDirectories(Path.of(arguments[1]));
        Path completion = Path.of(arguments[2]);
        PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
        CommandLine line = CommandLines.create(Workplace.ofThisComputer(folder), null, nowhere, nowhere);
        Files.createDirectories(completion.getParent());
        Files.writeString(completion, AutoComplete.bash(line.getCommandName(), line));
        pages(line, new ManualPage("bootmend " + arguments[0]), folder);
    }

    /** One page for the command, and for every command below it. */
    private static void pages(CommandLine line, ManualPage page, Path folder) throws IOException {
        Files.writeString(folder.resolve(ManualPage.name(line) + ".adoc"), page.of(line));
        for (CommandLine command : line.getSubcommands().values()) {
            pages(command, page, folder);
        }
    }
}
