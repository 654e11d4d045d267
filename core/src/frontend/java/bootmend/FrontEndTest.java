package bootmend;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.type;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import bootmend.card.PartitionView;
import bootmend.config.VisibleText;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/**
 * The commands and the window reach core by its upper rooms alone and never hold an open card, and say and print with
 * {@code bootmend.page} and {@code bootmend.chart}; of other packages they see only values that jobs hand out. It is
 * compiled and run in the module of each.
 */
@AnalyzeClasses(
        packages = {"bootmend.cli", "bootmend.gui"},
        importOptions = ImportOption.DoNotIncludeTests.class)
class FrontEndTest {

    @ArchTest
    static final ArchRule ONE_DOOR = classes()
            .should()
            .onlyDependOnClassesThat(not(resideInAPackage("bootmend.."))
                    .or(resideInAnyPackage(
                            "bootmend",
                            "bootmend.cli..",
                            "bootmend.gui..",
                            "bootmend.workplace",
                            "bootmend.request",
                            "bootmend.view",
                            "bootmend.record",
                            "bootmend.operation",
                            "bootmend.batch",
                            "bootmend.page",
                            "bootmend.boot",
                            "bootmend.chart",
                            "bootmend.check",
                            "bootmend.earlier",
                            "bootmend.finding",
                            "bootmend.trial",
                            "bootmend.trial.search",
                            "bootmend.fixtures"))
                    .or(type(VisibleText.class))
                    .or(type(PartitionView.class)));

    @ArchTest
    static final ArchRule NO_RULE_IS_RUN_HERE = noClasses()
            .should()
            .callMethod("bootmend.check.Checker", "check", "bootmend.check.CardContent", "bootmend.finding.Purpose");

    @ArchTest
    static final ArchRule NO_DISK_BUT_BY_JOBS =
            noClasses().should().dependOnClassesThat().resideInAnyPackage("de.waldheinz..", "java.nio.channels..");

    @ArchTest
    static final ArchRule ONLY_THE_DEMO_MAKES_CARDS = noClasses()
            .that()
            .doNotHaveSimpleName("DemoCommand")
            .and()
            .doNotHaveSimpleName("DemoWorkplace")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("bootmend.fixtures..");

    @ArchTest
    static final ArchRule NO_STATIC_STATE = fields().that().areStatic().should().beFinal();

    @ArchTest
    static final ArchRule ONLY_MAIN_ENDS_THE_PROGRAM = noClasses()
            .that()
            .doNotHaveSimpleName("Main")
            .should()
            .callMethod(System.class, "exit", int.class)
            .orShould()
            .callMethod(Runtime.class, "exit", int.class);

    /** While a shutdown hook waits, nothing else can end the program with a code of its own. */
    @ArchTest
    static final ArchRule ONLY_A_STOPPED_BATCH_HALTS =
            noClasses().that().doNotHaveSimpleName("BatchStop").should().callMethod(Runtime.class, "halt", int.class);
}
