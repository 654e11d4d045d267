package bootmend.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.domains.Domain;

/** The document's first promise: what was read is what is written, and an edit touches nothing else. */
class RoundTripTest {

    @Property(tries = 500)
    void anyBytesComeBackUnchanged(@ForAll byte[] bytes) {
        assertThat(ConfigDocument.parse(bytes).toBytes()).isEqualTo(bytes);
    }

    @Property(tries = 500)
    @Domain(ConfigBytes.class)
    void anyConfigFileComesBackUnchanged(@ForAll byte[] bytes) {
        assertThat(ConfigDocument.parse(bytes).toBytes()).isEqualTo(bytes);
    }

    @Property(tries = 300)
    @Domain(ConfigBytes.class)
    void settingRangesCutTheLineIntoKeyEqualsAndValue(@ForAll byte[] bytes) {
        for (ConfigLine line : ConfigDocument.parse(bytes).lines()) {
            if (line.kind() instanceof LineKind.Setting setting) {
                byte[] content = line.bytes();
                assertThat(setting.valueBytes().to()).isEqualTo(content.length);
                assertThat(content[setting.keyBytes().to()]).isEqualTo((byte) '=');
                assertThat(setting.valueBytes().from())
                        .isEqualTo(setting.keyBytes().to() + 1);
                assertThat(CardText.decode(content, setting.keyBytes()))
                        .isEqualTo(setting.key())
                        .doesNotContain("=");
            }
        }
    }

    @Property(tries = 300)
    @Domain(ConfigBytes.class)
    void commentingOutAddsOneByteAndLeavesEveryOtherLine(@ForAll byte[] bytes, @ForAll("numbers") int pick) {
        ConfigDocument before = ConfigDocument.parse(bytes);
        Assume.that(!before.lines().isEmpty());
        ConfigLine target = before.lines().get(pick % before.lines().size());

        ConfigDocument after = before.commentOut(target.number());

        int added = target.isLive() ? 1 : 0;
        assertThat(after.toBytes()).hasSize(bytes.length + added);
        assertThat(after.lines()).hasSameSizeAs(before.lines());
        assertThat(after.line(target.number()).isLive()).isFalse();
        for (ConfigLine line : before.lines()) {
            if (line != target) {
                assertThat(after.line(line.number()).bytes()).isEqualTo(line.bytes());
                assertThat(after.line(line.number()).end()).isEqualTo(line.end());
            }
        }
        assertThat(after.commentOut(target.number())).isEqualTo(after);
    }

    @Property(tries = 300)
    @Domain(ConfigBytes.class)
    void removingALineTakesOutItsBytesAndItsLineEndAlone(@ForAll byte[] bytes, @ForAll("numbers") int pick) {
        ConfigDocument before = ConfigDocument.parse(bytes);
        Assume.that(!before.lines().isEmpty());
        ConfigLine target = before.lines().get(pick % before.lines().size());
        int start = before.hasByteOrderMark() ? 3 : 0;
        for (ConfigLine line : before.lines().subList(0, target.number() - 1)) {
            start += line.bytes().length + line.end().bytes().length;
        }
        int stop = start + target.bytes().length + target.end().bytes().length;

        byte[] after = before.remove(target.number()).toBytes();

        assertThat(Arrays.copyOf(after, start)).isEqualTo(Arrays.copyOf(bytes, start));
        assertThat(Arrays.copyOfRange(after, start, after.length))
                .isEqualTo(Arrays.copyOfRange(bytes, stop, bytes.length));
    }

    @Property(tries = 300)
    @Domain(ConfigBytes.class)
    void settingAValueThereAndBackGivesTheSameFile(@ForAll byte[] bytes) {
        ConfigDocument before = ConfigDocument.parse(bytes);
        for (ConfigLine line : before.lines()) {
            if (line.kind() instanceof LineKind.Setting setting && !line.isPastLimit() && isPlainAscii(line.bytes())) {
                ConfigDocument changed = before.setValue(line.number(), "1234");
                assertThat(changed.lines()).hasSameSizeAs(before.lines());
                assertThat(((LineKind.Setting) changed.line(line.number()).kind()).value())
                        .isEqualTo("1234");
                assertThat(changed.setValue(line.number(), setting.value())).isEqualTo(before);
            }
        }
    }

    @Example
    void theEmptyFileHasNoLines() {
        assertThat(ConfigDocument.parse(new byte[0]).lines()).isEmpty();
    }

    @Provide
    Arbitrary<Integer> numbers() {
        return Arbitraries.integers().between(0, 1000);
    }

    private static boolean isPlainAscii(byte[] bytes) {
        for (byte b : bytes) {
            if (b < ' ' && b != '\t' || b == 0x7f) {
                return false;
            }
        }
        return true;
    }
}
