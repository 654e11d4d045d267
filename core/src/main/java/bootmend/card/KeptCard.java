package bootmend.card;

import bootmend.CardException;
import bootmend.ReportedIOException;
import bootmend.boot.BootCard;
import bootmend.boot.FilesCard;
import bootmend.change.CardId;
import bootmend.change.FilePlanner;
import bootmend.change.Interruption;
import bootmend.change.Target;
import bootmend.change.UndoStore;
import bootmend.finding.Finding;
import bootmend.keep.KeptFiles;
import bootmend.keep.KeptPartition;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;

/** Kept files of a boot partition, which are looked at like the card that they come from and never changed. */
public final class KeptCard implements OpenCard {

    private final Path file;
    private final KeptFiles files;

    private KeptCard(Path file, KeptFiles files) {
        this.file = file;
        this.files = files;
    }

    static KeptCard open(Path file, boolean forChanging) throws CardException {
        if (forChanging) {
            throw unchanged();
        }
        try {
            return new KeptCard(file, KeptFiles.open(file));
        } catch (IOException | RuntimeException e) {
            throw CardException.unreadable(
                    "the kept files cannot be read (" + e.getMessage() + ")",
                    "The file is damaged; use another copy of it.",
                    e);
        }
    }

    private static CardException unchanged() {
        return CardException.refused(
                "kept files are a copy, which is never changed", "Change the card, and keep its files anew.");
    }

    @Override
    public boolean isForChanging() {
        return false;
    }

    @Override
    public String named() {
        return file.toString();
    }

    @Override
    public String path() {
        return file.toAbsolutePath().normalize().toString();
    }

    @Override
    public String kind() {
        return "kept files";
    }

    @Override
    public long bytes() throws IOException {
        return Files.size(file);
    }

    @Override
    public KeptFiles volume() {
        return files;
    }

    @Override
    public PartitionView partition() {
        KeptPartition from = files.partition();
        return new PartitionView(
                from.table(),
                from.number(),
                from.firstSector(),
                from.sectors(),
                from.sectorBytes(),
                "the one that the files were kept from",
                from.fatType(),
                from.label(),
                from.serial(),
                from.clusterBytes());
    }

    @Override
    public List<String> tableWarnings() {
        return List.of();
    }

    @Override
    public List<Finding> fullLook() {
        return List.of();
    }

    @Override
    public BootCard bootCard() {
        return new FilesCard(files, "the files were kept from it");
    }

    @Override
    public boolean switchesPartition() {
        return false;
    }

    @Override
    public CardId id() {
        return CardId.ofFolder(0, 0);
    }

    @Override
    public FilePlanner planner(LocalDateTime written, boolean inPlace) throws CardException {
        throw unchanged();
    }

    @Override
    public Target target() throws ReportedIOException {
        throw new ReportedIOException(unchanged());
    }

    @Override
    public Interruption waiting(UndoStore store) {
        return new Interruption.None();
    }

    @Override
    public RawCard raw(String doing) throws CardException {
        throw unchanged();
    }

    @Override
    public void close() throws IOException {
        files.close();
    }
}
