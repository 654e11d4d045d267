package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.fat.FatVolume;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.record.ProfileJob;
import bootmend.record.ProfileListing;
import bootmend.record.ProfileView;
import bootmend.record.SettingDifference;
import bootmend.record.TrialAddJob;
import bootmend.record.TrialRequest;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.trial.Trial;
import bootmend.view.CautionView;
import bootmend.view.ShowJob;
import bootmend.workplace.MemoryWorkplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Profiles saved from cards and put on cards; trials staged, adopted and removed. */
class ProfileAndStageTest {

    private static final String CART = "/cards/cart.img";
    private static final String MAST = "/cards/mast.img";

    private final MemoryWorkplace bench = new MemoryWorkplace();
    private SparseDisk cart;
    private SparseDisk mast;

    @BeforeEach
    void insertCards() throws IOException {
        cart = MemoryWorkplace.card("[pi4]\narm_freq=1750\nover_voltage=2\n[all]\n");
        mast = MemoryWorkplace.card("dtparam=spi=on\ngpu_freq=700\n");
        bench.insert(CART, cart);
        bench.insert(MAST, mast);
    }

    @AfterEach
    void close() throws IOException {
        bench.close();
    }

    @Test
    void aProfileMovesFromOneCardToAnother() throws Exception {
        save("cart", CART);

        put(MAST, profile("cart"));

        assertThat(config(mast))
                .isEqualTo("dtparam=spi=on\n#gpu_freq=700\n[pi4]\narm_freq=1750\nover_voltage=2\n[all]\n");
        {
            TriedChange again = TriedChange.of(bench.workplace(), card(MAST), profile("cart"));
            assertThat(again.isNothing()).isTrue();
        }
        bench.undo(MAST, ChangeRequest.Undo.LAST);
        assertThat(config(mast)).isEqualTo("dtparam=spi=on\ngpu_freq=700\n");
    }

    @Test
    void anUnprovenProfileAsksAQuestionOfItsOwn() throws Exception {
        save("cart", CART);
        {
            TriedChange change = TriedChange.of(bench.workplace(), card(MAST), profile("cart"));
            assertThat(change.questions()).singleElement().asString().contains("unproven");
        }
    }

    @Test
    void aProfileOfAnotherBoardIsRefusedUnlessTheRiskIsTaken() throws Exception {
        save("cart", CART);
        ChangeOrder other = ChangeOrder.of(new ChangeRequest.ToProfile("cart", Optional.of("pi5")));
        refused(() -> put(MAST, other), "is for pi4, not for pi5");
        put(MAST, other.accepting(NextStep.Allow.OTHER_BOARD));
        assertThat(config(mast)).contains("[pi5]\narm_freq=1750\n");
    }

    /** force_turbo with a raised voltage: "Revision codes", revision-codes.adoc, commit 0456a78c, warranty footnote. */
    @Test
    void aProfileThatVoidsTheWarrantyIsRefusedUnlessTheRiskIsTaken() throws Exception {
        bench.insert("/cards/old.img", MemoryWorkplace.card("arm_freq=1000\nover_voltage=6\nforce_turbo=1\n"));
        new ProfileJob(bench.workplace()).save(card("/cards/old.img"), request("wild", "pi3", List.of()));
        refused(() -> put(MAST, profile("wild")), "blocker");
        put(MAST, profile("wild").accepting(NextStep.Allow.BLOCKERS));
        assertThat(config(mast)).contains("force_turbo=1");
    }

    /** The board would run the update tuned: "value from memory; several public copies agree". */
    @Test
    void noProfileGoesOnACardOnWhichAFirmwareUpdateWaits() throws Exception {
        save("cart", CART);
        FatSpec spec = FatSpec.fat16(5000).build();
        SparseDisk waiting = spec.emptyDisk();
        new FatBuilder(spec)
                .file("config.txt", new byte[0])
                .file("recovery.bin", new byte[900])
                .file("pieeprom.upd", new byte[900])
                .file("pieeprom.sig", new byte[90])
                .writeTo(waiting, 0);
        bench.insert("/cards/waiting.img", waiting);
        refused(() -> put("/cards/waiting.img", profile("cart")), "blocker");
    }

    /** Twice the stock of 1500 and 600 at least: "Overclocking options", commit 6e5f9446; delta: firmware issue 1876. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "arm_freq=5000",
                "arm_freq_min=1900",
                "over_voltage=9",
                "over_voltage_delta=900000",
                "never_over_voltage=1"
            })
    void whatCannotBeIsRefusedBeforeItIsStaged(String setting) throws Exception {
        refused(() -> stage(setting), "blocker");
        assertThat(file(cart, "tryboot.txt")).isEmpty();
    }

    @Test
    void aBlockerThatIsThereDoesNotHideANewOne() throws Exception {
        bench.insert(CART, MemoryWorkplace.card("gpu_freq=1200\n"));
        refused(() -> stage("arm_freq=5000"), "arm_freq=5000");
    }

    @Test
    void aProfileKeepsNeitherConsoleNorBitsOfTheChip() throws Exception {
        bench.insert(
                "/cards/mixed.img",
                MemoryWorkplace.card(
                        "arm_freq=1750\nenable_uart=1\nnever_over_voltage=1\ndtparam=audio=on,sd_overclock=100\n"));
        save("mixed", "/cards/mixed.img");
        put(MAST, profile("mixed"));
        assertThat(config(mast))
                .contains("arm_freq=1750", "dtparam=sd_overclock=100")
                .doesNotContain("never_over_voltage", "enable_uart", "audio");
    }

    @Test
    void profilesAndCardsAreCompared() throws Exception {
        save("cart", CART);
        List<SettingDifference> differences = new ProfileJob(bench.workplace()).compare("cart", card(MAST));
        assertThat(differences)
                .contains(
                        new SettingDifference("arm_freq", Optional.of("1750"), Optional.empty()),
                        new SettingDifference("gpu_freq", Optional.empty(), Optional.of("700")));
    }

    @Test
    void aSettingThatHangsOnAPinIsNotSaved() throws Exception {
        bench.insert(MAST, MemoryWorkplace.card("[gpio4=1]\narm_freq=1800\n[all]\n"));
        save("cart", CART);
        assertThatThrownBy(() -> save("mast", MAST)).isInstanceOf(CardException.class);
    }

    @Test
    void evidenceMustBeATrialOfTheseSettings() {
        assertThatThrownBy(() -> new ProfileJob(bench.workplace())
                        .save(card(CART), request("cart", "pi4", List.of("no-such-trial"))))
                .isInstanceOf(CardException.class);
    }

    @Test
    void onlyTrialsOfWhatIsOnTheCardCanBackAProfile() throws Exception {
        Trial same = tried("cart-3", "pi4", "arm_freq=1750", "over_voltage=2");
        tried("cart-3", "pi4", "arm_freq=1750");
        tried("cart-9", "pi400", "arm_freq=1750", "over_voltage=2");

        List<Trial> backing = new ProfileJob(bench.workplace()).backing(card(CART), "pi4");

        assertThat(backing).extracting(Trial::id).containsExactly(same.id());
        assertThat(new ProfileJob(bench.workplace())
                        .save(card(CART), request("cart", "pi4", List.of(same.id())))
                        .knownGood())
                .isTrue();
    }

    @Test
    void aProfileThatCannotBeReadHidesNoOther() throws Exception {
        save("cart", CART);
        Files.writeString(bench.home().resolve("profiles/torn.yaml"), "schema: 1\nname: torn\n");

        ProfileListing listing = new ProfileJob(bench.workplace()).listing();

        assertThat(listing.profiles()).extracting(ProfileView::name).containsExactly("cart");
        assertThat(listing.problems()).singleElement().asString().contains("torn.yaml");
        assertThat(listing.cautions()).extracting(CautionView::id).contains("warranty", "heat");
    }

    @Test
    void aStagedTrialLeavesTheConfigFileAndGoesWithoutATrace() throws Exception {
        SparseDisk before = cart.copy();
        stage("arm_freq=1850", "over_voltage=3");
        assertThat(file(cart, "tryboot.txt")).hasValue("[pi4]\narm_freq=1850\nover_voltage=3\n[all]\n");
        assertThat(config(cart)).isEqualTo("[pi4]\narm_freq=1750\nover_voltage=2\n[all]\n");
        assertThat(new ShowJob(bench.workplace()).run(card(CART)).notes())
                .anyMatch(note -> note.contains("tryboot.txt"));

        bench.undo(CART, ChangeRequest.Undo.LAST);
        assertThat(cart.differingSectors(before)).isEmpty();
    }

    @Test
    void anAdoptedTrialIsTheConfigFile() throws Exception {
        stage("arm_freq=1850");
        {
            TriedChange change = TriedChange.of(bench.workplace(), card(CART), new ChangeRequest.Adopt());
            change.apply();
        }
        assertThat(config(cart)).isEqualTo("[pi4]\narm_freq=1850\nover_voltage=2\n[all]\n");
        assertThat(file(cart, "tryboot.txt")).isEmpty();
    }

    @Test
    void adoptingAsksWhereTheConfigFileWasEditedSince() throws Exception {
        stage("arm_freq=1850", "temp_limit=70");
        assertThat(TriedChange.of(bench.workplace(), card(CART), new ChangeRequest.Adopt())
                        .questions())
                .isEmpty();
        String staged = file(cart, "tryboot.txt").orElseThrow();
        SparseDisk edited = FatSpec.fat16(5000).build().emptyDisk();
        new FatBuilder(FatSpec.fat16(5000).build())
                .file("config.txt", "[pi4]\narm_freq=1750\n[all]\nhdmi_group=2\n".getBytes(StandardCharsets.US_ASCII))
                .file("tryboot.txt", staged.getBytes(StandardCharsets.US_ASCII))
                .writeTo(edited, 0);
        bench.insert(CART, edited);

        assertThat(TriedChange.of(bench.workplace(), card(CART), new ChangeRequest.Adopt())
                        .questions())
                .singleElement()
                .asString()
                .startsWith("One line");
    }

    @Test
    void settingsStagedOverOthersAreShownAgainstThose() throws Exception {
        stage("arm_freq=1850");
        TriedChange again =
                TriedChange.of(bench.workplace(), card(CART), new ChangeRequest.Stage("pi4", List.of("arm_freq=1900")));

        assertThat(again.change().files())
                .singleElement()
                .matches(file ->
                        file.kind() == FileEdit.Kind.CHANGED && file.path().equals("tryboot.txt"));
        assertThat(again.lines())
                .containsExactly(SampleChange.line("tryboot.txt", 2, "arm_freq=1850", "arm_freq=1900"));
        assertThat(again.change().notes()).singleElement().asString().contains("staged already");
    }

    @Test
    void anUnstagedTrialIsGone() throws Exception {
        stage("arm_freq=1850");
        {
            TriedChange change = TriedChange.of(bench.workplace(), card(CART), new ChangeRequest.Unstage());
            change.apply();
        }
        assertThat(file(cart, "tryboot.txt")).isEmpty();
        refused(
                () -> TriedChange.of(bench.workplace(), card(CART), new ChangeRequest.Unstage()),
                "no settings are staged");
    }

    /** Source: "EEPROM boot flow", bootflow-eeprom.adoc, commit 33cd51c5: all boards support the one-time flag. */
    @Test
    void anOlderBoardCanBeStagedToo() throws Exception {
        TriedChange.of(bench.workplace(), card(CART), new ChangeRequest.Stage("pi3", List.of("arm_freq=1300")))
                .apply();
        assertThat(file(cart, "tryboot.txt"))
                .hasValueSatisfying(text -> assertThat(text).contains("arm_freq=1300"));
    }

    /** Source: "autoboot.txt", config_txt/autoboot.adoc, commit 04d84a86. */
    @Test
    void aCardThatSwitchesPartitionsIsRefused() throws Exception {
        FatSpec spec = FatSpec.fat16(5000).build();
        SparseDisk switching = spec.emptyDisk();
        new FatBuilder(spec)
                .file("config.txt", new byte[0])
                .file("autoboot.txt", "[all]\ntryboot_a_b=1\n".getBytes(StandardCharsets.US_ASCII))
                .writeTo(switching, 0);
        bench.insert(CART, switching);
        refused(() -> stage("arm_freq=1850"), "tryboot_a_b=1");
    }

    private interface Action {
        void run() throws Exception;
    }

    private static void refused(Action action, String words) {
        assertThatThrownBy(action::run)
                .isInstanceOfSatisfying(
                        CardException.class, e -> assertThat(e.kind()).isEqualTo(CardException.Kind.REFUSED))
                .hasMessageContaining(words);
    }

    private void save(String name, String card) throws CardException {
        new ProfileJob(bench.workplace()).save(card(card), request(name, "pi4", List.of()));
    }

    private static ProfileJob.Save request(String name, String board, List<String> trials) {
        return new ProfileJob.Save(name, board, "", "", "", trials, false);
    }

    private Trial tried(String label, String board, String... settings) throws CardException {
        return new TrialAddJob(bench.workplace())
                .run(new TrialRequest(
                        label,
                        BoardRequest.of(board),
                        Optional.empty(),
                        List.of(settings),
                        Optional.empty(),
                        "holds",
                        new TrialRequest.Measured(
                                OptionalDouble.of(60),
                                true,
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                Optional.of("0x0"),
                                List.of()),
                        "",
                        "",
                        OptionalDouble.empty(),
                        Optional.empty(),
                        ""))
                .trial();
    }

    private static ChangeOrder profile(String name) {
        return ChangeOrder.of(new ChangeRequest.ToProfile(name, Optional.empty()));
    }

    private void put(String card, ChangeOrder request) throws CardException, IOException {
        {
            TriedChange change = TriedChange.of(bench.workplace(), card(card), request);
            change.apply();
        }
    }

    private void stage(String... settings) throws CardException, IOException {
        TriedChange.of(bench.workplace(), card(CART), new ChangeRequest.Stage("pi4", List.of(settings)))
                .apply();
    }

    private static CardRequest card(String path) {
        return CardRequest.of(Path.of(path));
    }

    private static String config(SparseDisk card) throws IOException {
        return file(card, "config.txt").orElseThrow();
    }

    private static Optional<String> file(SparseDisk card, String name) throws IOException {
        FatVolume volume = FatVolume.open(card);
        var entry = volume.find(name);
        return entry.isEmpty()
                ? Optional.empty()
                : Optional.of(new String(volume.read(entry.get(), 4096).bytes(), StandardCharsets.US_ASCII));
    }
}
