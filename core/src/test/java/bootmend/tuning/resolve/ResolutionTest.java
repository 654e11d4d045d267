package bootmend.tuning.resolve;

import static bootmend.tuning.resolve.RuleCase.board;
import static bootmend.tuning.resolve.RuleCase.rule;
import static org.assertj.core.api.Assertions.assertThat;

import bootmend.config.IncludeProblem;
import bootmend.config.Truth;
import org.junit.jupiter.api.Test;

/** What a resolution tells beside the effective values; the rules themselves are in the rule tests. */
class ResolutionTest {

    @Test
    void linesThatCannotCountAnyMoreAreShadowed() {
        Effective effective = resolve("arm_freq=1600", "[tryboot]", "arm_freq=1700", "[all]", "arm_freq=1800")
                .tuning("arm_freq")
                .orElseThrow();

        assertThat(effective.shadowed()).extracting(Candidate::line).containsExactly(3, 1);
        assertThat(effective.otherwise()).isEmpty();
    }

    @Test
    void aValueThatDependsNamesWhatElseItMayBe() {
        Effective effective = resolve(
                        "arm_freq=1500", "arm_freq=1600", "[tryboot]", "arm_freq=1700", "[gpio4=1]", "arm_freq=1800")
                .tuning("arm_freq")
                .orElseThrow();

        assertThat(effective.chosen().value()).isEqualTo("1800");
        assertThat(effective.otherwise()).extracting(Candidate::value).containsExactly("1700", "1600");
        assertThat(effective.shadowed()).extracting(Candidate::value).containsExactly("1500");
        assertThat(effective.mayBeStock()).isFalse();
    }

    @Test
    void withoutASureLineStockIsPossibleToo() {
        assertThat(resolve("[tryboot]", "arm_freq=1700")
                        .tuning("arm_freq")
                        .orElseThrow()
                        .mayBeStock())
                .isTrue();
        assertThat(resolve("arm_freq=1700").tuning("arm_freq").orElseThrow().mayBeStock())
                .isFalse();
    }

    @Test
    void anIgnoredKeySaysWhy() {
        assertThat(resolve("sdram_freq=3200").tuning("sdram_freq").orElseThrow().reason())
                .isEqualTo("pi4 does not read sdram_freq (published for: before the pi4 family)");
        assertThat(rule("").on("pi5")
                        .reads("h264_freq=900")
                        .resolve()
                        .tuning("h264_freq")
                        .orElseThrow()
                        .reason())
                .contains("pi5")
                .contains("h264_freq")
                .contains("does nothing");
    }

    @Test
    void aClampedValueKeepsWhatWasWritten() {
        Effective effective = resolve("temp_limit=90").tuning("temp_limit").orElseThrow();

        assertThat(effective.value()).isEqualTo("85");
        assertThat(effective.chosen().written()).isEqualTo("90");
    }

    @Test
    void everyTuningLineHasItsPart() {
        Resolution resolution = resolve(
                "arm_freq=1600",
                "arm_freq=1800",
                "sdram_freq=3200",
                "[pi5]",
                "arm_freq=2500",
                "[none]",
                "over_voltage=8",
                "[all]",
                "[tryboot]",
                "over_voltage=2",
                "[all]",
                "gpu_freq=500",
                "core_freq=550",
                "kernel=lab.img");

        assertThat(resolution.lines())
                .extracting(LineOutcome::effect)
                .containsExactly(
                        LineEffect.OVERRIDDEN,
                        LineEffect.IN_FORCE,
                        LineEffect.IGNORED,
                        LineEffect.OTHER_BOARD,
                        LineEffect.NEVER_APPLIES,
                        LineEffect.DEPENDS,
                        LineEffect.IN_FORCE,
                        LineEffect.IN_FORCE);
        assertThat(resolution.lines())
                .extracting(line -> line.source().line().number())
                .containsExactly(1, 2, 3, 5, 7, 10, 12, 13);
    }

    @Test
    void aGroupKeyWhoseEveryPartIsReplacedIsOverridden() {
        Resolution resolution = rule("").on("pi3")
                .reads("gpu_freq=450", "core_freq=400", "h264_freq=400", "isp_freq=400", "v3d_freq=400")
                .resolve();

        assertThat(resolution.lines().get(0).effect()).isEqualTo(LineEffect.OVERRIDDEN);
    }

    @Test
    void severalIgnoredLinesAreAllIgnored() {
        assertThat(resolve("sdram_freq=3000", "sdram_freq=3200").lines())
                .extracting(LineOutcome::effect)
                .containsExactly(LineEffect.IGNORED, LineEffect.IGNORED);
    }

    @Test
    void anUnsureLineWithTheSameValueDepends() {
        assertThat(resolve("arm_freq=1800", "[tryboot]", "arm_freq=1800").lines())
                .extracting(LineOutcome::effect)
                .containsExactly(LineEffect.IN_FORCE, LineEffect.DEPENDS);
    }

    @Test
    void otherKeysAreResolvedByTheLastLineToo() {
        Resolution resolution = resolve("kernel=lab.img", "[pi5]", "kernel=other.img", "[pi4]", "kernel=robots.img");

        assertThat(resolution.setting("kernel").map(Effective::value)).contains("robots.img");
        assertThat(resolution.setting("os_prefix")).isEmpty();
    }

    @Test
    void keysThatAddUpAreListedLineByLine() {
        Resolution resolution =
                resolve("dtoverlay=lab-arm", "[pi5]", "dtoverlay=lab-leg", "[tryboot]", "[pi4]", "dtoverlay=lab-eye");

        assertThat(resolution.assignments("dtoverlay"))
                .extracting(Candidate::value)
                .containsExactly("lab-arm", "lab-eye");
        assertThat(resolution.assignments("dtoverlay"))
                .extracting(each -> each.condition().truth())
                .containsExactly(Truth.TRUE, Truth.UNKNOWN);
    }

    @Test
    void includesThatCouldNotBeFollowedAreHandedOn() {
        assertThat(resolve("include robots.txt").reading().problems())
                .extracting(IncludeProblem::name)
                .containsExactly("robots.txt");
    }

    private static Resolution resolve(String... lines) {
        return rule("").on(board("pi4")).reads(lines).resolve();
    }
}
