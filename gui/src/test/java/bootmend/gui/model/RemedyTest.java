package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.gui.text.Words;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Core's advice with the window's places in it. */
class RemedyTest {

    private final Remedy remedy = new Remedy(new Words(Locale.ENGLISH));

    @Test
    void commandsBecomePlacesInTheWindow() {
        assertThat(remedy.of("Run `bootmend repair` on the card first."))
                .isEqualTo("Run \u201cDamage\u201d on the card first.");
        assertThat(remedy.of("See `bootmend trial list --label x`.")).isEqualTo("See \u201cTrials\u201d.");
    }

    @Test
    void optionsBecomeWhatIsTicked() {
        assertThat(remedy.of("With --other-board it is put there.")).doesNotContain("--");
    }

    @Test
    void whatIsNotKnownStays() {
        assertThat(remedy.of("Run `bootmend polish` with --wax.")).isEqualTo("Run `bootmend polish` with --wax.");
    }
}
