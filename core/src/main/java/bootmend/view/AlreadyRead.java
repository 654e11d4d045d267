package bootmend.view;

import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.fat.BootFiles;
import bootmend.fat.Directory;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileBytes;
import bootmend.fat.FileContent;
import bootmend.fat.VolumeSpace;
import java.io.IOException;
import java.util.List;

/** A boot partition's files, the config files not read a second time. */
record AlreadyRead(BootFiles files, ConfigFiles config) implements BootFiles {

    @Override
    public Directory root() throws IOException {
        return files.root();
    }

    @Override
    public Directory list(DirectoryEntry folder) throws IOException {
        return files.list(folder);
    }

    @Override
    public FileContent read(DirectoryEntry file, int limit) throws IOException {
        for (ConfigFile each : config.all()) {
            if (each.entry().offset() == file.offset() && each.bytes().length <= limit) {
                return new FileContent(each.bytes(), each.warnings());
            }
        }
        return files.read(file, limit);
    }

    @Override
    public FileBytes bytes(DirectoryEntry file) throws IOException {
        return files.bytes(file);
    }

    @Override
    public VolumeSpace space() throws IOException {
        return files.space();
    }

    @Override
    public List<String> warnings() {
        return files.warnings();
    }

    @Override
    public List<String> remarks() {
        return files.remarks();
    }
}
