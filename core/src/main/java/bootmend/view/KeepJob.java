package bootmend.view;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.card.CardListing;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.card.PartitionView;
import bootmend.check.CardFiles;
import bootmend.device.DurableFile;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.VolumeSpace;
import bootmend.keep.KeptFiles;
import bootmend.keep.KeptPartition;
import bootmend.keep.KeptWriter;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Keeps every file of a card's boot partition in one file on this computer, and reads it back before it says so; the card
 * is only read.
 */
public final class KeepJob {

    private final Workplace workplace;

    public KeepJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /**
     * Keeps the files; the new file is written beside its place, synced, read back against its list and then renamed.
     *
     * @param replace whether a file that is there may be replaced
     * @throws CardException where the card cannot be read, or the file cannot be written or read back
     */
    public KeepView run(CardRequest request, Path file, boolean replace) throws CardException {
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS) && !replace) {
            throw CardException.refused(
                    "there is a file " + file + " already", "Name another.", NextStep.Allow.REPLACE);
        }
        try (OpenCard card = OpenCard.open(workplace.opener(), request, false)) {
            if (!card.hasBootPartition()) {
                throw CardException.usage("a config file on its own has no files beside it to keep", "Name the card.");
            }
            return keep(card, file.toAbsolutePath());
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    private KeepView keep(OpenCard card, Path file) throws CardException, IOException {
        CardListing listing = CardListing.of(card.volume());
        Map<String, DirectoryEntry> entries = new LinkedHashMap<>();
        for (CardFiles.Entry each : listing.entries()) {
            entries.put(each.path(), listing.entry(each.path()));
        }
        Path beside = file.resolveSibling(file.getFileName() + ".new");
        KeptWriter.Kept kept;
        try {
            kept = write(card, entries, beside);
            check(beside);
            Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            DurableFile.syncFolder(file.getParent());
        } catch (IOException e) {
            Files.deleteIfExists(beside);
            throw CardException.refused(
                    file + " could not be written (" + e.getMessage() + ")",
                    "Make room, or name a file in another folder. The card was only read.",
                    e);
        } catch (CardException e) {
            Files.deleteIfExists(beside);
            throw e;
        }
        List<String> notes = new ArrayList<>(kept.notes());
        listing.warnings()
                .forEach((folder, warnings) -> warnings.forEach(warning ->
                        notes.add((folder.isEmpty() || folder.equals("/") ? "root folder" : folder) + ": " + warning)));
        return new KeepView(
                card.named(), file.toString(), Files.size(file), sha256(file), kept.files(), kept.bytes(), notes);
    }

    private static KeptWriter.Kept write(OpenCard card, Map<String, DirectoryEntry> entries, Path beside)
            throws CardException, IOException {
        VolumeSpace space = card.volume().space();
        long most = Math.multiplyExact(space.clusters(), (long) space.clusterBytes());
        try (FileChannel channel = FileChannel.open(beside, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
            KeptWriter.Kept kept = new KeptWriter(card.volume()).write(entries, partition(card), most, out);
            out.flush();
            channel.force(true);
            return kept;
        }
    }

    private static KeptPartition partition(OpenCard card) throws IOException {
        PartitionView from = card.partition();
        return new KeptPartition(
                from.table(),
                from.number(),
                from.firstSector(),
                from.sectors(),
                from.sectorBytes(),
                from.fatType(),
                from.label(),
                from.serial(),
                from.clusterBytes());
    }

    private static void check(Path file) throws IOException {
        try (KeptFiles back = KeptFiles.open(file)) {
            List<String> faults = back.faults();
            if (!faults.isEmpty()) {
                throw new IOException("it does not read back: " + faults.get(0));
            }
        }
    }

    private static String sha256(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            new DigestInputStream(in, digest).transferTo(OutputStream.nullOutputStream());
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
