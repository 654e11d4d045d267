package bootmend.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import bootmend.CardException;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Revision codes against the examples of "Revision codes", revision-codes.adoc, commit 0456a78c. */
class BoardJobTest {

    private final BoardJob job = new BoardJob(Workplace.ofThisComputer(Path.of("nowhere")));

    // Chip numbers other than BCM2711 are from memory.
    @ParameterizedTest
    @CsvSource({
        "c03111, pi4, 0x11, 1.1, BCM2711, 4096", "a02082, pi3, 0x08, 1.2, BCM2837, 1024",
        "d03114, pi4, 0x11, 1.4, BCM2711, 8192", "902120, pi02, 0x12, 1.0, BCM2837, 512",
    })
    void aNewStyleCode(String code, String board, String type, String revision, String chip, int memory)
            throws CardException {
        RevisionView view = job.run(code);

        assertThat(view.style()).isEqualTo("new");
        assertThat(view.board()).contains(board);
        assertThat(view.type()).contains(type);
        assertThat(view.revision()).isEqualTo(revision);
        assertThat(view.chip()).contains(chip);
        assertThat(view.memoryMegabytes()).hasValue(memory);
        assertThat(view.warrantyVoid()).isFalse();
        assertThat(view.barred()).isEmpty();
        assertThat(view.sources().get(0)).contains("Revision codes").contains("0456a78c");
    }

    @Test
    void theWarrantyBit() throws CardException {
        assertThat(job.run("2a02082").warrantyVoid()).isTrue();
        assertThat(job.run("2a02082").warranty()).isEqualTo("set: the warranty is void");
        assertThat(job.run("c03111").warranty()).isEqualTo("never set on this board");
    }

    @Test
    void whatACodeBars() throws CardException {
        assertThat(job.run("80c03111").barred()).containsExactly("over-voltage barred");
    }

    @Test
    void anUnknownBoardIsDecodedAsFarAsItGoes() throws CardException {
        RevisionView view = job.run("c03ff1");

        assertThat(view.board()).isEmpty();
        assertThat(view.type()).contains("0xff");
        assertThat(view.memoryMegabytes()).hasValue(4096);
    }

    // Value from memory.
    @Test
    void anOldStyleCode() throws CardException {
        RevisionView view = job.run("000e");

        assertThat(view.style()).isEqualTo("old");
        assertThat(view.board()).contains("pi1");
        assertThat(view.memoryMegabytes()).hasValue(512);
        assertThat(view.sources()).singleElement().asString().contains("from memory");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "robot", "c03111c03", "0016", "1000d"})
    void whatIsNoKnownCodeIsRefused(String code) {
        CardException error = catchThrowableOfType(CardException.class, () -> job.run(code));

        assertThat(error.kind()).isEqualTo(CardException.Kind.USAGE);
        assertThat(error.remedy()).contains("c03111");
    }
}
