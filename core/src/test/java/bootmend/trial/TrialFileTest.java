package bootmend.trial;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.store.YamlFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.StringLength;

/** Trial files hold any text, and any bytes in their place are an error, never a crash. */
class TrialFileTest {

    @Property(tries = 300)
    void anyTextComesBack(
            @ForAll @StringLength(min = 1, max = 60) String label, @ForAll @StringLength(max = 200) String notes)
            throws CardException, IOException {
        Assume.that(encodes(label)
                && encodes(notes)
                && !label.isBlank()
                && label.chars().noneMatch(Character::isISOControl));
        Trial trial = new Trial(
                "x",
                Instant.EPOCH,
                new Unit("pi4", label),
                Map.of("arm_freq", 2000L),
                Outcome.HOLDS,
                new Run(OptionalDouble.of(1), true, OptionalDouble.empty(), OptionalDouble.empty(), OptionalLong.of(1)),
                Map.of("s", 1.5),
                Surroundings.UNKNOWN,
                notes);

        assertThat(read(TrialFile.write(trial))).isEqualTo(trial);
    }

    @Property(tries = 400)
    void aDamagedFileIsAnErrorOrStillATrial(
            @ForAll @IntRange(max = 400) int at, @ForAll byte value, @ForAll @IntRange(max = 20) int cut)
            throws IOException {
        byte[] bytes =
                TrialFile.write(LabTrials.at(2000, 4).score("one core", 310).trial(1));
        byte[] damaged = Arrays.copyOf(bytes, bytes.length - cut);
        damaged[at % damaged.length] = value;

        try {
            assertThat(read(damaged).unit().board()).isNotEmpty();
        } catch (CardException e) {
            assertThat(e).hasMessageContaining(", line ");
        }
    }

    private static Trial read(byte[] bytes) throws CardException, IOException {
        Path file = Files.createTempFile("trial", ".yaml");
        try {
            return new TrialFile(LabTrials.TABLES).read("x", YamlFile.read(Files.write(file, bytes)));
        } finally {
            Files.delete(file);
        }
    }

    private static boolean encodes(String text) {
        return StandardCharsets.UTF_8.newEncoder().canEncode(text);
    }
}
