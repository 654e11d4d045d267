package bootmend.keep;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.fat.BootFiles;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileBytes;
import bootmend.fat.WrittenTime;
import bootmend.folder.MountedFolder;
import java.io.IOException;
import java.io.OutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Writes every file of a boot partition into one zip file, its list of them first. */
public final class KeptWriter {

    /** Before the path of each file in the zip. */
    static final String FILES = "files/";

    /** The zip's first entry, by which such a file is known. */
    static final String MANIFEST = "bootmend-manifest.json";

    private static final int PIECE = 1 << 18;
    /** FAT's first moment. */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

    private final BootFiles volume;
    private final List<String> notes = new ArrayList<>();

    public KeptWriter(BootFiles volume) {
        this.volume = volume;
    }

    /** What was kept: how many files, their bytes, and sentences on what was not. */
    public record Kept(int files, long bytes, List<String> notes) {

        public Kept {
            notes = List.copyOf(notes);
        }
    }

    /**
     * Writes all of it; every file is read twice, for its hash and for its bytes.
     *
     * @param entries what stands on the volume, by path
     * @param most how many bytes all files together can have there
     * @throws CardException where the files claim more than the volume holds
     */
    public Kept write(Map<String, DirectoryEntry> entries, KeptPartition partition, long most, OutputStream out)
            throws CardException, IOException {
        SortedMap<String, DirectoryEntry> kept = new TreeMap<>();
        long claimed = 0;
        for (Map.Entry<String, DirectoryEntry> each : entries.entrySet()) {
            if (!MountedFolder.isInsidePath(each.getKey())) {
                notes.add(each.getKey() + " was not kept: no file can have that name");
                continue;
            }
            kept.put(each.getKey(), each.getValue());
            claimed += each.getValue().size();
        }
        if (claimed > most) {
            throw CardException.refused(
                    "the files on the boot partition claim " + claimed + " bytes, more than it holds",
                    "",
                    NextStep.Plain.REPAIR_CARD);
        }
        List<KeptManifest.Entry> listed = new ArrayList<>();
        long bytes = 0;
        int files = 0;
        for (Map.Entry<String, DirectoryEntry> each : kept.entrySet()) {
            KeptManifest.Entry entry = entry(each.getKey(), each.getValue());
            listed.add(entry);
            bytes += entry.bytes();
            files += entry.folder() ? 0 : 1;
        }
        ZipOutputStream zip = new ZipOutputStream(out);
        zip.setLevel(Deflater.DEFAULT_COMPRESSION);
        put(zip, MANIFEST, NO_TIME);
        zip.write(new KeptManifest(KeptManifest.SCHEMA, partition, listed, notes).toJson());
        zip.closeEntry();
        for (Map.Entry<String, DirectoryEntry> each : kept.entrySet()) {
            boolean folder = each.getValue().folder();
            put(zip, FILES + each.getKey() + (folder ? "/" : ""), time(each.getValue()));
            if (!folder) {
                copy(each.getValue(), zip::write);
            }
            zip.closeEntry();
        }
        zip.finish();
        return new Kept(files, bytes, notes);
    }

    private static void put(ZipOutputStream zip, String name, LocalDateTime time) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(time);
        zip.putNextEntry(entry);
    }

    private LocalDateTime time(DirectoryEntry entry) throws IOException {
        return volume.times(entry).written().orElse(NO_TIME);
    }

    private KeptManifest.Entry entry(String path, DirectoryEntry entry) throws IOException {
        WrittenTime times = volume.times(entry);
        String written = times.written().map(LocalDateTime::toString).orElse("");
        String created = times.created().map(LocalDateTime::toString).orElse("");
        if (entry.folder()) {
            return new KeptManifest.Entry(path, true, 0, "", written, created, entry.attributes(), true);
        }
        MessageDigest digest = sha256();
        long bytes = copy(entry, digest::update);
        boolean whole = bytes == entry.size() && volume.bytes(entry).warnings().isEmpty();
        if (!whole) {
            notes.add(path + " is not whole on the card: " + bytes + " of its " + entry.size() + " bytes were kept");
        }
        return new KeptManifest.Entry(
                path,
                false,
                bytes,
                HexFormat.of().formatHex(digest.digest()),
                written,
                created,
                entry.attributes(),
                whole);
    }

    /** Where the bytes of a file go. */
    @FunctionalInterface
    private interface Sink {
        void write(byte[] bytes, int from, int length) throws IOException;
    }

    private long copy(DirectoryEntry entry, Sink sink) throws IOException {
        FileBytes bytes = volume.bytes(entry);
        long at = 0;
        while (at < bytes.size()) {
            byte[] piece = bytes.read(at, PIECE);
            if (piece.length == 0) {
                break;
            }
            sink.write(piece, 0, piece.length);
            at += piece.length;
        }
        return at;
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
