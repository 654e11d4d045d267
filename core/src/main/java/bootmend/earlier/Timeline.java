package bootmend.earlier;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * Puts texts into the order in which they were written.
 *
 * <p>Systems take free clusters in turn and begin again at the volume's end, so that of two texts the one that lies nearer
 * behind the place of the last allocation is the younger one (common practice; the FAT driver of Linux and FSInfo's hint do
 * so). Times that were written with files put that right where they say otherwise, and the undo records of this card's
 * changes are certain.
 */
final class Timeline {

    private final Optional<PresentFile> now;
    private final long clusters;
    private final long last;
    private final Map<String, Version> versions = new LinkedHashMap<>();

    /** One text, with the place where it was last seen. */
    private static final class Version {

        private final byte[] text;
        private boolean whole;
        private final List<Sighting> seen = new ArrayList<>();
        private final List<Place> records = new ArrayList<>();
        private long age = Long.MAX_VALUE;
        private Order order = new Order(false, Order.By.NOTHING);

        Version(byte[] text) {
            this.text = text;
        }

        Optional<LocalDateTime> written() {
            return seen.isEmpty() ? Optional.empty() : seen.get(0).written();
        }

        EarlierVersion seenFrom() {
            List<Place> places = new ArrayList<>();
            seen.forEach(sighting -> places.add(sighting.place()));
            places.addAll(records);
            return new EarlierVersion(text, whole, places, written(), order, age < 0);
        }
    }

    /**
     * @param now the config file as it is; empty where there is none
     * @param clusters how many the volume has; 0 where none are seen
     * @param hint where the volume's last writer would have gone on; 0 where nothing tells
     */
    Timeline(Optional<PresentFile> now, long clusters, long hint) {
        this.now = now;
        this.clusters = clusters;
        this.last = last(now.map(PresentFile::cluster).orElse(0L), hint, clusters);
    }

    /** The place of the last allocation that is known. A hint behind the present file was written before that was. */
    private static long last(long present, long hint, long clusters) {
        if (hint == 0 || clusters == 0) {
            return present;
        }
        boolean stale = present != 0 && Math.floorMod(present - hint, clusters) < clusters / 2;
        return stale ? present : hint;
    }

    /** How many clusters were passed since this one was written to; below 0 where that was after the present file. */
    private long age(Sighting sighting) {
        if (sighting.cluster() == 0 || clusters == 0) {
            return Long.MAX_VALUE;
        }
        long age = Math.floorMod(last - sighting.cluster(), clusters);
        long present =
                now.map(PresentFile::cluster).filter(cluster -> cluster != 0).orElse(last);
        return age - Math.floorMod(last - present, clusters) + (sighting.leftOver() ? clusters : 0);
    }

    void add(Sighting sighting) {
        Version version =
                versions.computeIfAbsent(DigestUtils.sha256Hex(sighting.text()), none -> new Version(sighting.text()));
        version.whole |= sighting.whole();
        version.seen.add(sighting);
    }

    /** The versions, the newest first; the text that is there now is none of them. */
    List<EarlierVersion> newestFirst(List<RecordedVersion> records) {
        now.ifPresent(present -> versions.remove(DigestUtils.sha256Hex(present.bytes())));
        List<Version> all = new ArrayList<>(versions.values());
        all.forEach(this::date);
        all.sort(Comparator.comparingLong(version -> version.age));
        byTimes(all);
        return merge(all, records).stream().map(Version::seenFrom).toList();
    }

    /** What was seen several times counts from its last sighting before the present file; deleted entries say more. */
    private void date(Version version) {
        version.seen.sort(Comparator.comparing((Sighting sighting) -> age(sighting) < 0)
                .thenComparingLong(this::age)
                .thenComparing(sighting -> sighting.place() instanceof Place.Free));
        Sighting last = version.seen.get(0);
        version.age = isListed(last) ? besidesNow(last) : age(last);
        version.order = new Order(false, version.age == Long.MAX_VALUE ? Order.By.NOTHING : Order.By.CLUSTERS);
    }

    /** A file that is there still was not written over, so its time is to be believed. */
    private static boolean isListed(Sighting sighting) {
        return sighting.place() instanceof Place.Copy || sighting.place() instanceof Place.Swap;
    }

    /** A listed file's age, on that side of the present file on which its time is; where it lies says only how far. */
    private long besidesNow(Sighting sighting) {
        long age = age(sighting);
        Optional<LocalDateTime> present = now.flatMap(PresentFile::written);
        if (present.isEmpty() || sighting.written().isEmpty() || present.equals(sighting.written())) {
            return age;
        }
        return sighting.written().get().isAfter(present.get()) ? Math.min(-1, age) : Math.max(0, age);
    }

    /** Puts those that have a time into its order, among the places that they have. */
    private void byTimes(List<Version> all) {
        List<Integer> places = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).written().isPresent()) {
                places.add(i);
            }
        }
        List<Version> timed = new ArrayList<>(places.stream().map(all::get).toList());
        timed.sort(Comparator.comparing((Version version) -> version.written().orElseThrow())
                .reversed());
        for (int i = 0; i < timed.size(); i++) {
            Version version = timed.get(i);
            boolean agrees = all.get(places.get(i)) == version || version.age == Long.MAX_VALUE;
            LocalDateTime time = version.written().orElseThrow();
            Optional<LocalDateTime> present = now.flatMap(PresentFile::written);
            boolean fits = present.isPresent()
                    && !time.isEqual(present.get())
                    && time.isAfter(present.get()) == version.age < 0;
            version.order = new Order(agrees && fits, Order.By.TIMES);
        }
        for (int i = 0; i < timed.size(); i++) {
            all.set(places.get(i), timed.get(i));
        }
    }

    /**
     * Puts the records' texts, newest first, among the others; where a text is in both, the records order it. Nothing was
     * there between the present file and what certain records found.
     */
    private List<Version> merge(List<Version> found, List<RecordedVersion> newestFirst) {
        List<Version> chain = chain(newestFirst);
        List<Version> merged = new ArrayList<>();
        int at = 0;
        for (Version recorded : chain) {
            int there = found.indexOf(recorded);
            for (; at < there && !recorded.order.certain(); at++) {
                if (!chain.contains(found.get(at))) {
                    merged.add(found.get(at));
                }
            }
            merged.add(recorded);
            at = recorded.order.certain() ? at : Math.max(at, there + 1);
        }
        for (; at < found.size(); at++) {
            if (!chain.contains(found.get(at))) {
                merged.add(found.get(at));
            }
        }
        return merged;
    }

    /** The texts that changes found and left, each where it was last; certain as far back as each found what another left. */
    private List<Version> chain(List<RecordedVersion> newestFirst) {
        List<Version> chain = new ArrayList<>();
        byte[] next = now.map(PresentFile::bytes).orElse(null);
        boolean sure = true;
        for (RecordedVersion record : newestFirst) {
            if (!record.proven() && !isSeen(record.after())) {
                continue;
            }
            sure &= Arrays.equals(record.after(), next);
            next = record.before();
            for (byte[] text : new byte[][] {record.after(), record.before()}) {
                if (text == null || isNow(text)) {
                    continue;
                }
                Version version = versions.computeIfAbsent(DigestUtils.sha256Hex(text), none -> new Version(text));
                version.whole = true;
                version.records.add(record.place());
                if (!chain.contains(version)) {
                    version.age = Math.max(0, version.age);
                    version.order = new Order(sure, Order.By.RECORDS);
                    chain.add(version);
                }
            }
        }
        return chain;
    }

    private boolean isSeen(byte[] text) {
        return text != null && (isNow(text) || versions.containsKey(DigestUtils.sha256Hex(text)));
    }

    private boolean isNow(byte[] text) {
        return now.isPresent() && Arrays.equals(now.get().bytes(), text);
    }
}
