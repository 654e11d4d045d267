package bootmend.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DurableFileTest {

    @TempDir
    private Path folder;

    @Test
    void writesReplacesMovesAndDeletes() throws IOException {
        Path file = folder.resolve("record");
        DurableFile.create(file, new byte[] {1});
        assertThatThrownBy(() -> DurableFile.create(file, new byte[] {2}))
                .isInstanceOf(FileAlreadyExistsException.class);
        DurableFile.replace(file, new byte[] {3});
        assertThat(Files.readAllBytes(file)).containsExactly(3);
        DurableFile.move(file, folder.resolve("moved"));
        DurableFile.delete(folder.resolve("moved"));
        assertThat(folder).isEmptyDirectory();
    }

    /** Linux has folders that cannot be synced: those that the kernel makes up. */
    @Test
    void aFolderThatCannotBeSyncedIsTold() {
        Path madeUp = Path.of("/proc/self");
        assumeTrue(Files.isDirectory(madeUp), "no /proc here: skipped");

        assertThatThrownBy(() -> DurableFile.syncFolder(madeUp))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("the folder /proc/self could not be synced");
        assertThatThrownBy(() -> DurableFile.syncFolder(folder.resolve("none"))).isInstanceOf(IOException.class);
    }

    @Test
    void aSystemWhoseFoldersCannotBeOpenedSyncsThemItself() throws IOException {
        try (FileSystem windows = Jimfs.newFileSystem(Configuration.windows())) {
            Path there = Files.createDirectories(windows.getPath("C:\\data"));

            assertThatCode(() -> DurableFile.create(there.resolve("record"), new byte[1]))
                    .doesNotThrowAnyException();
        }
    }
}
