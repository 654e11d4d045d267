package bootmend.device.system;

import bootmend.CardException;
import bootmend.device.CardSource;
import java.io.IOException;
import java.nio.file.Path;

/** What a process does in which the helper library's native part does not load; {@link HelperLibraryTest} starts it. */
final class WithoutHelper {

    private WithoutHelper() {}

    public static void main(String[] args) throws CardException, IOException {
        Path image = Path.of(args[0]);
        LocalCards cards = new LocalCards(FixedDisks.ALLOWED);
        try (CardSource card = cards.open(image, true)) {
            System.out.println("image opened: " + card.bytes());
        }
        DiskList.ofThisComputer().now();
        System.out.println("disks listed: true");
        try {
            LinuxHold.of(image.toString());
        } catch (CardException e) {
            System.out.println("held: " + e.getMessage());
        }
    }
}
