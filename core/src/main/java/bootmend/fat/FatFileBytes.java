package bootmend.fat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A file of a FAT volume by its runs of neighbouring clusters. */
final class FatFileBytes implements FileBytes {

    private final VolumeBytes volume;
    private final long size;
    private final List<String> warnings;
    /** Where each run starts on the volume, by where it starts in the file. */
    private final TreeMap<Long, Long> starts = new TreeMap<>();
    /** How many bytes of the file its chain leads to. */
    private final long reach;

    FatFileBytes(VolumeBytes volume, Geometry geometry, List<Long> clusters, long size, List<String> warnings)
            throws IOException {
        this.volume = volume;
        this.size = size;
        long before = -1;
        for (int i = 0; i < clusters.size(); i++) {
            if (i == 0 || clusters.get(i) != before + 1) {
                starts.put((long) i * geometry.bytesPerCluster(), geometry.clusterStart(clusters.get(i)));
            }
            before = clusters.get(i);
        }
        this.reach = Math.min(size, (long) clusters.size() * geometry.bytesPerCluster());
        List<String> all = new ArrayList<>(warnings);
        if (reach > 0 && geometry.clusterStart(before) >= volume.size()) {
            all.add("the card or image ends before the file does");
        }
        this.warnings = List.copyOf(all);
    }

    @Override
    public long size() {
        return size;
    }

    @Override
    public byte[] read(long offset, int length) throws IOException {
        long end = Math.min(reach, offset + Math.max(0, length));
        if (offset < 0 || offset >= end) {
            return new byte[0];
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream((int) (end - offset));
        for (long at = offset; at < end; ) {
            Map.Entry<Long, Long> run = starts.floorEntry(at);
            Long next = starts.higherKey(at);
            long part = Math.min(end, next == null ? end : next) - at;
            long place = run.getValue() + at - run.getKey();
            long there = Math.min(part, Math.max(0, volume.size() - place));
            if (there > 0) {
                out.writeBytes(volume.read(place, (int) there));
            }
            if (there < part) {
                break;
            }
            at += part;
        }
        return out.toByteArray();
    }

    @Override
    public List<String> warnings() {
        return warnings;
    }
}
