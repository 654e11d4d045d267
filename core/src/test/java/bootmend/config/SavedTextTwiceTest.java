package bootmend.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

class SavedTextTwiceTest {

    /** Mending what is mended finds nothing more, for any bytes. */
    @Property(tries = 2000)
    void mendingTwiceChangesNothing(@ForAll byte[] bytes) {
        Optional<byte[]> mended = SavedText.of(bytes).mended();
        if (mended.isPresent()) {
            SavedText again = SavedText.of(mended.get());
            assertThat(again.problems()).isEmpty();
            assertThat(again.mended()).contains(mended.get());
        }
    }
}
