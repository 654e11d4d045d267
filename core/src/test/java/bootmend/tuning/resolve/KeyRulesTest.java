package bootmend.tuning.resolve;

import static bootmend.tuning.resolve.RuleCase.board;
import static bootmend.tuning.resolve.RuleCase.code;
import static bootmend.tuning.resolve.RuleCase.rule;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Keys that set others, and keys that a board ignores. Source: "Overclocking options", config_txt/overclocking.adoc,
 * commit 6e5f9446. Revision codes: c03111 is pi4 revision 1.1, d03114 is pi4 revision 1.4 ("Revision codes",
 * revision-codes.adoc, commit 0456a78c).
 */
class KeyRulesTest {

    @ParameterizedTest(name = "{0}")
    @MethodSource({"graphicsClocks", "memoryVoltages", "boost", "ignored", "unclear"})
    void rules(RuleCase rule) {
        rule.check();
    }

    static Stream<RuleCase> graphicsClocks() {
        return Stream.of(
                rule("gpu_freq sets five clocks on pi4")
                        .on("pi4")
                        .reads("gpu_freq=550")
                        .gives(
                                "core_freq=550 set 1 from gpu_freq",
                                "h264_freq=550 set 1 from gpu_freq",
                                "isp_freq=550 set 1 from gpu_freq",
                                "v3d_freq=550 set 1 from gpu_freq",
                                "hevc_freq=550 set 1 from gpu_freq"),
                rule("gpu_freq sets four on pi3, which has no HEVC block")
                        .on("pi3")
                        .reads("gpu_freq=450")
                        .gives(
                                "core_freq=450 set 1 from gpu_freq", "h264_freq=450 set 1 from gpu_freq",
                                "isp_freq=450 set 1 from gpu_freq", "v3d_freq=450 set 1 from gpu_freq"),
                rule("a single key after gpu_freq overrides it")
                        .on("pi3")
                        .reads("gpu_freq=450", "v3d_freq=420")
                        .gives(
                                "core_freq=450 set 1 from gpu_freq", "h264_freq=450 set 1 from gpu_freq",
                                "isp_freq=450 set 1 from gpu_freq", "v3d_freq=420 set 2"),
                rule("a single key before gpu_freq overrides it too")
                        .on("pi3")
                        .reads("v3d_freq=420", "gpu_freq=450")
                        .gives(
                                "core_freq=450 set 2 from gpu_freq",
                                "h264_freq=450 set 2 from gpu_freq",
                                "isp_freq=450 set 2 from gpu_freq",
                                "v3d_freq=420 set 1"),
                rule("of two gpu_freq the later wins")
                        .on("pi2")
                        .reads("gpu_freq=260", "gpu_freq=270")
                        .gives(
                                "core_freq=270 set 2 from gpu_freq", "h264_freq=270 set 2 from gpu_freq",
                                "isp_freq=270 set 2 from gpu_freq", "v3d_freq=270 set 2 from gpu_freq"),
                rule("a single key that may count leaves gpu_freq as the other possibility")
                        .on("pi2")
                        .reads("gpu_freq=270", "[gpio4=1]", "core_freq=300")
                        .gives(
                                "core_freq=300 depends 3 on the level of pin 4", "h264_freq=270 set 1 from gpu_freq",
                                "isp_freq=270 set 1 from gpu_freq", "v3d_freq=270 set 1 from gpu_freq"),
                rule("gpu_freq_min sets nothing else")
                        .on("pi4")
                        .reads("gpu_freq_min=300")
                        .gives("gpu_freq_min=300 set 1"));
    }

    static Stream<RuleCase> memoryVoltages() {
        return Stream.of(
                rule("over_voltage_sdram sets three voltages")
                        .on("pi3")
                        .reads("over_voltage_sdram=2")
                        .gives(
                                "over_voltage_sdram_c=2 set 1 from over_voltage_sdram",
                                "over_voltage_sdram_i=2 set 1 from over_voltage_sdram",
                                "over_voltage_sdram_p=2 set 1 from over_voltage_sdram"),
                rule("a single memory voltage overrides it")
                        .on("pi1")
                        .reads("over_voltage_sdram_p=4", "over_voltage_sdram=2")
                        .gives(
                                "over_voltage_sdram_c=2 set 2 from over_voltage_sdram",
                                "over_voltage_sdram_i=2 set 2 from over_voltage_sdram",
                                "over_voltage_sdram_p=4 set 1"),
                rule("over_voltage_sdram is ignored as a whole on pi4")
                        .on("pi4")
                        .reads("over_voltage_sdram=2")
                        .gives("over_voltage_sdram=2 ignored 1"));
    }

    static Stream<RuleCase> boost() {
        return Stream.of(
                rule("arm_boost raises arm_freq on pi4 revision 1.4")
                        .on(code("d03114"))
                        .reads("arm_boost=1")
                        .gives("arm_freq=1800 set 1 from arm_boost", "arm_boost=1 set 1"),
                rule("a line with arm_freq goes before arm_boost")
                        .on(code("d03114"))
                        .reads("arm_freq=1600", "arm_boost=1")
                        .gives("arm_freq=1600 set 1", "arm_boost=1 set 2"),
                rule("arm_boost=0 leaves arm_freq at stock")
                        .on(code("d03114"))
                        .reads("arm_boost=0")
                        .gives("arm_boost=0 set 1"),
                rule("a later arm_boost=0 takes the boost back")
                        .on(code("d03114"))
                        .reads("arm_boost=1", "arm_boost=0")
                        .gives("arm_boost=0 set 2"),
                rule("pi4 revision 1.1 ignores arm_boost")
                        .on(code("c03111"))
                        .reads("arm_boost=1")
                        .gives("arm_boost=1 ignored 1"),
                rule("without a revision arm_boost depends on it")
                        .on("pi4")
                        .reads("arm_boost=1")
                        .gives(
                                "arm_freq=1800 depends 1 from arm_boost on the board's revision",
                                "arm_boost=1 depends 1 on the board's revision"),
                rule("an arm_boost that may count makes arm_freq depend")
                        .on(code("d03114"))
                        .reads("[tryboot]", "arm_boost=1")
                        .gives(
                                "arm_freq=1800 depends 2 from arm_boost on whether the board starts with its try-once"
                                        + " flag",
                                "arm_boost=1 depends 2 on whether the board starts with its try-once flag"),
                // "Common options", config_txt/common.adoc, commits 18beaa99 and 9038eea7: later pi4 revisions and
                // pi400 only.
                rule("pi400 reads arm_boost").on("pi400").reads("arm_boost=1").gives("arm_boost=1 set 1"),
                rule("cm4 ignores arm_boost").on("cm4").reads("arm_boost=1").gives("arm_boost=1 ignored 1"),
                rule("pi5 ignores arm_boost").on("pi5").reads("arm_boost=1").gives("arm_boost=1 ignored 1"),
                rule("pi3 ignores arm_boost").on("pi3").reads("arm_boost=1").gives("arm_boost=1 ignored 1"));
    }

    static Stream<RuleCase> ignored() {
        return Stream.of(
                rule("pi4 and later ignore sdram_freq: pi4")
                        .on("pi4")
                        .reads("sdram_freq=3200")
                        .gives("sdram_freq=3200 ignored 1"),
                rule("pi4 and later ignore sdram_freq: pi5")
                        .on("pi5")
                        .reads("sdram_freq=4267")
                        .gives("sdram_freq=4267 ignored 1"),
                rule("pi3 reads sdram_freq").on("pi3").reads("sdram_freq=500").gives("sdram_freq=500 set 1"),
                rule("temp_soft_limit is for pi3+")
                        .on("pi3+")
                        .reads("temp_soft_limit=70")
                        .gives("temp_soft_limit=70 set 1"),
                rule("temp_soft_limit is ignored off pi3+")
                        .on("pi4")
                        .reads("temp_soft_limit=70")
                        .gives("temp_soft_limit=70 ignored 1"),
                rule("over_voltage_min is ignored on pi4")
                        .on("pi4")
                        .reads("over_voltage_min=2")
                        .gives("over_voltage_min=2 ignored 1"),
                rule("over_voltage_delta is read on pi5")
                        .on("pi5")
                        .reads("over_voltage_delta=50000")
                        .gives("over_voltage_delta=50000 set 1"),
                rule("over_voltage_delta is ignored on pi3")
                        .on("pi3")
                        .reads("over_voltage_delta=50000")
                        .gives("over_voltage_delta=50000 ignored 1"),
                rule("h264_freq does nothing on pi5")
                        .on("pi5")
                        .reads("h264_freq=900")
                        .gives("h264_freq=900 ignored 1"),
                rule("hevc_freq does nothing on pi2")
                        .on("pi2")
                        .reads("hevc_freq=300")
                        .gives("hevc_freq=300 ignored 1"),
                rule("of several ignored lines the last is told")
                        .on("pi4")
                        .reads("sdram_freq=3000", "sdram_freq=3200")
                        .gives("sdram_freq=3200 ignored 2"),
                rule("a line that is not for this board is not told as ignored")
                        .on("pi4")
                        .reads("[pi3]", "sdram_freq=500")
                        .gives(),
                rule("without a board a key for some boards depends")
                        .on(BoardFacts.none())
                        .reads("temp_soft_limit=70")
                        .gives("temp_soft_limit=70 depends 1 on which board it is"));
    }

    static Stream<RuleCase> unclear() {
        return Stream.of(
                rule("the published tables differ on hevc_freq on pi5")
                        .on(board("pi5"))
                        .reads("hevc_freq=950")
                        .gives("hevc_freq=950 depends 1 on whether pi5 reads hevc_freq, which"
                                + " the published sources do not settle"),
                rule("gpu_freq on pi5 sets three clocks for sure")
                        .on(board("pi5"))
                        .reads("gpu_freq=950")
                        .gives(
                                "core_freq=950 set 1 from gpu_freq",
                                "isp_freq=950 set 1 from gpu_freq",
                                "v3d_freq=950 set 1 from gpu_freq",
                                "hevc_freq=950 depends 1 from gpu_freq on whether pi5 reads"
                                        + " hevc_freq, which the published sources do not settle"));
    }
}
