package bootmend.earlier;

import bootmend.fat.BootFiles;
import bootmend.fat.DeletedEntry;
import bootmend.fat.Directory;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fat.FreeSpace;
import bootmend.fat.Geometry;
import bootmend.tuning.TuningTables;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/**
 * Searches a boot partition for earlier versions of its config file: what its folders list, what is left of deleted entries,
 * the clusters behind the present file and behind the place of the last allocation, and then all other free clusters.
 * Reads only.
 */
public final class EarlierSearch {

    /** How far around those places is looked at once. No source: some of it takes a moment on any card. */
    private static final long NEAR_BYTES = 4L << 20;

    private static final int MOST_FOLDERS = 256;
    private static final int MOST_COPIES = 256;
    private static final int MOST_DELETED = 4096;
    private static final int MOST_STRETCHES = 16_384;
    private static final long MOST_TEXT = 16L << 20;
    private static final int MOST_PARTS = 512;

    private final BootFiles files;
    private final Optional<FatVolume> volume;
    private final Optional<PresentFile> now;
    private final List<byte[]> included;
    private final ConfigLooks looks;
    private final FamiliarLines familiar = new FamiliarLines();
    private final List<Sighting> copies = new ArrayList<>();
    private final List<DeletedEntry> deleted = new ArrayList<>();
    private final Map<Spot, Stretch> stretches = new LinkedHashMap<>();
    private long textBytes;
    private long searched;
    private int dropped;

    private record Spot(long cluster, int offset) {}

    /**
     * @param files the boot partition
     * @param volume the same as a volume; empty for a mounted folder, of which no free cluster is seen
     * @param now the config file as it is; empty where there is none
     * @param included other files that the card reads as config files, which are no earlier versions of this one
     */
    public EarlierSearch(
            TuningTables tables,
            BootFiles files,
            Optional<FatVolume> volume,
            Optional<PresentFile> now,
            List<byte[]> included) {
        this.files = files;
        this.volume = volume;
        this.now = now;
        this.included = List.copyOf(included);
        this.looks = new ConfigLooks(tables);
        now.ifPresent(present -> familiar.addWhole(present.bytes()));
    }

    /**
     * Searches.
     *
     * @param records what changes from this computer to this very card found and left, newest first
     */
    public EarlierVersions run(List<RecordedVersion> records, SearchProgress progress) throws IOException {
        listFolders();
        boolean complete = volume.isEmpty() || searchFree(volume.get(), progress);
        Timeline timeline = timeline();
        sightings().forEach(timeline::add);
        List<EarlierVersion> versions = timeline.newestFirst(records);
        return new EarlierVersions(versions, complete, searched, dropped);
    }

    private Timeline timeline() throws IOException {
        long clusters = volume.isPresent() ? volume.get().geometry().clusterCount() : 0;
        OptionalLong hint = volume.isPresent() ? volume.get().nextFreeHint() : OptionalLong.empty();
        return new Timeline(now, clusters, hint.orElse(0));
    }

    /** Copies that folders list, and entries that were deleted from them. */
    private void listFolders() throws IOException {
        Deque<Directory> waiting = new ArrayDeque<>(List.of(files.root()));
        Deque<String> paths = new ArrayDeque<>(List.of(""));
        Set<Long> seen = new HashSet<>();
        while (!waiting.isEmpty()) {
            Directory folder = waiting.poll();
            String path = paths.poll();
            folder.deleted().stream().limit(MOST_DELETED - deleted.size()).forEach(deleted::add);
            for (DirectoryEntry entry : folder.entries()) {
                if (entry.folder() && seen.size() < MOST_FOLDERS && seen.add(entry.firstCluster())) {
                    list(entry).ifPresent(listed -> {
                        waiting.add(listed);
                        paths.add(path + entry.name() + "/");
                    });
                } else if (!entry.folder() && copies.size() < MOST_COPIES && CopyName.fits(entry.name())) {
                    copy(path + entry.name(), entry);
                }
            }
        }
    }

    /** A folder that cannot be read keeps nobody from what stands elsewhere. */
    private Optional<Directory> list(DirectoryEntry folder) {
        try {
            return Optional.of(files.list(folder));
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private void copy(String path, DirectoryEntry entry) throws IOException {
        boolean swap = CopyName.isSwap(entry.name());
        if (entry.size() == 0 || entry.size() > (swap ? 1 << 20 : FreeTexts.MOST_BYTES)) {
            return;
        }
        byte[] bytes = files.read(entry, (int) entry.size()).bytes();
        Optional<byte[]> text = swap ? SwapFile.text(bytes) : Optional.of(bytes);
        Stretch stretch = new Stretch(0, 0, text.orElse(bytes), true, 1, List.of(), List.of());
        boolean whole = bytes.length == entry.size();
        if (text.isPresent() && TextBytes.isText(stretch.bytes())) {
            new StretchReader(looks, familiar)
                    .take(stretch, stretch.bytes().length, false)
                    .ifPresent(taken -> copies.add(new Sighting(
                            swap ? new Place.Swap(path) : new Place.Copy(path),
                            taken.bytes(),
                            taken.whole() && whole,
                            entry.written(),
                            volume.isPresent() ? entry.firstCluster() : 0,
                            false)));
        }
    }

    private boolean searchFree(FatVolume open, SearchProgress progress) throws IOException {
        Geometry geometry = open.geometry();
        long near = Math.max(16, NEAR_BYTES / geometry.bytesPerCluster());
        List<Long> places = new ArrayList<>();
        now.map(PresentFile::cluster).filter(cluster -> cluster != 0).ifPresent(places::add);
        open.nextFreeHint().ifPresent(places::add);
        if (places.isEmpty()) {
            places.add(Geometry.FIRST_CLUSTER);
        }
        for (long place : places) {
            scan(open, place - near, place + near / 4, SearchProgress.TO_THE_END);
        }
        for (DeletedEntry entry : deleted) {
            if (geometry.hasCluster(entry.firstCluster())) {
                FreeSpace space = FreeSpace.of(open, entry.firstCluster(), entry.firstCluster() + 128);
                new FreeTexts(space, geometry, looks, familiar)
                        .at(entry.firstCluster())
                        .forEach(this::keep);
            }
        }
        return progress.goOn(0, geometry.clusterCount() * geometry.bytesPerCluster())
                && scan(open, Geometry.FIRST_CLUSTER, geometry.clusterEnd(), progress);
    }

    private boolean scan(FatVolume open, long from, long to, SearchProgress progress) throws IOException {
        FreeSpace space = FreeSpace.of(open, from, to);
        long[] read = {searched};
        boolean end = new FreeTexts(space, open.geometry(), looks, familiar)
                .scan(
                        (done, all) -> {
                            read[0] = Math.max(read[0], done);
                            return progress.goOn(done, all);
                        },
                        this::keep);
        searched = end ? Math.max(searched, space.count() * open.geometry().bytesPerCluster()) : read[0];
        return end;
    }

    /** A stretch that was met again reaches as far or farther than before. */
    private void keep(Stretch stretch) {
        Spot spot = new Spot(stretch.cluster(), stretch.offset());
        Stretch known = stretches.get(spot);
        if (known != null) {
            textBytes -= known.bytes().length;
        } else if (stretches.size() >= MOST_STRETCHES || textBytes + stretch.bytes().length > MOST_TEXT) {
            dropped++;
            return;
        }
        stretches.put(spot, stretch);
        textBytes += stretch.bytes().length;
    }

    private List<Sighting> sightings() {
        List<Sighting> all = new ArrayList<>(copies);
        copies.stream().filter(Sighting::whole).forEach(copy -> familiar.addWhole(copy.text()));
        Map<Long, DeletedEntry> entries = entries();
        entries.forEach((cluster, entry) -> familiar.addWhole(
                Arrays.copyOf(stretches.get(new Spot(cluster, 0)).bytes(), (int) entry.size())));
        stretches.values().forEach(familiar::add);
        Set<Long> behind = new HashSet<>();
        stretches.values().forEach(stretch -> behind.addAll(stretch.behind()));
        StretchReader reader = new StretchReader(looks, familiar);
        for (Stretch stretch : stretches.values()) {
            Optional<DeletedEntry> entry =
                    stretch.offset() == 0 ? Optional.ofNullable(entries.get(stretch.cluster())) : Optional.empty();
            reader.take(stretch, entry.map(each -> (int) each.size()).orElse(0), behind.contains(stretch.cluster()))
                    .map(taken -> sighting(stretch, entry, taken))
                    .ifPresent(all::add);
        }
        return distinct(all);
    }

    /** Deleted entries whose file still stands where they say, by its first cluster. */
    private Map<Long, DeletedEntry> entries() {
        Map<Long, DeletedEntry> fitting = new LinkedHashMap<>();
        for (DeletedEntry entry : deleted) {
            Stretch stretch = stretches.get(new Spot(entry.firstCluster(), 0));
            if (stretch != null && !entry.folder() && fits(stretch, entry.size())) {
                fitting.put(entry.firstCluster(), entry);
            }
        }
        return fitting;
    }

    private static boolean fits(Stretch stretch, long size) {
        int length = stretch.bytes().length;
        return size == length && stretch.ended() || size < length && stretch.mayEndAt((int) size);
    }

    private static Sighting sighting(Stretch stretch, Optional<DeletedEntry> entry, StretchReader.Taken taken) {
        Place place = entry.isPresent()
                ? new Place.Deleted(entry.get().name(), stretch.cluster())
                : new Place.Free(stretch.cluster());
        return new Sighting(
                place,
                taken.bytes(),
                taken.whole(),
                entry.flatMap(DeletedEntry::written),
                stretch.cluster(),
                stretch.offset() > 0);
    }

    /** Parts that say nothing beyond what is found whole, or in a longer part, are left out. */
    private List<Sighting> distinct(List<Sighting> all) {
        KnownTexts known = new KnownTexts();
        now.ifPresent(present -> known.add(present.bytes()));
        included.forEach(known::add);
        List<Sighting> kept = new ArrayList<>();
        for (Sighting sighting : all) {
            boolean other = included.stream().anyMatch(file -> Arrays.equals(file, sighting.text()));
            if (sighting.whole() && !other) {
                kept.add(sighting);
                known.add(sighting.text());
            }
        }
        List<Sighting> longestFirst = all.stream()
                .filter(sighting -> !sighting.whole())
                .sorted(Comparator.comparingInt((Sighting part) -> -part.text().length))
                .toList();
        int room = MOST_PARTS;
        for (Sighting part : longestFirst) {
            if (room > 0 && !known.contain(part.text())) {
                kept.add(part);
                known.add(part.text());
                room--;
            }
        }
        return kept;
    }
}
