package bootmend.device.system;

import java.io.IOException;
import java.util.List;

/** Ejects a disk through whichever of Linux's own programs for that is there. */
final class LinuxEjection {

    private final Programs programs;

    LinuxEjection(Programs programs) {
        this.programs = programs;
    }

    /** @param disk the whole disk, such as {@code /dev/sdx} */
    Ejection eject(String disk) {
        String said = "";
        for (List<String> command : List.of(
                List.of("eject", disk),
                List.of("udisksctl", "power-off", "--no-user-interaction", "--block-device", disk))) {
            try {
                Programs.Result result = programs.run(command);
                if (result.code() == 0) {
                    return Ejection.done("Ejected: take the card out.");
                }
                said = command.get(0) + " said: " + result.said();
            } catch (IOException e) {
                // Not installed; the next one may be.
                said = said.isEmpty() ? "neither eject nor udisksctl is installed" : said;
            }
        }
        return Ejection.notDone("It was not ejected (" + said + "); all that was written is on the card, and it can be "
                + "taken out.");
    }
}
