package bootmend.check;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.finding.Finding;
import bootmend.finding.Purpose;
import bootmend.finding.Rule;
import bootmend.finding.Severity;
import bootmend.fixtures.SampleBootFiles;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** How findings are put together: for which boards, in what order, how many. */
class CheckerTest {

    private static final TestCard STOCK = TestCard.stock();

    @ParameterizedTest
    @EnumSource(Purpose.class)
    void aStockCardHasNoBlockerOnAnyBoardItBoots(Purpose purpose) {
        List<Finding> findings = STOCK.onItsBoards().check(purpose);
        assertThat(STOCK.onItsBoards().content().boardIds())
                .hasSize(TestCard.TABLES.boards().all().size());
        assertThat(findings)
                .extracting(Finding::severity)
                .containsOnly(purpose == Purpose.SHIP ? new Severity[0] : new Severity[] {Severity.NOTE});
    }

    /** Lines of the image build's config file ("build of the maker's system image", stage 1, commit 314262cb; from memory). */
    @ParameterizedTest
    @EnumSource(Purpose.class)
    void anUntouchedCardOfTheMakerHasNeitherBlockerNorWarning(Purpose purpose) {
        TestCard card = STOCK.onItsBoards()
                .config(
                        "dtparam=audio=on",
                        "disable_overscan=1",
                        "arm_64bit=1",
                        "arm_boost=1",
                        "[cm4]",
                        "otg_mode=1",
                        "[all]",
                        "enable_uart=1")
                .with("meta-data", "instance_id: lab-image\n")
                .with("user-data", "#cloud-config\n#users:\n#- name: lab\n#  passwd: x\n")
                .with("network-config", "#network:\n#  wifis:\n#    wlan0:\n#      password: x\n")
                .with("issue.txt", "lab image\n");
        assertThat(card.check(purpose)).extracting(Finding::severity).isSubsetOf(Severity.NOTE);
        for (String board : card.content().boardIds()) {
            assertThat(card.on(board).check(purpose))
                    .as(board)
                    .extracting(Finding::severity)
                    .isSubsetOf(Severity.NOTE);
        }
    }

    /** Warranty bit: tracked before pi4, never set on pi4 ("Revision codes", commit 0456a78c), else not published. */
    @Test
    void aFindingNamesTheBoardsItHoldsFor() {
        List<Finding> findings =
                STOCK.onItsBoards().config("force_turbo=1", "over_voltage=2").check(Purpose.SHIP);
        assertThat(boards(findings, "warranty-bit"))
                .containsExactly("pi0", "pi0w", "pi02", "cm0", "pi1", "cm1", "pi2", "pi3", "pi3+", "cm3", "cm3+");
        assertThat(boards(findings, "warranty-bit-not-published"))
                .containsExactly("pi400", "cm4", "cm4s", "pi5", "pi500", "cm5");
        assertThat(boards(findings, "tuning-line-active")).isEmpty();
    }

    @Test
    void boardsThatTheCardIsMeantForAreAskedAboutThoughAFileIsMissing() {
        assertThat(STOCK.onItsBoards().without("start4.elf").content().boardIds())
                .contains("pi4", "cm4", "pi3", "pi5");
        assertThat(STOCK.onItsBoards().without("start4.elf").check(Purpose.SHIP))
                .singleElement()
                .satisfies(finding -> {
                    assertThat(finding.id()).isEqualTo("firmware-missing");
                    assertThat(finding.boards()).containsExactly("pi4", "pi400", "cm4", "cm4s");
                });
    }

    @Test
    void whereNothingTellsABoardTheConfigFileIsCheckedForAll() {
        TestCard card = STOCK.onItsBoards().config("force_turbo=1", "over_voltage=2");
        for (String path : STOCK.files().keySet()) {
            card = path.matches("(start|fixup|kernel|bcm|bootcode).*") ? card.without(path) : card;
        }
        List<Finding> findings = card.check(Purpose.SHIP);
        assertThat(findings)
                .extracting(Finding::id)
                .contains("boots-no-board", "warranty-bit")
                .doesNotContain("kernel-missing");
    }

    @Test
    void anIncludeThatACommentOffersNeedNotBeThere() {
        assertThat(STOCK.config("# Put lines of your own", "# into usercfg.txt.", "include usercfg.txt")
                        .check(Purpose.SHIP))
                .isEmpty();
        assertThat(STOCK.config("# Lines of the lab", "", "include usercfg.txt").check(Purpose.SHIP))
                .extracting(Finding::id)
                .containsExactly("include-missing");
    }

    @Test
    void theHeaviestComesFirst() {
        List<Finding> findings = STOCK.config("arm_freq=2000", "[pi3]", "gpu_mem=64")
                .with("tryboot.txt", "")
                .check(Purpose.SHIP);
        assertThat(findings).extracting(Finding::severity).isSorted().contains(Severity.values());
    }

    @Test
    void aPurposeThatARuleDoesNotMatterForHearsNothingOfIt() {
        assertThat(STOCK.config("over_voltage=2").check(Purpose.SHIP))
                .extracting(Finding::id)
                .doesNotContain("practice-lowest-voltage", "practice-stability-run");
    }

    @Test
    void tuningLinesWeighLessForAStabilityRun() {
        TestCard card = STOCK.config("arm_freq=1800");
        assertThat(severity(card, Purpose.SHIP)).isEqualTo(Severity.BLOCKER);
        assertThat(severity(card, Purpose.FIRMWARE_UPDATE)).isEqualTo(Severity.BLOCKER);
        assertThat(severity(card, Purpose.STABILITY_RUN)).isEqualTo(Severity.NOTE);
    }

    @Test
    void aHostileFileGivesABoundedNumberOfFindings() {
        String[] lines =
                IntStream.range(0, 5000).mapToObj(i -> "arm_freq=" + i + " #").toArray(String[]::new);
        List<Finding> findings = STOCK.onItsBoards().config(lines).check(Purpose.SHIP);
        assertThat(findings).hasSizeLessThan(8 * Checker.MOST_OF_A_RULE);
        assertThat(findings)
                .filteredOn(finding -> finding.id().equals("trailing-comment"))
                .hasSize(Checker.MOST_OF_A_RULE)
                .last()
                .satisfies(last -> assertThat(last.what()).contains("4975 more like this"));
    }

    @Test
    void valuesThatOnlyMayHoldAreWarnedAboutWithWhatTheyDependOn() {
        List<Finding> findings = STOCK.on("pi3")
                .config("over_voltage=2", "[gpio4=1]", "force_turbo=1")
                .check(Purpose.SHIP);
        assertThat(findings)
                .filteredOn(finding -> finding.id().equals("warranty-bit"))
                .singleElement()
                .satisfies(finding -> assertThat(finding.what()).contains("depends on the level of pin 4"));
    }

    /** S7, overlays: shared unless README stands behind both prefixes (value from memory). */
    @Test
    void anOsPrefixHasItsOwnKernelAndMayHaveItsOwnOverlays() {
        TestCard card = STOCK.config("os_prefix=term2/", "dtoverlay=wheel-encoder-gpio")
                .with("term2/kernel8.img", SampleBootFiles.named("kernel8.img", 9000))
                .with("term2/bcm2711-rpi-4-b.dtb", SampleBootFiles.named("bcm2711-rpi-4-b.dtb", 9000))
                .with("term2/cmdline.txt", "root=/dev/mmcblk0p2");
        assertThat(card.check(Purpose.SHIP)).isEmpty();
        assertThat(card.without("term2/cmdline.txt").check(Purpose.SHIP))
                .extracting(Finding::id)
                .containsExactly("cmdline-missing");
        assertThat(card.with("term2/overlays/README", "").check(Purpose.SHIP))
                .singleElement()
                .satisfies(finding -> assertThat(finding.what()).contains("term2/overlays/wheel-encoder-gpio.dtbo"));
        assertThat(card.with("term2/kernel8.img", new byte[9000]).check(Purpose.SHIP))
                .singleElement()
                .satisfies(finding -> assertThat(finding.where().words()).isEqualTo("term2/kernel8.img"));
    }

    @Test
    void namesAreFoundWhateverTheirCase() {
        assertThat(STOCK.without("kernel8.img")
                        .with("KERNEL8.IMG", SampleBootFiles.gzippedKernel(9000))
                        .check(Purpose.SHIP))
                .isEmpty();
    }

    @Test
    void textsInTheFindingAreThoseOfTheRule() {
        Finding finding = STOCK.config("temp_limit=90").check(Purpose.SHIP).stream()
                .filter(each -> each.id().equals("temp-limit-above-85"))
                .findFirst()
                .orElseThrow();
        Rule rule = RuleBook.load(TestCard.TABLES.sources())
                .find("temp-limit-above-85")
                .orElseThrow();
        assertThat(Arrays.asList(
                        finding.rule().meaning(),
                        finding.rule().remedy(),
                        finding.rule().source()))
                .containsExactly(rule.meaning(), rule.remedy(), rule.source());
        assertThat(finding.rule().source())
                .isEqualTo("\"Overclocking options\", config_txt/overclocking.adoc, commit 6e5f9446");
    }

    private static Severity severity(TestCard card, Purpose purpose) {
        return card.check(purpose).stream()
                .filter(finding -> finding.id().equals("tuning-line-active"))
                .findFirst()
                .orElseThrow()
                .severity();
    }

    private static List<String> boards(List<Finding> findings, String rule) {
        return findings.stream()
                .filter(finding -> finding.id().equals(rule))
                .findFirst()
                .orElseThrow()
                .boards();
    }
}
