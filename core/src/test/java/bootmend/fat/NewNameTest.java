package bootmend.fat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** "FAT: General Overview of On-Disk Format", version 1.03, "FAT Long Directory Entries". */
class NewNameTest {

    @ParameterizedTest
    @CsvSource({
        "config.txt, 'CONFIG  TXT', 24, 1",
        "CONFIG.TXT, 'CONFIG  TXT', 0, 1",
        "lower.TXT, 'LOWER   TXT', 8, 1",
        "UPPER.txt, 'UPPER   TXT', 16, 1",
        "kernel8, 'KERNEL8    ', 8, 1",
        "Mixed.txt, 'MIXED~1 TXT', 0, 2",
        "four.four, 'FOUR~1  FOU', 0, 2",
        "thirteen-char, 'THIRTE~1   ', 0, 2",
        "fourteen-chars, 'FOURTE~1   ', 0, 3",
        ".hidden, 'HIDDEN~1   ', 0, 2",
        "a.b.c, 'AB~1    C  ', 0, 2",
        "gr\u00fc\u00df.txt, 'GR__~1  TXT', 0, 2",
    })
    void eachNameHasItsShortFormAndSlots(String name, String stored, int flags, int slots) throws BadVolumeException {
        NewName given = NewName.of(name, Set.of());
        assertThat(new String(given.stored(), StandardCharsets.US_ASCII)).isEqualTo(stored);
        assertThat(given.caseFlags()).isEqualTo(flags);
        assertThat(given.slots()).isEqualTo(slots);
    }

    @Test
    void shortFormsThatAreTakenAreNotGivenAgain() throws BadVolumeException {
        Set<String> taken = new HashSet<>();
        for (int i = 1; i <= 1200; i++) {
            String stored =
                    new String(NewName.of("A long name " + i + ".dtbo", taken).stored(), StandardCharsets.US_ASCII);
            assertThat(taken.add(stored.substring(0, 8).strip() + "." + stored.substring(8)))
                    .isTrue();
        }
        assertThat(taken).contains("ALONGN~1.DTB", "ALONG~10.DTB", "ALO~1200.DTB");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "a/b", "a:b", "tab\t", "end.", "end ", "what?", "pipe|", "back\\slash", "star*"})
    void whatIsNoNameIsNotTaken(String name) {
        assertThatThrownBy(() -> NewName.of(name, Set.of())).isInstanceOf(BadVolumeException.class);
    }
}
