package bootmend.batch;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.StepNames;
import bootmend.device.CardName;
import bootmend.device.system.AttachedDisk;
import bootmend.request.CardRequest;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** A script of what is attached at each look, as letters; capitals are built in, digits are loop devices. */
class StationTest {

    private final List<String> worked = new ArrayList<>();
    private final List<StationTurn> turns = new ArrayList<>();

    @Test
    void eachCardThatIsPutInHasItsTurnOnce() {
        run("", "", "a", "a", "a", "a", "", "", "", "a", "a", "ab", "ab", "ab", "ab");

        assertThat(worked).containsExactly("/dev/a", "/dev/a", "/dev/b");
        assertThat(turns).extracting(StationTurn::number).containsExactly(1, 2, 3);
    }

    @Test
    void whatWasThereAtTheStartIsLeftAloneUntilItWasAway() {
        run("ab", "ab", "ab", "b", "ab", "ab", "ab");
        assertThat(worked)
                .as("a list that comes out short is no card taken out")
                .isEmpty();

        run("ab", "ab", "b", "b", "b", "ab", "ab");
        assertThat(worked).containsExactly("/dev/a");
    }

    @Test
    void aListThatComesOutEmptyOnceOrTwiceStartsNothing() {
        run("ab", "", "", "ab", "ab", "", "ab", "ab");

        assertThat(worked).isEmpty();
    }

    @Test
    void namedDevicesAreTakenFromTheStart() {
        run(Set.of(Path.of("/dev/1")), "a1", "a1", "a1", "a1");

        assertThat(worked).containsExactly("/dev/1");
    }

    @Test
    void builtInDisksAndLoopDevicesAreNotPutIn() {
        run("", "A1", "A1", "A1", "A1");

        assertThat(worked).isEmpty();
    }

    @Test
    void aCardThatIsPulledEarlyEndsItsOwnTurnAlone() {
        run("", "x", "x", "", "y", "y", "y");

        assertThat(turns)
                .extracting(StationTurn::outcome)
                .containsExactly(StationTurn.Outcome.FAILED, StationTurn.Outcome.FAILED);
        assertThat(turns.get(0).words()).startsWith("The card was taken out too early: gone in the middle. Put");
        assertThat(turns.get(1).words()).startsWith("Not done: something unforeseen");
    }

    private void run(String... script) {
        run(Set.of(), script);
    }

    /** {@code script} has the list at the start, then one for each time it is asked for. */
    private void run(Set<Path> named, String... script) {
        int[] at = {0};
        Station station = new Station(
                () -> disks(script[Math.min(at[0]++, script.length - 1)]), this::work, named, new StepNames());
        station.run(() -> at[0] < script.length, turns::add);
    }

    private StationWork.Result work(CardRequest card) throws CardException {
        worked.add(card.card().toString());
        if (card.card().endsWith("x")) {
            throw CardException.interrupted("gone in the middle", "Put it back in.", null);
        }
        if (card.card().endsWith("y")) {
            throw new IllegalStateException("a fault");
        }
        return new StationWork.Result(StationTurn.Outcome.DONE, "Done.");
    }

    private static List<AttachedDisk> disks(String letters) {
        return Arrays.stream(letters.split(""))
                .filter(letter -> !letter.isEmpty())
                .map(letter -> new AttachedDisk(
                        new CardName.FileName(Path.of("/dev", letter)),
                        1 << 30,
                        "",
                        Character.isDigit(letter.charAt(0)) ? "loop" : "usb",
                        !Character.isUpperCase(letter.charAt(0)),
                        false,
                        Optional.empty(),
                        List.of(),
                        List.of()))
                .toList();
    }
}
