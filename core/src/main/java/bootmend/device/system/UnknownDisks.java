package bootmend.device.system;

import bootmend.device.CardIdentity;
import bootmend.device.CardName;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A system that bootmend knows nothing of. */
final class UnknownDisks implements SystemDisks {

    @Override
    public Optional<DiskFacts> facts(String device) {
        return Optional.empty();
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
        return CardIdentity.named(device);
    }

    @Override
    public DiskHold hold(String device) {
        return DiskHold.NONE;
    }

    @Override
    public Ejection eject(String device) {
        return Ejection.notDone("bootmend does not know how this system ejects a card; use the system's own way.");
    }

    @Override
    public CardName deviceOf(String listed) {
        return CardName.unseen(Path.of(listed));
    }

    @Override
    public List<AttachedDisk> unlisted(List<CardName> listed) {
        return List.of();
    }
}
