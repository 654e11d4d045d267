package bootmend.cli;

import picocli.CommandLine.Option;

/** What every command that changes a card offers. */
final class ChangeOptions {

    @Option(names = "--dry-run", description = "Show the plan only and write nothing.")
    private boolean dryRun;

    @Option(names = "--yes", description = "Make the change without asking.")
    private boolean yes;

    @Option(names = "--in-place",
            description = "On a boot partition without a free cluster, overwrite the file where it stands. A cut in the "
                + "middle then leaves it half old, half new until it is recovered on this computer.")
    private boolean inPlace;

    boolean dryRun() {
        return dryRun;
    }

    boolean yes() {
        return yes;
    }

    boolean inPlace() {
        return inPlace;
    }
}
