package bootmend.device.system;

import bootmend.device.CardIdentity;
import bootmend.device.CardName;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A system with one disk, a card in a reader that tells no size, opened as the test says. */
final class ScriptedDisks implements SystemDisks {

    /** Opens the disk. */
    @FunctionalInterface
    interface Opening {
        RawFile open() throws IOException;
    }

    private final Opening opening;
    private final int sector;
    private final int physical;
    int sequence = 1;
    boolean changesWhileOpening;

    ScriptedDisks(Opening opening) {
        this(opening, DiskFacts.DEFAULT_SECTOR, DiskFacts.DEFAULT_SECTOR);
    }

    ScriptedDisks(Opening opening, int sector, int physical) {
        this.physical = physical;
        this.opening = opening;
        this.sector = sector;
    }

    @Override
    public Optional<DiskFacts> facts(String device) {
        return Optional.of(new DiskFacts(0, sector, physical, true, false, "usb"));
    }

    @Override
    public Optional<String> runningSystemOn(String device) {
        return Optional.empty();
    }

    @Override
    public Optional<String> useOf(String device) {
        return Optional.empty();
    }

    @Override
    public Optional<String> useOfImage(Path image) {
        return Optional.empty();
    }

    @Override
    public CardIdentity medium(String device) {
        return new CardIdentity(device, Optional.of("medium " + sequence), Optional.empty(), Optional.empty());
    }

    @Override
    public RawFile open(String device, boolean change) throws IOException {
        sequence += changesWhileOpening ? 1 : 0;
        return opening.open();
    }

    @Override
    public DiskHold hold(String device) {
        return DiskHold.NONE;
    }

    @Override
    public Ejection eject(String device) {
        return Ejection.notDone("");
    }

    @Override
    public CardName deviceOf(String listed) {
        return new CardName.DeviceName(listed);
    }

    @Override
    public List<AttachedDisk> unlisted(List<CardName> listed) {
        return List.of();
    }
}
