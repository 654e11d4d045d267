package bootmend.gui.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.gui.LabRecords;
import bootmend.gui.SmallCards;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javafx.scene.control.CheckBox;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** Profiles as a user picks them, puts them on a card and passes them on. */
class ProfilesPageTest {

    @TempDir
    private Path folder;

    private WindowOverFolder window;
    private Hands hands;

    @BeforeEach
    void open() throws Exception {
        window = new WindowOverFolder(folder.resolve("home"));
        hands = new Hands(window);
    }

    @AfterEach
    void close() throws Exception {
        window.close();
    }

    @Test
    void withoutAProfileThePageSaysHowToGetOne() throws Exception {
        hands.page("profiles");

        assertThat(hands.texts("#profiles-empty")).contains("Open a card whose settings work");
        assertThat(hands.find("#profiles-save").isDisabled()).isTrue();
    }

    @Test
    void anUnprovenProfileIsShownAgreedToAndPutOnTheCard() throws Exception {
        LabRecords.fill(window.model().services().workplace(), folder);
        hands.page("profiles");
        assertThat(hands.texts("#profile-details")).contains("cart-3", "This proves the settings.");
        assertThat(hands.find("#profile-put").isDisabled()).isTrue();
        assertThat(hands.texts("#profiles-page")).contains("Open a card first");

        hands.look(SmallCards.write(folder, "lab-01.img", SmallCards.TUNED));
        hands.click("weather-mast");
        assertThat(hands.texts("#profile-details")).contains("Unproven", "This alone proves nothing.");
        hands.click("#profile-put");

        assertThat(hands.texts("#strip-body")).contains("arm_freq=900", "is unproven");
        assertThat(hands.find("#strip-make").isDisabled()).isTrue();
        hands.act(
                () -> ((CheckBox) new FxRobot().lookup("#strip-body .check-box").query()).fire());
        hands.click("#strip-make");

        assertThat(hands.texts("#strip-body")).contains("Done.", "The card is safe to take out.");
        hands.click("#profile-compare");
        assertThat(hands.texts("#profile-details")).contains("The card has exactly these settings.");
    }

    @Test
    void theWindowsBoardMakesTheRiskAChoice() throws Exception {
        LabRecords.fill(window.model().services().workplace(), folder);
        hands.look(SmallCards.write(folder, "lab-01.img", SmallCards.TUNED));
        hands.page("profiles");
        hands.act(() -> window.model().current().get().orElseThrow().setBoard(Optional.of("pi5")));

        hands.press("#profile-put");
        assertThat(hands.texts("#strip-body")).contains("is for pi4, not for pi5", "for another board anyway");
        hands.act(() -> ((CheckBox) new FxRobot().lookup("#profile-otherboard").query()).setSelected(true));
        hands.press("#profile-put");

        assertThat(hands.texts("#strip-body")).contains("arm_freq=1750");
        hands.act(() -> window.model().current().get().orElseThrow().setBoard(Optional.of("pi4")));
        assertThat(hands.isThere("#profile-otherboard")).isFalse();
    }

    @Test
    void aCardsSettingsAreSavedExportedAndDeleted() throws Exception {
        LabRecords.fill(window.model().services().workplace(), folder);
        hands.look(folder.resolve("cart.img"));
        hands.page("profiles");

        hands.press("#profiles-save");
        hands.type("#saving-name", "cart-9");
        hands.choose("#saving-board", "pi4");
        assertThat(hands.texts("#saving-trials")).contains("on cart-3: holds (known-good");
        hands.press("#saving-save");

        assertThat(hands.texts("#profiles-page")).contains("The profile cart-9 is kept on this computer.");
        assertThat(hands.texts("#profile-details")).contains("cart-9", "Known-good");
        window.answers().save = Optional.of(folder.resolve("cart-9.yaml"));
        hands.press("#profile-export");
        assertThat(Files.readString(folder.resolve("cart-9.yaml"))).contains("name: cart-9");

        hands.press("#profile-delete");
        assertThat(hands.texts("#profile-details")).contains("Cards keep what they have.");
        hands.press("#profile-delete-yes");
        assertThat(hands.texts("#profiles")).doesNotContain("cart-9");

        window.answers().file = Optional.of(folder.resolve("cart-9.yaml"));
        hands.press("#profiles-import");
        hands.press("#profiles-import");
        assertThat(hands.texts("#profiles-page")).contains("There is a profile cart-9 already.");
        hands.press("#profiles-replace");
        assertThat(hands.texts("#profiles")).contains("cart-9");
    }
}
