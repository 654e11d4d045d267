package bootmend.cli;

import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The rooms of the commands use each other one way only. */
@AnalyzeClasses(packages = "bootmend.cli", importOptions = ImportOption.DoNotIncludeTests.class)
class RoomsTest {

    @ArchTest
    static final ArchRule NO_CYCLES =
            slices().matching("bootmend.cli.(*)..").should().beFreeOfCycles();
}
