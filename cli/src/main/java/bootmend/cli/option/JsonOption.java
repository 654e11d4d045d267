package bootmend.cli.option;

import picocli.CommandLine.Option;

/** How a command that is about no card gives its answer. */
public final class JsonOption {

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    public boolean json() {
        return json;
    }
}
