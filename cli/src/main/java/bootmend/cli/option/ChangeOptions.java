package bootmend.cli.option;

import bootmend.NextStep.Allow;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;

/** What every command that changes a card offers. */
public final class ChangeOptions {

    @Option(names = "--dry-run", description = "Show the plan only and write nothing.")
    private boolean dryRun;

    @Option(names = "--yes", description = "Make the change without asking.")
    private boolean yes;

    @Option(
            names = "--in-place",
            description = "On a boot partition without a free cluster, overwrite the file in place. A cut in the "
                    + "middle then leaves it half old, half new until it is recovered on this computer.")
    private boolean inPlace;

    @Option(
            names = "--fixed-disk",
            description =
                    "Also take a disk that is built in or over 2 TiB, which a card is not. Check with `bootmend cards` "
                            + "that it is the right one.")
    private boolean fixedDisk;

    @Option(names = "--eject", description = "After the change, have the system eject the card.")
    private boolean eject;

    @Option(
            names = "--before",
            paramLabel = "FILE.zip",
            description =
                    "First keep all files of the boot partition in this file, as `bootmend keep` does; of several "
                            + "cards, in a folder of this name.")
    private Path before;

    /** Where the card's files are to be kept first. */
    public Optional<Path> before() {
        return Optional.ofNullable(before);
    }

    public boolean eject() {
        return eject;
    }

    /** The workplace that takes the disks which were allowed. */
    public Workplace on(Workplace workplace) {
        return fixedDisk ? workplace.withFixedDisks() : workplace;
    }

    public boolean dryRun() {
        return dryRun;
    }

    public boolean yes() {
        return yes;
    }

    /** A request with the risks that the options take. */
    public ChangeOrder order(ChangeRequest request) {
        ChangeOrder order = ChangeOrder.of(request);
        return inPlace ? order.accepting(Allow.IN_PLACE) : order;
    }
}
