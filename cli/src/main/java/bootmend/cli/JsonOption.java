package bootmend.cli;

import picocli.CommandLine.Option;

/** How a command that is about no card gives its answer. */
final class JsonOption {

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    boolean json() {
        return json;
    }
}
