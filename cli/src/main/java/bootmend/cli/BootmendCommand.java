package bootmend.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command that only has subcommands. */
@Command(
        name = "bootmend",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        description = {
            "Looks into the FAT boot partition of a single-board computer's card, straight from an image file or a "
                    + "block device, and puts its tuning lines back to stock. It never erases a card and never writes "
                    + "what it did not show.",
            ""
        },
        footer = {
            "",
            "A CARD is an image file, a block device, or the folder where its boot partition is mounted. If your "
                    + "desktop offers to erase the card, close that window.",
            "",
            "Exit codes: 0 done; 1 a check found a blocker; 2 wrong usage; 3 the card could not be read; 4 refused for "
                    + "safety; 5 a change was interrupted and waits for recovery.",
            "",
            "Example:",
            "  bootmend show lab-07.img",
        })
final class BootmendCommand implements Runnable {

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Say what to do, for example: bootmend show CARD");
    }
}
