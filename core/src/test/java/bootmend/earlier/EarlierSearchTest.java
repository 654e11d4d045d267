package bootmend.earlier;

import static bootmend.earlier.EarlierCard.CLUSTER;
import static bootmend.earlier.EarlierCard.bytes;
import static org.assertj.core.api.Assertions.assertThat;

import bootmend.fat.FatVolume;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where earlier versions are looked for, and what of a text is taken; each text here stands on a small card. */
class EarlierSearchTest {

    private static final String NOW = "# cart 3\n[all]\narm_freq=2000\nover_voltage=4\ndtparam=audio=on\n";
    private static final String THEN = NOW.replace("2000", "1900");

    private static List<String> texts(List<EarlierVersion> versions) {
        return versions.stream().map(EarlierCard::text).toList();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "config.txt.bak",
                "config.bak",
                "config.txt.old",
                "config.txt~",
                "config.txt.save",
                "config.txt.save.1",
                "config.txt.orig",
                "config.txt.dpkg-old",
                "config.txt.1",
                "config-old.txt",
                "Copy of config.txt",
                "config (copy).txt",
                "#config.txt#",
                "tryboot.txt",
                "FSCK0000.REC"
            })
    void aCopyThatAFolderListsIsFoundByItsNameAndItsLines(String name) throws Exception {
        List<EarlierVersion> found = EarlierCard.of(
                        card -> card.file("config.txt", bytes(NOW)).file(name, bytes(THEN)))
                .search();

        assertThat(texts(found)).containsExactly(THEN);
        assertThat(found.get(0).whole()).isTrue();
        assertThat(found.get(0).places()).containsExactly(new Place.Copy(name));
    }

    @Test
    void aCopyInAFolderIsFoundToo() throws Exception {
        List<EarlierVersion> found = EarlierCard.of(card -> card.file("config.txt", bytes(NOW))
                        .directory("backup")
                        .file("backup/config.txt.bak", bytes(THEN)))
                .search();

        assertThat(found)
                .singleElement()
                .satisfies(version ->
                        assertThat(version.places()).containsExactly(new Place.Copy("backup/config.txt.bak")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"cmdline.txt", "user-data", "notes.txt", "config.json", "wpa_supplicant.conf.bak"})
    void aFileThatIsNoCopyIsLeftAlone(String name) throws Exception {
        assertThat(EarlierCard.of(card -> card.file("config.txt", bytes(NOW)).file(name, bytes(THEN)))
                        .search())
                .isEmpty();
    }

    @Test
    void aCopyWhoseLinesAreNoConfigFileIsLeftAlone() throws Exception {
        assertThat(EarlierCard.of(card -> card.file("config.txt", bytes(NOW))
                                .file("config.old", bytes("network={\n psk=\"hunter2\"\n}\n")))
                        .search())
                .isEmpty();
    }

    @Test
    void whatIsThereNowAndWhatItIncludesAreNoEarlierVersions() throws Exception {
        String now = NOW + "include extra.txt\n";
        EarlierCard card = EarlierCard.of(
                files -> files.file("config.txt", bytes(now)).file("extra.txt", bytes("gpu_freq=600\n")));
        card.put(100, now).put(110, "gpu_freq=600\n").put(120, now.replace("2000", "1900"));

        assertThat(texts(card.search())).containsExactly(now.replace("2000", "1900"));
    }

    @Test
    void aDeletedFileIsFoundWithItsNameAndItsTime() throws Exception {
        EarlierCard card =
                EarlierCard.of(files -> files.file("config.txt", bytes(NOW)).file("config.new", bytes(THEN)));
        delete(card, "config.new");

        assertThat(card.search()).singleElement().satisfies(version -> {
            assertThat(version.places().get(0))
                    .isInstanceOfSatisfying(
                            Place.Deleted.class,
                            place -> assertThat(place.name()).isIn("config.new", "?onfig.new", "?ONFIG.NEW"));
            assertThat(version.whole()).isTrue();
            assertThat(EarlierCard.text(version)).isEqualTo(THEN);
        });
    }

    /** As every system does it: the first byte of the entry's slots, and the chain. */
    private static void delete(EarlierCard card, String name) throws Exception {
        FatVolume volume = FatVolume.open(card.disk);
        var entry = volume.find(name).orElseThrow();
        card.disk.patch(entry.offset(), (byte) 0xE5);
        entry.longNameOffsets().forEach(slot -> card.disk.patch(slot, (byte) 0xE5));
        for (int copy = 0; copy < volume.geometry().fatCount(); copy++) {
            card.disk.patch(volume.geometry().fatStart(copy) + 2 * entry.firstCluster(), (byte) 0, (byte) 0);
        }
    }

    @Test
    void aDeletedEntryWhoseClusterHoldsSomethingElseByNowSaysNothing() throws Exception {
        EarlierCard card =
                EarlierCard.of(files -> files.file("config.txt", bytes(NOW)).file("config.new", bytes(THEN)));
        long cluster =
                FatVolume.open(card.disk).find("config.new").orElseThrow().firstCluster();
        delete(card, "config.new");
        String other = THEN + "gpu_freq=600\n";
        card.put(cluster, other);

        assertThat(card.search()).singleElement().satisfies(version -> {
            assertThat(version.places()).containsExactly(new Place.Free(cluster));
            assertThat(EarlierCard.text(version)).isEqualTo(other);
        });
    }

    @Test
    void clustersBehindThePresentFileAreOlderTheNearerTheyLieTheYounger() throws Exception {
        EarlierCard card = EarlierCard.withConfig(NOW);
        long now = FatVolume.open(card.disk).find("config.txt").orElseThrow().firstCluster();
        card.put(now + 4000, NOW.replace("2000", "1700"))
                .put(now + 3000, NOW.replace("2000", "1600"))
                .put(now + 1, NOW.replace("2000", "1500"));

        assertThat(texts(card.search()))
                .containsExactly(NOW.replace("2000", "1700"), NOW.replace("2000", "1600"), NOW.replace("2000", "1500"));
    }

    @Test
    void ofATextWhoseFirstClusterWasWrittenOverItsKnownLinesAreLeft() throws Exception {
        StringBuilder text = new StringBuilder(NOW);
        for (int i = 0; text.length() < 2 * CLUSTER; i++) {
            text.append("dtoverlay=gpio-led,gpio=").append(i).append('\n');
        }
        EarlierCard card = EarlierCard.withConfig(NOW).put(100, text.toString()).put(100, "x".repeat(CLUSTER));

        assertThat(card.search()).singleElement().satisfies(version -> {
            assertThat(version.whole()).isFalse();
            assertThat(text.toString()).contains(EarlierCard.text(version));
            assertThat(EarlierCard.text(version)).startsWith("dtoverlay=").endsWith("\n");
        });
    }

    @Test
    void twoVersionsOfWhichOneEndsWithItsClusterAreToldApart() throws Exception {
        StringBuilder filled = new StringBuilder(THEN);
        while (CLUSTER - filled.length() > 100) {
            filled.append("# the cooler is as on the bench sheet\n");
        }
        String first = filled.append("-".repeat(CLUSTER - filled.length() - 1))
                .append('\n')
                .toString();
        first = first.replace("\n--", "\n#-");
        EarlierCard card = EarlierCard.withConfig(NOW).put(100, first + NOW.replace("2000", "1800"));

        assertThat(texts(card.search())).containsExactly(NOW.replace("2000", "1800"), first);
    }

    @Test
    void whatStandsInAClusterBehindAYoungerTextIsAnOlderPart() throws Exception {
        String tail = "gpu_freq=600\nover_voltage_min=2\n";
        byte[] cluster = new byte[CLUSTER];
        System.arraycopy(bytes(THEN), 0, cluster, 0, THEN.length());
        System.arraycopy(bytes("req=1\n" + tail), 0, cluster, 512, tail.length() + 6);
        List<EarlierVersion> found =
                EarlierCard.withConfig(NOW).put(4000, cluster).search();

        assertThat(texts(found)).containsExactly(THEN, tail);
        assertThat(found).extracting(EarlierVersion::whole).containsExactly(true, false);
    }

    @Test
    void aCardWithoutAConfigFileMayHaveHadOne() throws Exception {
        assertThat(texts(EarlierCard.of(files -> files).put(900, THEN).search()))
                .containsExactly(THEN);
    }

    @Test
    void theSearchStopsWhenToldToAndSaysSo() throws Exception {
        EarlierCard card = EarlierCard.withConfig(NOW).put(20, THEN).put(4900, NOW.replace("2000", "1600"));
        List<Long> told = new ArrayList<>();

        EarlierVersions near = card.search(SearchProgress.AT_ONCE);
        EarlierVersions whole = card.search((done, all) -> {
            told.add(done);
            assertThat(done).isLessThanOrEqualTo(all);
            return true;
        });

        assertThat(near.complete()).isFalse();
        assertThat(texts(near.newestFirst())).contains(THEN);
        assertThat(whole.complete()).isTrue();
        assertThat(whole.newestFirst()).hasSize(2);
        assertThat(told).isSorted().hasSizeGreaterThan(2);
    }

    @Test
    void aSearchWritesNothing() throws Exception {
        EarlierCard card = EarlierCard.withConfig(NOW).put(100, THEN);
        var before = card.disk.copy();

        card.search();

        assertThat(card.disk.differingSectors(before)).isEmpty();
    }

    @Test
    void clustersOfTextWithoutAnEndTakeNoMoreThanTheirShare() throws Exception {
        EarlierCard card = EarlierCard.withConfig(NOW);
        byte[] line = bytes("arm_freq=1800\n");
        byte[] run = new byte[500 * CLUSTER];
        for (int i = 0; i < run.length; i++) {
            run[i] = line[i % line.length];
        }
        card.put(1000, run);

        assertThat(card.search())
                .allSatisfy(version -> assertThat(version.text()).hasSizeLessThanOrEqualTo(1 << 16));
    }
}
