package bootmend.fat.check;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.device.RecordingDevice;
import bootmend.fat.BuiltVolume;
import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatSpec;
import java.io.IOException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a full look costs is counted in reads, not timed. */
class VolumeCheckCostTest {

    /** Each step of such a chain leads to another FAT sector than any that is kept. */
    @ParameterizedTest
    @ValueSource(ints = {1_000, 4_000})
    void aHealthyChainIsFollowedOnce(int clusters) throws IOException {
        BuiltVolume built = BuiltVolume.of(
                FatSpec.fat32(150 * 4_000).build(),
                builder -> builder.stride(150).add("", FatItem.zeros("LOG.CSV", 512L * clusters)));
        RecordingDevice device = new RecordingDevice(built.disk());

        assertThat(VolumeCheck.of(device).findings()).isEmpty();

        long large = device.reads().stream().filter(read -> read.length() > 512).count();
        assertThat(device.reads().size() - large).isBetween((long) clusters, clusters + 32L);
    }
}
