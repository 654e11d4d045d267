package bootmend.request;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Words about a board that make no sense are told what would. */
class RequestedBoardTest {

    private final RequestedBoard reader = new RequestedBoard(TuningTables.load());

    @Test
    void anUnknownBoardIsToldTheKnownOnes() {
        CardException error = refused(BoardRequest.of("pi9"));

        assertThat(error).hasMessage("bootmend knows no board pi9");
        assertThat(error.remedy()).contains("pi4").contains("cm3+");
    }

    @Test
    void aRevisionOfAnotherBoardIsRefused() {
        CardException error = refused(new BoardRequest(
                Optional.of("pi3"),
                Optional.of("c03111"),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                List.of()));

        assertThat(error.remedy())
                .isEqualTo("Revision code c03111 is a pi4, not a pi3; give only one of the two, or correct it.");
    }

    @Test
    void aRevisionOfAnUnknownBoardNeedsTheBoardToo() throws CardException {
        BoardRequest alone = new BoardRequest(
                Optional.empty(),
                Optional.of("c03ff1"),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                List.of());

        assertThat(refused(alone).steps()).containsExactly(NextStep.Plain.GIVE_BOARD);
        BoardFacts facts = reader.facts(new BoardRequest(
                Optional.of("pi4"),
                alone.revision(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                List.of()));
        assertThat(facts.board()).map(board -> board.id()).contains("pi4");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "xyz", "c03111c03111"})
    void whatIsNoRevisionCodeIsRefused(String code) {
        assertThat(refused(new BoardRequest(
                                Optional.empty(),
                                Optional.of(code),
                                Optional.empty(),
                                List.of(),
                                Optional.empty(),
                                Optional.empty(),
                                List.of()))
                        .remedy())
                .contains("c03111");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "0x", "robot", "12345678123456781"})
    void whatIsNoSerialNumberIsRefused(String serial) {
        assertThat(refused(new BoardRequest(
                                Optional.of("pi4"),
                                Optional.empty(),
                                Optional.of(serial),
                                List.of(),
                                Optional.empty(),
                                Optional.empty(),
                                List.of()))
                        .remedy())
                .contains("hexadecimal");
    }

    @ParameterizedTest
    @ValueSource(strings = {"4", "4=2", "256=1", "=1", "4=", "-1=1"})
    void whatIsNoLevelOfAPinIsRefused(String pin) {
        assertThat(refused(new BoardRequest(
                                Optional.of("pi4"),
                                Optional.empty(),
                                Optional.empty(),
                                List.of(pin),
                                Optional.empty(),
                                Optional.empty(),
                                List.of()))
                        .remedy())
                .contains("4=1");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "partition",
                "robot=1",
                "partition=",
                "partition=0x1ffffffff",
                "partition=4294967296",
                "cust_otp8=1"
            })
    void whatIsNoBootVariableIsRefused(String variable) {
        assertThat(refused(new BoardRequest(
                                Optional.of("pi4"),
                                Optional.empty(),
                                Optional.empty(),
                                List.of(),
                                Optional.empty(),
                                Optional.empty(),
                                List.of(variable)))
                        .remedy())
                .contains("boot_count");
    }

    @ParameterizedTest
    @CsvSource({
        "partition=2, partition, 2",
        "cust_otp7=0xffffffff, cust_otp7, 4294967295",
        "boot_arg1=0X10, boot_arg1, 16"
    })
    void bootVariablesAreDecimalOrHexadecimal(String text, String name, long value) throws CardException {
        assertThat(reader.facts(new BoardRequest(
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                List.of(),
                                Optional.empty(),
                                Optional.empty(),
                                List.of(text)))
                        .bootVariables())
                .containsEntry(name, value);
    }

    private CardException refused(BoardRequest request) {
        CardException error = catchThrowableOfType(CardException.class, () -> reader.facts(request));
        assertThat(error.kind()).isEqualTo(CardException.Kind.USAGE);
        return error;
    }
}
