package bootmend.gui;

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

/** The window reaches core by its upper rooms alone and never holds an open card; its models know no toolkit and no view. */
@AnalyzeClasses(packages = "bootmend.gui", importOptions = ImportOption.DoNotIncludeTests.class)
class WindowArchitectureTest {

    @ArchTest
    static final ArchRule ONE_DOOR = classes()
            .that()
            .resideInAPackage("bootmend.gui..")
            .should()
            .onlyDependOnClassesThat(not(resideInAPackage("bootmend.."))
                    .or(resideInAnyPackage(
                            "bootmend",
                            "bootmend.gui..",
                            "bootmend.workplace",
                            "bootmend.request",
                            "bootmend.view",
                            "bootmend.record",
                            "bootmend.operation",
                            "bootmend.batch",
                            "bootmend.page",
                            "bootmend.finding",
                            "bootmend.trial",
                            "bootmend.fixtures"))
                    .or(type(VisibleText.class))
                    .or(type(PartitionView.class)));

    @ArchTest
    static final ArchRule MODELS_KNOW_NO_TOOLKIT = noClasses()
            .that()
            .resideInAnyPackage("bootmend.gui.model", "bootmend.gui.text")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("javafx..", "atlantafx..", "bootmend.gui.view");

    @ArchTest
    static final ArchRule NO_RULE_IS_RUN_HERE = noClasses()
            .that()
            .resideInAPackage("bootmend.gui..")
            .should()
            .callMethod("bootmend.check.Checker", "check", "bootmend.check.CardContent", "bootmend.finding.Purpose");

    @ArchTest
    static final ArchRule NO_DISK_BUT_BY_JOBS = noClasses()
            .that()
            .resideInAPackage("bootmend.gui..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("de.waldheinz..", "java.nio.channels..");

    @ArchTest
    static final ArchRule ONLY_THE_DEMO_MAKES_CARDS = noClasses()
            .that()
            .doNotHaveSimpleName("DemoBench")
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
            .callMethod(Runtime.class, "exit", int.class)
            .orShould()
            .callMethod(Runtime.class, "halt", int.class);
}
