package bootmend;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/**
 * The arrows between core's packages run downward only: page, then job, then check, profile, trial and change, then config,
 * tuning and fat, then partition, then device; in device, system stands on packed, and both on what has no system. Every package may use the errors in {@code bootmend} itself.
 */
@AnalyzeClasses(
        packages = "bootmend",
        importOptions = {ImportOption.DoNotIncludeTests.class, ImportOption.DoNotIncludeJars.class})
class ArchitectureTest {

    private static final String ROOT = "bootmend";

    private static final String[] ABOVE_CARD = {
        "bootmend.view", "bootmend.record", "bootmend.operation", "bootmend.batch", "bootmend.page", "bootmend.chart"
    };

    /** The rooms that stand on the library's lower floors, from what a computer offers up to pages. */
    private static final String[] DOOR = {
        "bootmend.workplace",
        "bootmend.request",
        "bootmend.card",
        "bootmend.view",
        "bootmend.record",
        "bootmend.operation",
        "bootmend.batch",
        "bootmend.page",
        "bootmend.chart"
    };

    @ArchTest
    static final ArchRule ERRORS_STAND_ALONE = only(ROOT);

    @ArchTest
    static final ArchRule FINDING = only("bootmend.finding", ROOT);

    @ArchTest
    static final ArchRule DEVICE = only("bootmend.device", ROOT);

    @ArchTest
    static final ArchRule PACKED_DEVICES = only("bootmend.device.packed", ROOT, "bootmend.device");

    @ArchTest
    static final ArchRule SYSTEM_DISKS =
            only("bootmend.device.system", ROOT, "bootmend.device", "bootmend.device.packed");

    @ArchTest
    static final ArchRule ONLY_WHO_OPENS_CARDS_KNOWS_THE_SYSTEMS_DISKS = noClasses()
            .that()
            .resideInAnyPackage(
                    "bootmend.partition",
                    "bootmend.fat..",
                    "bootmend.folder",
                    "bootmend.config",
                    "bootmend.change",
                    "bootmend.check",
                    "bootmend.trial..",
                    "bootmend.adaptive",
                    "bootmend.profile")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("bootmend.device.system", "bootmend.device.packed");

    @ArchTest
    static final ArchRule PARTITION = only("bootmend.partition", ROOT, "bootmend.device");

    @ArchTest
    static final ArchRule FAT = only("bootmend.fat", ROOT, "bootmend.partition", "bootmend.device");

    @ArchTest
    static final ArchRule FAT_CHECK =
            only("bootmend.fat.check", ROOT, "bootmend.finding", "bootmend.fat", "bootmend.device");

    @ArchTest
    static final ArchRule FOLDER = only("bootmend.folder", ROOT, "bootmend.fat", "bootmend.device");

    @ArchTest
    static final ArchRule CONFIG = only("bootmend.config", ROOT);

    @ArchTest
    static final ArchRule TUNING = only("bootmend.tuning", ROOT, "bootmend.config");

    @ArchTest
    static final ArchRule EARLIER =
            only("bootmend.earlier", ROOT, "bootmend.config", "bootmend.tuning", "bootmend.fat", "bootmend.device");

    @ArchTest
    static final ArchRule CHANGE = only(
            "bootmend.change",
            ROOT,
            "bootmend.finding",
            "bootmend.config",
            "bootmend.tuning",
            "bootmend.folder",
            "bootmend.fat",
            "bootmend.fat.check",
            "bootmend.partition",
            "bootmend.device");

    @ArchTest
    static final ArchRule EDIT =
            only("bootmend.edit", ROOT, "bootmend.config", "bootmend.tuning", "bootmend.tuning.resolve");

    @ArchTest
    static final ArchRule KEEP =
            only("bootmend.keep", ROOT, "bootmend.folder", "bootmend.fat", "bootmend.partition", "bootmend.device");

    @ArchTest
    static final ArchRule STORE = only("bootmend.store", ROOT);

    @ArchTest
    static final ArchRule ADAPTIVE = only("bootmend.adaptive", ROOT);

    @ArchTest
    static final ArchRule SEARCH = only(
            "bootmend.trial.search", ROOT, "bootmend.config", "bootmend.tuning", "bootmend.trial", "bootmend.adaptive");

    @ArchTest
    static final ArchRule TRIAL =
            only("bootmend.trial", ROOT, "bootmend.config", "bootmend.tuning", "bootmend.store", "bootmend.device");

    @ArchTest
    static final ArchRule PROFILE = only(
            "bootmend.profile",
            ROOT,
            "bootmend.config",
            "bootmend.tuning",
            "bootmend.tuning.resolve",
            "bootmend.store",
            "bootmend.device",
            "bootmend.trial");

    @ArchTest
    static final ArchRule BOOT = only(
            "bootmend.boot",
            ROOT,
            "bootmend.config",
            "bootmend.tuning",
            "bootmend.tuning.resolve",
            "bootmend.fat",
            "bootmend.partition",
            "bootmend.device");

    @ArchTest
    static final ArchRule CHECK = only(
            "bootmend.check",
            ROOT,
            "bootmend.boot",
            "bootmend.finding",
            "bootmend.config",
            "bootmend.tuning",
            "bootmend.tuning.resolve",
            "bootmend.fat");

    @ArchTest
    static final ArchRule WORKPLACE = only(
            "bootmend.workplace",
            ROOT,
            "bootmend.device",
            "bootmend.device.system",
            "bootmend.tuning",
            "bootmend.change",
            "bootmend.profile",
            "bootmend.trial");

    @ArchTest
    static final ArchRule REQUEST = only(
            "bootmend.request",
            ROOT,
            "bootmend.partition",
            "bootmend.config",
            "bootmend.tuning",
            "bootmend.tuning.resolve");

    @ArchTest
    static final ArchRule CARD =
            noClasses().that().resideInAPackage("bootmend.card").should().dependOnClassesThat(inRooms(ABOVE_CARD));

    @ArchTest
    static final ArchRule VIEW = noClasses()
            .that()
            .resideInAPackage("bootmend.view")
            .should()
            .dependOnClassesThat(inRooms("bootmend.record", "bootmend.operation", "bootmend.batch", "bootmend.page"));

    @ArchTest
    static final ArchRule RECORD = noClasses()
            .that()
            .resideInAPackage("bootmend.record")
            .should()
            .dependOnClassesThat(inRooms("bootmend.operation", "bootmend.batch", "bootmend.page"));

    @ArchTest
    static final ArchRule OPERATION = noClasses()
            .that()
            .resideInAPackage("bootmend.operation")
            .should()
            .dependOnClassesThat(inRooms("bootmend.batch", "bootmend.page"));

    @ArchTest
    static final ArchRule BATCH = only(
            "bootmend.batch",
            ROOT,
            "bootmend.finding",
            "bootmend.config",
            "bootmend.device",
            "bootmend.device.system",
            "bootmend.device.packed",
            "bootmend.folder",
            "bootmend.check",
            "bootmend.workplace",
            "bootmend.request",
            "bootmend.card",
            "bootmend.view",
            "bootmend.operation");

    @ArchTest
    static final ArchRule PAGE = only(
            "bootmend.page",
            ROOT,
            "bootmend.finding",
            "bootmend.config",
            "bootmend.earlier",
            "bootmend.boot",
            "bootmend.check",
            "bootmend.card",
            "bootmend.view",
            "bootmend.operation",
            "bootmend.batch");

    @ArchTest
    static final ArchRule CHART = only(
            "bootmend.chart", ROOT, "bootmend.config", "bootmend.trial", "bootmend.trial.search", "bootmend.record");

    @ArchTest
    static final ArchRule NOTHING_BELOW_KNOWS_THE_DOOR = noClasses()
            .that(resideInAPackage("bootmend..").and(not(inRooms(DOOR))))
            .should()
            .dependOnClassesThat(inRooms(DOOR));

    @ArchTest
    static final ArchRule NO_CYCLES =
            slices().matching("bootmend.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule NO_CYCLES_OF_INNER_ROOMS =
            slices().matching("bootmend.(**)").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule NO_SCREEN = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "picocli..", "javafx..", "java.awt..", "javax.swing..", "bootmend.cli..", "bootmend.gui..");

    @ArchTest
    static final ArchRule NO_DEMO_CARDS = noClasses()
            .that()
            .resideOutsideOfPackage("bootmend.fixtures..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("bootmend.fixtures..");

    @ArchTest
    static final ArchRule DEMO_CARDS_STAND_ALONE = classes()
            .that()
            .resideInAPackage("bootmend.fixtures..")
            .should()
            .onlyDependOnClassesThat(not(resideInAPackage("bootmend..")).or(resideInAPackage("bootmend.fixtures..")))
            .allowEmptyShould(true);

    @ArchTest
    static final ArchRule RESOLVE = only("bootmend.tuning.resolve", ROOT, "bootmend.config", "bootmend.tuning");

    @ArchTest
    static final ArchRule NO_STATIC_STATE = fields().that().areStatic().should().beFinal();

    @ArchTest
    static final ArchRule NEVER_ENDS_THE_PROGRAM = noClasses()
            .should()
            .callMethod(System.class, "exit", int.class)
            .orShould()
            .callMethod(Runtime.class, "exit", int.class)
            .orShould()
            .callMethod(Runtime.class, "halt", int.class);

    @ArchTest
    static final ArchRule NO_PRINTING = NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS;

    private static DescribedPredicate<JavaClass> inRooms(String... rooms) {
        return resideInAnyPackage(rooms);
    }

    private static ArchRule only(String from, String... others) {
        String[] known = new String[others.length + 1];
        System.arraycopy(others, 0, known, 0, others.length);
        known[others.length] = from;
        return classes()
                .that()
                .resideInAPackage(from)
                .should()
                .onlyDependOnClassesThat(not(resideInAPackage("bootmend..")).or(resideInAnyPackage(known)));
    }
}
