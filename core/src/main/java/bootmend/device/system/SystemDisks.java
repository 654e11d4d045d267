package bootmend.device.system;

import bootmend.CardException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What the running system says of its disks, and what it does with one for a change; one implementation for each system.
 *
 * <p>Of these, only {@link LinuxDisks} was ever run against a real system.
 */
interface SystemDisks {

    /** What is known of the disk, or part of one, at {@code device}; nothing where the system knows no such disk. */
    Optional<DiskFacts> facts(Path device);

    /** Why the disk at {@code device}, or the one it is a part of, must be left alone for the running system's sake. */
    Optional<String> runningSystemOn(Path device);

    /** Who uses the disk or image at {@code card} (or a part of it), as a clause for a sentence. */
    Optional<String> useOf(Path card);

    /**
     * Takes the disk for the time of a change, so that nothing else can, as far as the system offers that.
     *
     * @throws CardException of kind REFUSED when it is not to be had
     */
    DiskHold hold(Path device) throws CardException;

    /** Has the system let go of the disk, so that it can be taken out without a complaint. */
    Ejection eject(Path device);

    /** The device behind a name that the general list of disks gives. */
    Path deviceOf(String listed);

    /** Whole disks that the general list leaves out. */
    List<AttachedDisk> unlisted(List<Path> listed);

    static SystemDisks ofThisComputer() {
        String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        if (system.startsWith("linux")) {
            return new LinuxDisks();
        }
        if (system.startsWith("mac")) {
            return new MacDisks(Programs.ofThisComputer());
        }
        return system.startsWith("windows") ? new WindowsDisks(WindowsVolumes.ofThisComputer()) : new UnknownDisks();
    }

    /** The bytes of the disk as a channel may not tell them; 0 where the system does not either. */
    default long bytes(Path device) throws IOException {
        return facts(device).map(DiskFacts::bytes).orElse(0L);
    }
}
