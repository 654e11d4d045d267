package bootmend.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.record.ProfileJob;
import bootmend.request.CardRequest;
import bootmend.request.GivenText;
import bootmend.workplace.MemoryWorkplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class CompareJobTest {

    private final MemoryWorkplace bench = new MemoryWorkplace();

    @AfterEach
    void close() throws IOException {
        bench.close();
    }

    @Test
    void whatBoardsComeToIsComparedAndNotHowItIsWritten() throws Exception {
        CompareView view = compare(
                "arm_freq=1750\n[pi4]\nover_voltage=2\n[all]\ndtparam=audio=on,spi=on\ndtoverlay=lab\nhdmi_group=1\n",
                "# moved\r\ndtparam=spi=on\r\ndtparam=audio=off\r\n[all]\r\narm_freq=1\r\narm_freq=1750\r\n"
                        + "dtoverlay=lab\r\ndtoverlay=arm\r\nhdmi_group=2\r\nhdmi_group=1\r\n",
                "pi4");

        assertThat(view.sameConfig()).isFalse();
        assertThat(view.boards()).singleElement().satisfies(on -> {
            assertThat(on.boards()).containsExactly("pi4");
            assertThat(on.tuning()).containsExactly(setting("over_voltage", "2", null));
            assertThat(on.other())
                    .containsExactly(setting("dtparam=audio", "on", "off"), setting("dtoverlay=arm", null, "arm"));
        });
    }

    @Test
    void boardsWithTheSameDifferencesAreTogether() throws Exception {
        CompareView view = compare("[pi4]\narm_freq=1750\n", "[pi5]\narm_freq=2500\n", "");

        assertThat(view.boards()).hasSize(2);
        assertThat(view.boards())
                .anySatisfy(on -> assertThat(on.tuning()).containsExactly(setting("arm_freq", "1750", null)))
                .anySatisfy(on -> assertThat(on.tuning()).containsExactly(setting("arm_freq", null, "2500")));
        assertThat(view.boards().stream().flatMap(on -> on.boards().stream()))
                .contains("pi4", "pi5")
                .doesNotContain("pi3");
    }

    @Test
    void theSameFileIsTheSame() throws Exception {
        CompareView view = compare("arm_freq=1\n", "arm_freq=1\n", "");
        assertThat(view.isSame()).isTrue();
        assertThat(view.sameConfig()).isTrue();
        assertThat(compare("arm_freq=1\n", "# x\narm_freq=1\n", "").isSame()).isTrue();
    }

    @Test
    void aProfileIsComparedOnItsBoardByWhatAProfileKeeps() throws Exception {
        bench.insert("/a.img", MemoryWorkplace.card("[pi4]\narm_freq=1750\n"));
        bench.insert("/b.img", MemoryWorkplace.card("arm_freq=1800\nhdmi_group=1\nenable_uart=1\n"));
        new ProfileJob(bench.workplace())
                .save(
                        CardRequest.of(Path.of("/a.img")),
                        new ProfileJob.Save("cart", "pi4", "", "", "", List.of(), false));

        CompareView view = new CompareJob(bench.workplace())
                .run(new CompareSource.OfProfile("cart"), card("/b.img"), Optional.empty());

        assertThat(view.boards())
                .containsExactly(new CompareView.OnBoards(
                        List.of("pi4"), List.of(setting("arm_freq", "1750", "1800")), List.of()));
    }

    @Test
    void filesOfTwoCardsAreComparedByTheirContent() throws Exception {
        bench.insert("/a.img", cardWith("start4.elf", new byte[3000], "only-a.txt", new byte[7]));
        byte[] other = new byte[3000];
        other[2999] = 1;
        bench.insert("/b.img", cardWith("start4.elf", other, "same.dat", new byte[9]));

        CompareView view = new CompareJob(bench.workplace()).run(card("/a.img"), card("/b.img"), Optional.empty());

        assertThat(view.sameConfig()).isTrue();
        assertThat(view.files())
                .containsExactly(
                        new CompareView.OfFile("only-a.txt", Optional.of(7L), Optional.empty()),
                        new CompareView.OfFile("same.dat", Optional.empty(), Optional.of(9L)),
                        new CompareView.OfFile("start4.elf", Optional.of(3000L), Optional.of(3000L)));
    }

    @Test
    void anErrorSaysWhichOfTheTwoItIsAbout() throws Exception {
        bench.insert("/a.img", MemoryWorkplace.card("a=1\n"));
        bench.insert("/empty.img", FatSpec.fat16(5000).build().emptyDisk());
        assertThatThrownBy(() ->
                        new CompareJob(bench.workplace()).run(card("/a.img"), card("/empty.img"), Optional.empty()))
                .isInstanceOf(CardException.class)
                .hasMessageStartingWith("/empty.img: ");
    }

    private static SparseDisk cardWith(String one, byte[] first, String two, byte[] second) throws IOException {
        FatSpec spec = FatSpec.fat16(5000).build();
        SparseDisk disk = spec.emptyDisk();
        new FatBuilder(spec)
                .file("config.txt", new byte[0])
                .file(one, first)
                .file(two, second)
                .writeTo(disk, 0);
        return disk;
    }

    private CompareView compare(String left, String right, String board) throws CardException {
        return new CompareJob(bench.workplace())
                .run(given(left), given(right), board.isEmpty() ? Optional.empty() : Optional.of(board));
    }

    private static CompareSource given(String text) {
        return new CompareSource.OfCard(
                CardRequest.of(Path.of("-")).given(new GivenText(text.getBytes(StandardCharsets.UTF_8))));
    }

    private static CompareSource card(String path) {
        return new CompareSource.OfCard(CardRequest.of(Path.of(path)));
    }

    private static CompareView.Setting setting(String key, String left, String right) {
        return new CompareView.Setting(key, Optional.ofNullable(left), Optional.ofNullable(right));
    }
}
