package bootmend.device.system;

import java.io.Closeable;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** What {@link WindowsDisks} asks of Windows; tests put recorded answers in its place. */
interface WindowsCalls {

    /**
     * One volume on disks.
     *
     * @param device its name for opening, such as {@code \\?\Volume{0b0e1a2c-...}}
     * @param mountedAt letters and folders, such as {@code E:\}; none for one that nobody can see
     * @param disks numbers of the disks that it lies on, one in nearly every case
     */
    record Volume(String device, List<String> mountedAt, List<Integer> disks) {

        public Volume {
            mountedAt = List.copyOf(mountedAt);
            disks = List.copyOf(disks);
        }
    }

    /** Every volume whose device is a disk: no CD drive, which counts its devices from 0 too. */
    List<Volume> volumes() throws IOException;

    /** The letter that Windows itself runs from, such as {@code C:}. */
    String systemLetter();

    /** What the driver of a disk or volume says of it; nothing where it cannot be asked. */
    Optional<WindowsAnswers.Drive> drive(String device);

    /** The numbers of the disks that a volume lies on; none where {@code device} is no volume. */
    List<Integer> disksOf(String device);

    /** Opens a disk or volume that is there, shared with readers and writers as the system wants it for disks. */
    RawFile open(String device, boolean change) throws IOException;

    /** Locks and dismounts a volume until it is closed. */
    Closeable lock(String volume) throws IOException;

    /** Has the disk let go of its medium. */
    boolean eject(String device);
}
