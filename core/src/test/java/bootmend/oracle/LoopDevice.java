package bootmend.oracle;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/**
 * A real block device that stands for an image file; closing it unmounts what was mounted from it and detaches it. No
 * other loop device is ever touched.
 */
final class LoopDevice implements AutoCloseable {

    private final Path device;
    private final Path image;
    private final Deque<Path> mounts = new ArrayDeque<>();
    private boolean attached = true;
    private boolean partitions;

    private LoopDevice(Path device, Path image) {
        this.device = device;
        this.image = image;
    }

    /** A test that needs one is skipped where there can be none. */
    static void need() {
        assumeTrue(
                System.getProperty("os.name").startsWith("Linux"), "loop devices are Linux's: this check was skipped");
        assumeTrue(
                "root".equals(System.getProperty("user.name")),
                "attaching a loop device needs root: this check was skipped");
        Tool.need("losetup", "partx", "mount", "umount", "unshare", "mkfs.ext4");
    }

    static LoopDevice attach(Path image, String... options) throws IOException {
        List<String> command = new ArrayList<>(List.of("losetup", "--find", "--show"));
        command.addAll(List.of(options));
        command.add(image.toString());
        return new LoopDevice(Path.of(Tool.text(command.toArray(new String[0])).strip()), image);
    }

    Path path() {
        return device;
    }

    /** Makes the kernel know the partitions in the image's table. */
    LoopDevice withPartitions() throws IOException {
        partitions = true;
        try {
            // Not --add: an earlier user of the device may have left its partitions with the kernel.
            Tool.run("partx", "--update", device.toString());
        } catch (IOException | AssertionError e) {
            close();
            throw e;
        }
        for (int i = 0; i < 100 && !Files.exists(partition(1)); i++) {
            pause();
        }
        return this;
    }

    Path partition(int number) {
        return Path.of(device + "p" + number);
    }

    void mount(Path what, Path folder) throws IOException {
        Tool.run("mount", what.toString(), Files.createDirectories(folder).toString());
        mounts.push(folder);
    }

    void unmount() throws IOException {
        Tool.run("umount", mounts.pop().toString());
    }

    /** Leaves nothing behind the device, as when a card is pulled: every access fails from here on. */
    void pull() throws IOException {
        Files.write(image, new byte[0]);
        Tool.run("losetup", "--set-capacity", device.toString());
        detach();
    }

    void detach() throws IOException {
        if (attached) {
            attached = false;
            if (partitions) {
                Tool.run("partx", "--delete", device.toString());
            }
            Tool.run("losetup", "--detach", device.toString());
        }
    }

    @Override
    public void close() throws IOException {
        try {
            while (!mounts.isEmpty()) {
                unmount();
            }
        } finally {
            detach();
        }
    }

    private static void pause() throws IOException {
        try {
            Thread.sleep(20);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
    }
}
