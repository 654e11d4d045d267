package bootmend.tuning.resolve;

import static bootmend.tuning.resolve.RuleCase.board;
import static bootmend.tuning.resolve.RuleCase.code;
import static bootmend.tuning.resolve.RuleCase.rule;

import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Which sections a board reads. Source: "Conditional filters", config_txt/conditional.adoc, commits 23cc7a36 and
 * 3e67d54c; type numbers: "Revision codes", revision-codes.adoc, commit 0456a78c.
 */
class SectionRulesTest {

    private static final String TRY_ONCE = "whether the board starts with its try-once flag";

    @ParameterizedTest(name = "{0}")
    @MethodSource({"models", "boardTypes", "serials", "pins", "otherFacts", "combined", "unclear"})
    void rules(RuleCase rule) {
        rule.check();
    }

    static Stream<RuleCase> models() {
        return Stream.of(
                rule("without a section a line is for every board")
                        .on("pi3")
                        .reads("arm_freq=1300")
                        .gives("arm_freq=1300 set 1"),
                rule("a model's section is read by that model")
                        .on("pi4")
                        .reads("[pi4]", "arm_freq=1800")
                        .gives("arm_freq=1800 set 2"),
                rule("a model's section is not read by another model")
                        .on("pi5")
                        .reads("[pi4]", "arm_freq=1800")
                        .gives(),
                rule("a section holds until another changes it")
                        .on("pi4")
                        .reads("[pi3]", "arm_freq=1300", "over_voltage=2", "[pi4]", "arm_freq=1800")
                        .gives("arm_freq=1800 set 5"),
                rule("cm4 reads the section of pi4 too")
                        .on("cm4")
                        .reads("[pi4]", "arm_freq=1600", "[cm4]", "over_voltage=1")
                        .gives("arm_freq=1600 set 2", "over_voltage=1 set 4"),
                rule("pi4 does not read the section of cm4")
                        .on("pi4")
                        .reads("[cm4]", "arm_freq=1600")
                        .gives(),
                rule("pi400 reads the section of pi4 too")
                        .on("pi400")
                        .reads("[pi4]", "over_voltage=1")
                        .gives("over_voltage=1 set 2"),
                rule("pi3+ reads the section of pi3 too")
                        .on("pi3+")
                        .reads("[pi3]", "over_voltage=1")
                        .gives("over_voltage=1 set 2"),
                rule("pi3 does not read the section of pi3+")
                        .on("pi3")
                        .reads("[pi3+]", "over_voltage=1")
                        .gives(),
                rule("pi02 reads the sections of pi0w and pi0 too")
                        .on("pi02")
                        .reads("[pi0w]", "arm_freq=1100", "[pi0]", "over_voltage=1")
                        .gives("arm_freq=1100 set 2", "over_voltage=1 set 4"),
                rule("pi500 reads the section of pi5 too")
                        .on("pi500")
                        .reads("[pi5]", "arm_freq=2600")
                        .gives("arm_freq=2600 set 2"),
                rule("a line under [all] is for every board")
                        .on("pi5")
                        .reads("[pi4]", "arm_freq=1800", "[all]", "over_voltage=1")
                        .gives("over_voltage=1 set 4"),
                rule("a line under [none] is for no board")
                        .on("pi4")
                        .reads("[none]", "arm_freq=1800", "[all]")
                        .gives(),
                rule("which board it is may not be known")
                        .on(BoardFacts.none())
                        .reads("[pi4]", "arm_freq=1800")
                        .gives("arm_freq=1800 depends 2 on which board it is"));
    }

    static Stream<RuleCase> boardTypes() {
        return Stream.of(
                rule("a board type is told by the revision code")
                        .on(code("c03111"))
                        .reads("[board-type=0x11]", "arm_freq=1800")
                        .gives("arm_freq=1800 set 2"),
                rule("a board with one type number needs no revision code")
                        .on("pi4")
                        .reads("[board-type=0x11]", "arm_freq=1800", "[board-type=0x14]", "over_voltage=1")
                        .gives("arm_freq=1800 set 2"),
                rule("a board with several type numbers does")
                        .on("cm5")
                        .reads("[board-type=0x1a]", "arm_freq=2500")
                        .gives("arm_freq=2500 depends 2 on the board's type number"));
    }

    static Stream<RuleCase> serials() {
        return Stream.of(
                rule("a serial number is told by its last eight digits")
                        .on(board("pi4").withSerial(0x10000000abcd1234L))
                        .reads("[0xABCD1234]", "arm_freq=1800")
                        .gives("arm_freq=1800 set 2"),
                rule("a section for another serial number is not read")
                        .on(board("pi4").withSerial(0xabcd1235L))
                        .reads("[0xabcd1234]", "arm_freq=1800")
                        .gives(),
                rule("a serial number may not be known")
                        .on("pi4")
                        .reads("[0xabcd1234]", "arm_freq=1800")
                        .gives("arm_freq=1800 depends 2 on the board's serial number"));
    }

    static Stream<RuleCase> pins() {
        return Stream.of(
                rule("a pin that is as the section says")
                        .on(board("pi4").withPin(4, true))
                        .reads("[gpio4=1]", "arm_freq=2000", "[gpio4=0]", "arm_freq=1500")
                        .gives("arm_freq=2000 set 2"),
                rule("a pin that is not")
                        .on(board("pi4").withPin(4, false))
                        .reads("[gpio4=1]", "arm_freq=2000", "[gpio4=0]", "arm_freq=1500")
                        .gives("arm_freq=1500 set 4"),
                rule("a pin's level may not be known")
                        .on(board("pi4").withPin(5, true))
                        .reads("arm_freq=1600", "[gpio4=1]", "arm_freq=2000")
                        .gives("arm_freq=2000 depends 3 on the level of pin 4"),
                rule("a sure line after an unsure one decides")
                        .on("pi4")
                        .reads("[gpio4=1]", "arm_freq=2000", "[all]", "arm_freq=1600")
                        .gives("arm_freq=1600 set 4"),
                rule("an unsure line with the same value changes nothing")
                        .on("pi4")
                        .reads("arm_freq=2000", "[gpio4=1]", "arm_freq=0x7D0")
                        .gives("arm_freq=2000 set 1"));
    }

    static Stream<RuleCase> otherFacts() {
        return Stream.of(
                rule("a monitor that is attached")
                        .on(board("pi4").withMonitors(Set.of("LAB-WALL")))
                        .reads("[EDID=LAB-WALL]", "core_freq=550")
                        .gives("core_freq=550 set 2"),
                rule("no monitor is attached")
                        .on(board("pi4").withMonitors(Set.of()))
                        .reads("[EDID=LAB-WALL]", "core_freq=550")
                        .gives(),
                rule("monitors may not be known")
                        .on("pi4")
                        .reads("[EDID=LAB-WALL]", "core_freq=550")
                        .gives("core_freq=550 depends 2 on whether monitor LAB-WALL is attached"),
                rule("a display port is never known")
                        .on("pi4")
                        .reads("[HDMI:1]", "core_freq=550")
                        .gives("core_freq=550 depends 2 on display port 1"),
                rule("the try-once flag may not be known")
                        .on("pi4")
                        .reads("[tryboot]", "arm_freq=2000")
                        .gives("arm_freq=2000 depends 2 on " + TRY_ONCE),
                rule("an ordinary start does not read [tryboot]")
                        .on(board("pi4").withTryboot(false))
                        .reads("[tryboot]", "arm_freq=2000")
                        .gives(),
                rule("a boot variable that is equal")
                        .on(board("pi5").withBootVariable("partition", 2))
                        .reads("[partition=2]", "arm_freq=2500", "[partition=3]", "arm_freq=2600")
                        .gives("arm_freq=2500 set 2"),
                rule("a masked boot variable that is not zero")
                        .on(board("pi5").withBootVariable("boot_arg1", 0x42))
                        .reads("[boot_arg1&0x40]", "arm_freq=2500", "[boot_arg1&0x30]", "arm_freq=2600")
                        .gives("arm_freq=2500 set 2"),
                rule("a masked boot variable that is equal")
                        .on(board("pi5").withBootVariable("cust_otp0", 0x2A))
                        .reads("[cust_otp0&0xF0=0x20]", "arm_freq=2500")
                        .gives("arm_freq=2500 set 2"),
                rule("a boot variable that is less and not greater")
                        .on(board("pi5").withBootVariable("boot_count", 3))
                        .reads("[boot_count<4]", "arm_freq=2500", "[boot_count>3]", "arm_freq=2600")
                        .gives("arm_freq=2500 set 2"),
                rule("a boot variable may not be known")
                        .on("pi5")
                        .reads("[boot_count>3]", "arm_freq=2400")
                        .gives("arm_freq=2400 depends 2 on boot variable boot_count"));
    }

    static Stream<RuleCase> combined() {
        return Stream.of(
                rule("filters of one type replace each other")
                        .on("pi4")
                        .reads("[pi3]", "[pi4]", "arm_freq=1800")
                        .gives("arm_freq=1800 set 3"),
                rule("filters of different types hold together")
                        .on(board("pi4").withTryboot(false))
                        .reads("[pi4]", "[tryboot]", "arm_freq=1800")
                        .gives(),
                rule("one that fails decides whatever the other")
                        .on("pi4")
                        .reads("[tryboot]", "[pi3]", "arm_freq=1300")
                        .gives(),
                rule("two that are not known are both named")
                        .on("pi4")
                        .reads("[gpio4=1]", "[tryboot]", "arm_freq=1800")
                        .gives("arm_freq=1800 depends 3 on the level of pin 4; " + TRY_ONCE),
                rule("a model replaces a model behind another type")
                        .on(board("pi4").withTryboot(true))
                        .reads("[pi3]", "[tryboot]", "[pi4]", "arm_freq=1800")
                        .gives("arm_freq=1800 set 4"),
                rule("[all] clears filters of every type")
                        .on("pi4")
                        .reads("[pi3]", "[tryboot]", "[gpio4=1]", "[all]", "arm_freq=1800")
                        .gives("arm_freq=1800 set 5"));
    }

    /** What the source does not tell is said to depend on it. */
    static Stream<RuleCase> unclear() {
        return Stream.of(
                rule("no source: a model after [none]")
                        .on("pi4")
                        .reads("[none]", "[pi4]", "arm_freq=1800")
                        .gives("arm_freq=1800 depends 3 on whether [none]"
                                + " still holds under the later filter, no source tells"),
                rule("no source: a type after another board's model")
                        .on("pi4")
                        .reads("[pi3]", "[board-type=0x11]", "arm_freq=1800")
                        .gives("arm_freq=1800 depends 3 on whether [pi3] still holds under the later filter,"
                                + " no source tells"),
                rule("a type after its own model")
                        .on("pi4")
                        .reads("[pi4]", "[board-type=0x11]", "arm_freq=1800")
                        .gives("arm_freq=1800 set 3"),
                rule("no source: a section in the wrong case")
                        .on("pi4")
                        .reads("[Pi4]", "arm_freq=1800")
                        .gives("arm_freq=1800 depends 2 on what the board makes of [Pi4]"),
                rule("no source: a section that is not closed")
                        .on("pi4")
                        .reads("[pi4", "arm_freq=1800")
                        .gives("arm_freq=1800 depends 2 on what the board makes of [pi4"),
                rule("no source: text behind a section")
                        .on("pi4")
                        .reads("[pi4] # lab", "arm_freq=1800")
                        .gives("arm_freq=1800 depends 2 on what the board makes of [pi4] # lab"));
    }
}
