package bootmend.tuning.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What is kept of a long config file is counted. */
class ManyLinesTest {

    private static final int LINES = 1_000;

    /** {@code gpu_freq} sets five keys; a file's largest size lets it have some 80,000 such lines. */
    @Test
    void aLineThatSetsSeveralKeysIsKeptOnce() {
        String[] lines = Collections.nCopies(LINES, "gpu_freq=500").toArray(String[]::new);

        Resolution resolution =
                RuleCase.rule("many lines").on("pi4").reads(lines).resolve();

        Set<Candidate> kept = Collections.newSetFromMap(new IdentityHashMap<>());
        List<Candidate> all = new ArrayList<>();
        for (Effective each : resolution.effective()) {
            all.add(each.chosen());
            all.addAll(each.otherwise());
            all.addAll(each.shadowed());
        }
        kept.addAll(all);
        assertThat(all).hasSizeGreaterThan(3 * LINES);
        assertThat(kept).hasSize(LINES);
    }
}
