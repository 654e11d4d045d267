package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LinuxEjectionTest {

    private final List<String> asked = new ArrayList<>();

    @Test
    void takesTheFirstProgramThatDoesIt() {
        assertThat(eject("udisksctl").ejected()).isTrue();
        assertThat(asked)
                .containsExactly("eject /dev/sdx", "udisksctl power-off --no-user-interaction --block-device /dev/sdx");
        asked.clear();
        assertThat(eject("eject").ejected()).isTrue();
        assertThat(asked).hasSize(1);
    }

    @Test
    void saysPlainlyWhatCouldNotBeDone() {
        Ejection none = eject("none");
        assertThat(none.ejected()).isFalse();
        assertThat(none.words()).contains("neither eject nor udisksctl is installed", "can be taken out");

        Ejection failed =
                new LinuxEjection(command -> new Programs.Result(1, "", "device is busy\nmore")).eject("/dev/sdx");
        assertThat(failed.words()).contains("udisksctl said: device is busy)");
    }

    private Ejection eject(String installed) {
        return new LinuxEjection(command -> {
                    asked.add(String.join(" ", command));
                    if (!command.get(0).equals(installed)) {
                        throw new IOException("no such program");
                    }
                    return new Programs.Result(0, "", "");
                })
                .eject("/dev/sdx");
    }
}
