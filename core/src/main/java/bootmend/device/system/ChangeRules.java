package bootmend.device.system;

import bootmend.CardException;
import bootmend.NextStep;
import java.nio.file.Path;
import java.util.Optional;

/** Which disks may be changed. */
final class ChangeRules {

    /** Cards end here: SDXC's largest capacity. Source: SD Physical Layer Simplified Specification, "SDXC": up to 2 TB. */
    private static final long MOST_BYTES = 2L << 40;

    private final SystemDisks disks;
    private final FixedDisks fixed;

    ChangeRules(SystemDisks disks, FixedDisks fixed) {
        this.disks = disks;
        this.fixed = fixed;
    }

    /** Refuses an image that something on this computer has attached or mounted. */
    void checkImage(Path image) throws CardException {
        refuseWhenUsed(disks.useOfImage(image));
    }

    /** Refuses a disk that holds the running system, is in use, is write-protected, or does not look like a card. */
    void checkDevice(String device) throws CardException {
        Optional<String> system = disks.runningSystemOn(device);
        if (system.isPresent()) {
            throw CardException.refused(
                    "it is on the disk that holds the running system (" + system.get() + ")",
                    "Check which device the card is; to change this disk, put it into another computer.",
                    NextStep.Plain.LIST_CARDS);
        }
        refuseWhenUsed(disks.useOf(device));
        Optional<DiskFacts> facts = disks.facts(device);
        if (facts.filter(DiskFacts::readOnly).isPresent()) {
            throw writeProtected(facts.get().isLoop());
        }
        if (fixed == FixedDisks.REFUSED) {
            refuseUnlessLikeACard(facts);
        }
    }

    private static void refuseWhenUsed(Optional<String> use) throws CardException {
        if (use.isPresent()) {
            throw CardException.refused(
                    "it is in use: " + use.get(),
                    "Unmount or detach it first, leave the card in its reader, then try again.");
        }
    }

    private static void refuseUnlessLikeACard(Optional<DiskFacts> facts) throws CardException {
        String remedy = "Check that this is the card; a wrong disk would lose what is on it.";
        NextStep[] sure = {NextStep.Plain.LIST_CARDS, NextStep.Allow.FIXED_DISK};
        if (facts.isEmpty()) {
            throw CardException.refused(
                    "this system does not say whether it is a card or a built-in disk", remedy, sure);
        }
        if (facts.get().bytes() > MOST_BYTES) {
            throw CardException.refused("it has over 2 TiB, more than any card", remedy, sure);
        }
        if (!facts.get().removable()) {
            throw CardException.refused("it is a built-in disk, not a card that can be taken out", remedy, sure);
        }
    }

    static CardException writeProtected(boolean loop) {
        return loop
                ? CardException.refused(
                        "this loop device was attached read-only",
                        "Detach it and attach it again for writing, or name the image file itself.")
                : CardException.refused(
                        "the card is write-protected",
                        "Take it out, slide the lock tab on its side (or its adapter's) towards the contacts, put it back "
                                + "in and try again; a card that stays locked has a worn tab, or has locked itself and is worn out.");
    }
}
