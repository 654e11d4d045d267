package bootmend.cli.option;

import picocli.CommandLine.Option;

/** Where the result goes when a config file on its own is changed. */
public final class InFileOption {

    @Option(
            names = "--in-file",
            description = "Where a config file is named in place of a card: write the result into it; without this it "
                    + "goes to standard output. No undo record is kept.")
    private boolean inFile;

    public boolean inFile() {
        return inFile;
    }
}
