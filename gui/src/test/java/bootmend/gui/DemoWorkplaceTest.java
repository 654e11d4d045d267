package bootmend.gui;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.record.ProfileJob;
import bootmend.record.ProfileView;
import bootmend.record.TrialAdviseJob;
import bootmend.record.TrialListJob;
import bootmend.record.TrialReport;
import bootmend.trial.Setting;
import bootmend.trial.Standing;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo has something to show on every page, and begins only once. */
class DemoWorkplaceTest {

    @TempDir
    private Path folder;

    @Test
    void theDemoHasTrialsOfEveryKindAndAProfileOfEach() throws CardException, IOException {
        DemoWorkplace demo = DemoWorkplace.in(folder);

        TrialReport report = new TrialAdviseJob(demo.workplace()).run("lab-07", OptionalDouble.empty());
        assertThat(report.trials())
                .extracting(each -> each.trial().standing().kind())
                .containsAll(Arrays.asList(Standing.Kind.values()));
        assertThat(report.advice().setting()).isPresent();
        assertThat(report.advice().best()).contains(Setting.fixed(2000, 4));
        assertThat(report.advice().bestIsKnownGood()).isTrue();
        assertThat(report.notes()).isEmpty();
        assertThat(new ProfileJob(demo.workplace()).list())
                .extracting(ProfileView::name, ProfileView::knownGood)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("cart-3", true),
                        org.assertj.core.groups.Tuple.tuple("weather-mast", false));

        int before = new TrialListJob(demo.workplace())
                .run(Optional.empty())
                .trials()
                .size();
        DemoWorkplace.in(folder);
        assertThat(new TrialListJob(demo.workplace()).run(Optional.empty()).trials())
                .hasSize(before);
    }
}
