package bootmend.tuning.resolve;

import static bootmend.tuning.resolve.RuleCase.rule;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Which lines give a key its value. Sources: "File format", config_txt/what_is_config_txt.adoc, commit 57ad5821;
 * blanks, case, trailing comments and order: a Linux distributor's boards documentation, "Edit the boot configuration",
 * section on format; clamp and ranges: "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446.
 */
class LineRulesTest {

    private static final String NINES = "9".repeat(120);

    @ParameterizedTest(name = "{0}")
    @MethodSource({"order", "format", "values", "includes"})
    void rules(RuleCase rule) {
        rule.check();
    }

    static Stream<RuleCase> order() {
        return Stream.of(
                rule("of two lines the later wins")
                        .on("pi4")
                        .reads("arm_freq=1800", "arm_freq=2000")
                        .gives("arm_freq=2000 set 2"),
                rule("a later line for another board does not win")
                        .on("pi4")
                        .reads("arm_freq=1800", "[pi5]", "arm_freq=2600")
                        .gives("arm_freq=1800 set 1"),
                rule("a later line that is commented out does not win")
                        .on("pi4")
                        .reads("arm_freq=1800", "#arm_freq=2000")
                        .gives("arm_freq=1800 set 1"),
                rule("a later line in the wrong case does not win")
                        .on("pi4")
                        .reads("arm_freq=1800", "Arm_Freq=2000")
                        .gives("arm_freq=1800 set 1"),
                rule("values stand in the vocabulary's order")
                        .on("pi4")
                        .reads("temp_limit=80", "over_voltage=2", "arm_freq=1800")
                        .gives("arm_freq=1800 set 3", "over_voltage=2 set 2", "temp_limit=80 set 1"),
                rule("keys that are not for tuning are left out")
                        .on("pi4")
                        .reads("kernel=robots.img", "dtoverlay=disable-bt")
                        .gives());
    }

    static Stream<RuleCase> format() {
        return Stream.of(
                rule("a blank before = makes another key")
                        .on("pi4")
                        .reads("arm_freq =2000")
                        .gives(),
                rule("no source: a blank before the key is skipped")
                        .on("pi4")
                        .reads("  arm_freq=2000")
                        .gives("arm_freq=2000 set 1"),
                rule("line ends of either kind")
                        .on("pi4")
                        .reads("arm_freq=2000\r", "over_voltage=2\r")
                        .gives("arm_freq=2000 set 1", "over_voltage=2 set 2"),
                rule("a key past the 98th character is not seen")
                        .on("pi4")
                        .reads(" ".repeat(98) + "arm_freq=2000")
                        .gives(),
                rule("a value is cut at the 98th character")
                        .on("pi4")
                        .reads(" ".repeat(86) + "arm_freq=2000")
                        .gives("arm_freq=200 set 1"),
                rule("a section past the 98th character is not closed")
                        .on("pi4")
                        .reads("[EDID=" + "L".repeat(98) + "]", "over_voltage=2")
                        .gives("over_voltage=2 depends 2 on" + " what the board makes of [EDID=" + "L".repeat(92)));
    }

    static Stream<RuleCase> values() {
        return Stream.of(
                rule("a hexadecimal value").on("pi4").reads("arm_freq=0x7d0").gives("arm_freq=0x7d0 set 1"),
                rule("a negative step").on("pi4").reads("over_voltage=-16").gives("over_voltage=-16 set 1"),
                rule("temp_limit above 85 is clamped to 85")
                        .on("pi4")
                        .reads("temp_limit=90")
                        .gives("temp_limit=85 set 1"),
                rule("temp_limit of 85 is not").on("pi4").reads("temp_limit=85").gives("temp_limit=85 set 1"),
                rule("no source: a comment behind the value")
                        .on("pi4")
                        .reads("arm_freq=1800 # lab")
                        .gives("arm_freq=1800 # lab depends 1 on what the board makes of"
                                + " arm_freq=1800 # lab, which is no number"),
                rule("no source: a blank behind =")
                        .on("pi4")
                        .reads("arm_freq= 1800")
                        .gives("arm_freq= 1800 depends 1 on what the board makes of"
                                + " arm_freq= 1800, which is no number"),
                rule("no source: no value")
                        .on("pi4")
                        .reads("arm_freq=")
                        .gives("arm_freq= depends 1 on what the board makes of arm_freq=," + " which is no number"),
                rule("no source: a step above the range")
                        .on("pi4")
                        .reads("over_voltage=9")
                        .gives("over_voltage=9 depends 1 on what the board makes of"
                                + " over_voltage=9, which is above the published range"),
                rule("no source: a step below the range")
                        .on("pi4")
                        .reads("over_voltage=-17")
                        .gives("over_voltage=-17 depends 1 on what the board makes of"
                                + " over_voltage=-17, which is below the published range"),
                rule("no source: more digits than the line holds")
                        .on("pi4")
                        .reads("arm_freq=" + NINES)
                        .gives("arm_freq=" + NINES.substring(0, 89) + " depends 1 on what"
                                + " the board makes of arm_freq=" + NINES.substring(0, 89) + ", which is no number"));
    }

    static Stream<RuleCase> includes() {
        return Stream.of(
                rule("an included file stands in the line's place")
                        .on("pi4")
                        .reads("arm_freq=1600", "include robots.txt", "over_voltage=4")
                        .including("robots.txt", "# lab robots", "arm_freq=1800", "over_voltage=2")
                        .gives("arm_freq=1800 set robots.txt:2", "over_voltage=4 set 3"),
                rule("an included file includes another")
                        .on("pi4")
                        .reads("include robots.txt")
                        .including("robots.txt", "include arm.txt", "over_voltage=2")
                        .including("arm.txt", "arm_freq=1800")
                        .gives("arm_freq=1800 set arm.txt:1", "over_voltage=2 set robots.txt:2"),
                rule("an include in another board's section is not read")
                        .on("pi4")
                        .reads("[pi5]", "include robots.txt", "[all]", "over_voltage=2")
                        .including("robots.txt", "[all]", "arm_freq=1800")
                        .gives("over_voltage=2 set 4"),
                rule("an include in this board's section is read")
                        .on("pi4")
                        .reads("[pi4]", "include robots.txt")
                        .including("robots.txt", "arm_freq=1800")
                        .gives("arm_freq=1800 set robots.txt:1"),
                rule("an included file's section holds after it")
                        .on("pi4")
                        .reads("include robots.txt", "over_voltage=2")
                        .including("robots.txt", "arm_freq=1800", "[pi5]")
                        .gives("arm_freq=1800 set robots.txt:1"),
                rule("an include that may count makes its lines depend")
                        .on("pi4")
                        .reads("arm_freq=1600", "[gpio4=0]", "include robots.txt")
                        .including("robots.txt", "[all]", "arm_freq=1800")
                        .gives("arm_freq=1800 depends robots.txt:2 on the level of pin 4"),
                rule("a missing file gives nothing")
                        .on("pi4")
                        .reads("include robots.txt", "arm_freq=1800")
                        .gives("arm_freq=1800 set 2"),
                rule("a file that includes itself ends")
                        .on("pi4")
                        .reads("include robots.txt")
                        .including("robots.txt", "arm_freq=1800", "include robots.txt", "over_voltage=2")
                        .gives("arm_freq=1800 set robots.txt:1", "over_voltage=2 set robots.txt:3"));
    }
}
