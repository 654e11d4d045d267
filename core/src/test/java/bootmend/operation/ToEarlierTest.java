package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.earlier.EarlierCard;
import bootmend.earlier.Order;
import bootmend.earlier.SearchProgress;
import bootmend.fat.FatVolume;
import bootmend.profile.Evidence;
import bootmend.profile.Profile;
import bootmend.record.TrialAddJob;
import bootmend.record.TrialRequest;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.view.EarlierJob;
import bootmend.view.EarlierVersionView;
import bootmend.view.EarlierView;
import bootmend.workplace.MemoryWorkplace;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Earlier versions put back, in whole and by their tuning lines, and what the list says of them before and after. */
class ToEarlierTest {

    private static final CardRequest CARD = CardRequest.of(Path.of("/cards/one.img"));
    private static final String NOW = "# cart 3\n[all]\narm_freq=2000\nover_voltage=4\nhdmi_group=1\n";
    private static final String THEN = "# cart\n[all]\narm_freq=1900\ngpu_freq=600\n";

    private final MemoryWorkplace bench = new MemoryWorkplace();

    @AfterEach
    void close() throws Exception {
        bench.close();
    }

    private EarlierCard insert(EarlierCard card) {
        bench.insert(CARD.card().toString(), card.disk);
        return card;
    }

    private EarlierView list() throws CardException {
        return new EarlierJob(bench.workplace()).run(CARD, BoardRequest.none(), SearchProgress.TO_THE_END);
    }

    private TriedChange change(String which, boolean whole, String board) throws CardException {
        return TriedChange.of(
                bench.workplace(), CARD, new ChangeRequest.ToEarlier(which, whole, Optional.ofNullable(board)));
    }

    private static String config(EarlierCard card) throws Exception {
        FatVolume volume = FatVolume.open(card.disk);
        return new String(
                volume.read(volume.find("config.txt").orElseThrow(), 1 << 20).bytes(), StandardCharsets.ISO_8859_1);
    }

    @Test
    void theListSaysWhatEachTunedAndHowThatDiffers() throws Exception {
        insert(EarlierCard.withConfig(NOW).put(100, THEN));

        EarlierVersionView version = list().versions().get(0);

        assertThat(version.n()).isEqualTo(1);
        assertThat(version.beforeNow()).isTrue();
        assertThat(version.settings()).containsEntry("arm_freq", "1900").containsEntry("gpu_freq", "600");
        assertThat(version.changes())
                .extracting(change -> change.key() + " " + change.then().orElse("-") + " "
                        + change.now().orElse("-"))
                .containsExactly("arm_freq 1900 2000", "gpu_freq 600 -", "over_voltage - 4");
        assertThat(version.otherLines()).isEqualTo(2);
        assertThat(list().now().orElseThrow().settings()).containsEntry("arm_freq", "2000");
    }

    @Test
    void itsTuningLinesGoBackAndAllElseStays() throws Exception {
        EarlierCard card = insert(EarlierCard.withConfig(NOW).put(100, THEN));

        change("1", false, null).apply();

        assertThat(config(card))
                .isEqualTo("# cart 3\n[all]\narm_freq=1900\n#over_voltage=4\nhdmi_group=1\ngpu_freq=600\n");
        assertThat(change(
                                list().versions().stream()
                                        .filter(each -> each.settings().containsKey("gpu_freq"))
                                        .findFirst()
                                        .orElseThrow()
                                        .sha256(),
                                false,
                                null)
                        .isNothing())
                .isTrue();
    }

    @Test
    void itGoesBackWholeByTheBeginningOfItsHashAndCanBeUndone() throws Exception {
        EarlierCard card = insert(EarlierCard.withConfig(NOW).put(100, THEN));
        String hash = list().versions().get(0).sha256();

        change(hash.substring(0, 8), true, null).apply();
        assertThat(config(card)).isEqualTo(THEN);
        TriedChange.of(bench.workplace(), CARD, ChangeRequest.Undo.LAST).apply();

        assertThat(config(card)).isEqualTo(NOW);
    }

    @Test
    void forOneBoardOnlyItsLinesChange() throws Exception {
        EarlierCard card = insert(EarlierCard.withConfig("[pi4]\narm_freq=2100\n[pi5]\narm_freq=2600\n[all]\n")
                .put(100, "[pi4]\narm_freq=1900\n[pi5]\narm_freq=2500\n[all]\n"));

        change("1", false, "pi4").apply();

        assertThat(config(card)).isEqualTo("[pi4]\narm_freq=1900\n[pi5]\narm_freq=2600\n[all]\n");
    }

    @Test
    void aCardWithoutAConfigFileGetsOneAgain() throws Exception {
        EarlierCard card = insert(EarlierCard.of(files -> files).put(900, THEN));

        change("1", true, null).apply();

        assertThat(config(card)).isEqualTo(THEN);
    }

    @Test
    void aPartGoesBackByItsLinesAfterAQuestionAndNeverWhole() throws Exception {
        insert(EarlierCard.withConfig(NOW).put(100, THEN + "not a line of a config file\narm_freq=1\n"));

        assertThat(change("1", false, null).questions()).first().asString().startsWith("Only a part");
        assertThatThrownBy(() -> change("1", true, null))
                .isInstanceOfSatisfying(
                        CardException.class, e -> assertThat(e.steps()).containsExactly(NextStep.Plain.LIST_EARLIER));
    }

    @Test
    void whatABlockerIsFoundInOnEveryBoardIsRefused() throws Exception {
        insert(EarlierCard.withConfig("hdmi_group=1\n").put(100, "arm_freq=9000\n"));

        assertThatThrownBy(() -> change("1", false, null))
                .isInstanceOfSatisfying(
                        CardException.class,
                        e -> assertThat(e.isRefusedFor(NextStep.Allow.BLOCKERS)).isTrue());
    }

    @Test
    void aVersionThatIsNotThereIsNamed() throws Exception {
        insert(EarlierCard.withConfig(NOW).put(100, THEN));

        for (String which : new String[] {"0", "2", "deadbeef", "first", ""}) {
            assertThatThrownBy(() -> change(which, false, null)).isInstanceOfSatisfying(CardException.class, e -> {
                assertThat(e.kind()).isEqualTo(CardException.Kind.USAGE);
                assertThat(e.remedy()).contains("1 to 1");
            });
        }
    }

    @Test
    void whatThisComputerChangedIsCertain() throws Exception {
        insert(EarlierCard.withConfig(NOW).put(100, THEN));
        bench.reset(CARD.card().toString());

        EarlierVersionView before = list().beforeNow().orElseThrow();

        assertThat(EarlierCard.text(before.version())).isEqualTo(NOW);
        assertThat(before.version().order()).isEqualTo(new Order(true, Order.By.RECORDS));
    }

    @Test
    void trialsAndProfilesSayWhichVersionHeld() throws Exception {
        insert(EarlierCard.withConfig(NOW).put(100, THEN));
        bench.workplace()
                .profiles()
                .save(
                        new Profile(
                                "cart",
                                "pi4",
                                Map.of("arm_freq", "1900", "gpu_freq", "600"),
                                "",
                                "",
                                List.of(new Evidence("by hand", true, 60, true, false)),
                                ""),
                        false);
        new TrialAddJob(bench.workplace())
                .run(new TrialRequest(
                        "lab-07",
                        BoardRequest.of("pi4"),
                        Optional.empty(),
                        List.of("arm_freq=1900", "gpu_freq=600"),
                        Optional.empty(),
                        "no-boot",
                        new TrialRequest.Measured(
                                OptionalDouble.empty(),
                                false,
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                Optional.empty(),
                                List.of()),
                        "",
                        "",
                        OptionalDouble.empty(),
                        Optional.empty(),
                        ""));

        EarlierView view = list();

        assertThat(view.versions().get(0).tried())
                .extracting(tried -> tried.source() + " " + tried.name() + " " + tried.outcome())
                .anyMatch(tried -> tried.matches("TRIAL trial-lab-07-.* FAILED"))
                .contains("PROFILE cart KNOWN_GOOD");
        assertThat(view.lastGood()).contains(view.versions().get(0));
        assertThat(view.knownGood()).containsExactly("cart");
    }

    @Test
    void ofAMountedFolderItsCopiesAreFound(@TempDir Path folder) throws Exception {
        Path boot = Files.createDirectory(folder.resolve("boot"));
        Files.writeString(boot.resolve("config.txt"), NOW);
        Files.writeString(boot.resolve("config.txt.bak"), THEN);
        var workplace = bootmend.workplace.Workplace.ofThisComputer(folder.resolve("home"));
        CardRequest request = CardRequest.of(boot);

        EarlierView view = new EarlierJob(workplace).run(request, BoardRequest.none(), SearchProgress.TO_THE_END);
        TriedChange.of(workplace, request, new ChangeRequest.ToEarlier("1", true, Optional.empty()))
                .apply();

        assertThat(view.mounted()).isTrue();
        assertThat(view.versions()).hasSize(1);
        assertThat(Files.readString(boot.resolve("config.txt"))).isEqualTo(THEN);
    }
}
