package bootmend.device.system;

import bootmend.CardException;
import bootmend.device.CardIdentity;
import bootmend.device.CardName;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What the running system says of its disks, and what it does with one for a change; one implementation for each system.
 *
 * <p>A disk is known by the name that its system gives it, such as {@code /dev/sdx} or {@code \\.\PHYSICALDRIVE1}.
 *
 * <p>Of these, only {@link LinuxDisks} was ever run against a real system.
 */
interface SystemDisks {

    /** What is known of the disk, or part of one, at {@code device}; nothing where the system knows no such disk. */
    Optional<DiskFacts> facts(String device);

    /** Why the disk at {@code device}, or the one it is a part of, must be left alone for the running system's sake. */
    Optional<String> runningSystemOn(String device);

    /** Who uses the disk (or a part of it), as a clause for a sentence. */
    Optional<String> useOf(String device);

    /** Who uses the image file as a disk, as a clause for a sentence. */
    Optional<String> useOfImage(Path image);

    /** By what the medium in {@code device} is told from another one in its place. */
    CardIdentity medium(String device);

    /** Opens the disk as this system wants it. */
    default RawFile open(String device, boolean change) throws IOException {
        return ChannelFile.open(Path.of(device), change);
    }

    /**
     * Takes the disk for the time of a change, so that nothing else can, as far as the system offers that.
     *
     * @throws CardException of kind REFUSED when it is not to be had
     */
    DiskHold hold(String device) throws CardException;

    /** Has the system let go of the disk, so that it can be taken out without a complaint. */
    Ejection eject(String device);

    /** The device behind a name that the general list of disks gives. */
    CardName deviceOf(String listed);

    /** Whole disks that the general list leaves out. */
    List<AttachedDisk> unlisted(List<CardName> listed);

    static SystemDisks ofThisComputer() {
        String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        if (system.startsWith("linux")) {
            return new LinuxDisks();
        }
        if (system.startsWith("mac")) {
            return new MacDisks(Programs.ofThisComputer());
        }
        return system.startsWith("windows") ? new WindowsDisks(WindowsKernel::ofThisComputer) : new UnknownDisks();
    }
}
