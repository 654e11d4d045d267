package bootmend.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

class SavedTextTwiceTest {

    /** Repairing what is repaired finds nothing more, for any bytes. */
    @Property(tries = 2000)
    void repairingTwiceChangesNothing(@ForAll byte[] bytes) {
        Optional<byte[]> repaired = SavedText.of(bytes).repaired();
        if (repaired.isPresent()) {
            SavedText again = SavedText.of(repaired.get());
            assertThat(again.problems()).isEmpty();
            assertThat(again.repaired()).contains(repaired.get());
        }
    }
}
