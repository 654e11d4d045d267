package bootmend.device.system;

import bootmend.CardException;
import bootmend.device.CardName;
import bootmend.device.CardOpener;
import bootmend.device.CardSource;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Opens every name as one disk, an image behind a {@link StubbornFile}, by all that a disk goes through. */
public final class StubbornCards implements CardOpener {

    private final CardOpener cards;

    /**
     * @param logical bytes of the sectors that the disk counts in
     * @param physical bytes of those that it takes
     */
    public StubbornCards(Path image, int logical, int physical) {
        SystemDisks disks = new ScriptedDisks(
                () -> new StubbornFile(
                        FileChannel.open(image, StandardOpenOption.READ, StandardOpenOption.WRITE), physical),
                logical,
                physical);
        this.cards = new LocalCards(disks, FixedDisks.REFUSED);
    }

    @Override
    public CardSource open(CardName name, boolean forChanging) throws CardException, IOException {
        return cards.open(new CardName.DeviceName(name.text()), forChanging);
    }
}
