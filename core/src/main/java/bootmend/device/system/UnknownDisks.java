package bootmend.device.system;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A system that bootmend knows nothing of. */
final class UnknownDisks implements SystemDisks {

    @Override
    public Optional<DiskFacts> facts(Path device) {
        return Optional.empty();
    }

    @Override
    public Optional<String> runningSystemOn(Path device) {
        return Optional.empty();
    }

    @Override
    public Optional<String> useOf(Path card) {
        return Optional.empty();
    }

    @Override
    public DiskHold hold(Path device) {
        return DiskHold.NONE;
    }

    @Override
    public Ejection eject(Path device) {
        return Ejection.notDone("bootmend does not know how this system ejects a card; use the system's own way.");
    }

    @Override
    public Path deviceOf(String listed) {
        return Path.of(listed);
    }

    @Override
    public List<AttachedDisk> unlisted(List<Path> listed) {
        return List.of();
    }
}
