package bootmend.check;

import bootmend.config.ReachedLine;
import bootmend.finding.Place;
import bootmend.tuning.resolve.Candidate;

/** Where the lines that a check reads stand. */
final class Places {

    private Places() {}

    static Place of(ReachedLine line) {
        return Place.line(line.file(), line.line().number());
    }

    static Place of(Candidate candidate) {
        return Place.line(candidate.file(), candidate.line());
    }
}
