package bootmend.gui;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The window's models know no toolkit and no view. */
@AnalyzeClasses(packages = "bootmend.gui", importOptions = ImportOption.DoNotIncludeTests.class)
class WindowArchitectureTest {

    @ArchTest
    static final ArchRule MODELS_KNOW_NO_TOOLKIT = noClasses()
            .that()
            .resideInAnyPackage("bootmend.gui.model", "bootmend.gui.text")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("javafx..", "atlantafx..", "bootmend.gui.view");
}
