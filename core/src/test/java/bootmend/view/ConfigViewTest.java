package bootmend.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** A config file as it is shown. */
class ConfigViewTest {

    private static final byte[] ABC = "abc".getBytes(StandardCharsets.US_ASCII);

    @Test
    void theHashIsThatOfThePublishedExample() {
        // SHA-256 of "abc": FIPS 180-2, Secure Hash Standard, appendix B.1.
        String published = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

        assertThat(new ConfigView("config.txt", ABC).sha256()).isEqualTo(published);
        assertThat(new ConfigView("config.txt", ABC).hashed().sha256()).isEqualTo(published);
    }

    @Test
    void viewsOfTheSameFileAreEqualHashedOrNot() {
        ConfigView view = new ConfigView("config.txt", ABC);

        assertThat(view)
                .isEqualTo(new ConfigView("config.txt", ABC).hashed())
                .hasSameHashCodeAs(new ConfigView("config.txt", ABC))
                .isNotEqualTo(new ConfigView("config.txt", "abd".getBytes(StandardCharsets.US_ASCII)))
                .isNotEqualTo(new ConfigView("robots.txt", ABC));
        assertThat(view.hashed()).hasToString("config.txt, 3 bytes");
    }
}
