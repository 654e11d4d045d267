package bootmend.gui.view;

import bootmend.gui.text.Words;
import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.stage.DirectoryChooser;
import javafx.stage.FileChooser;
import javafx.stage.Window;

/** The system's own dialogs. */
final class SystemDialogs implements Dialogs {

    private final Window window;
    private final Words words;

    SystemDialogs(Window window, Words words) {
        this.window = window;
        this.words = words;
    }

    @Override
    public List<Path> images() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(words.of("dialog.images"));
        chooser.getExtensionFilters()
                .addAll(
                        new FileChooser.ExtensionFilter(
                                words.of("dialog.images.kinds"),
                                "*.img",
                                "*.bin",
                                "*.raw",
                                "*.gz",
                                "*.xz",
                                "*.zst",
                                "*.zip"),
                        new FileChooser.ExtensionFilter(words.of("dialog.all"), "*"));
        List<File> files = chooser.showOpenMultipleDialog(window);
        return files == null ? List.of() : files.stream().map(File::toPath).toList();
    }

    @Override
    public List<Path> folder() {
        DirectoryChooser chooser = new DirectoryChooser();
        chooser.setTitle(words.of("dialog.folder"));
        File folder = chooser.showDialog(window);
        return folder == null ? List.of() : List.of(folder.toPath());
    }

    @Override
    public Optional<Path> save(String name) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(words.of("dialog.save"));
        chooser.setInitialFileName(name);
        return Optional.ofNullable(chooser.showSaveDialog(window)).map(File::toPath);
    }

    @Override
    public Optional<Path> file() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(words.of("dialog.file"));
        return Optional.ofNullable(chooser.showOpenDialog(window)).map(File::toPath);
    }
}
