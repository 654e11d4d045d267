package bootmend.check;

import bootmend.fat.VolumeSpace;
import bootmend.finding.Place;
import bootmend.finding.Severity;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The volume: its room, its health, and changes that were interrupted. */
record VolumeStateCheck() implements Check {

    /** Room under this share of the volume is little; common practice, no source. */
    private static final long LEAST_FREE_PERCENT = 5;

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        card.read()
                .space()
                .filter(VolumeStateCheck::isNearlyFull)
                .ifPresent(space -> remarks.add(Remark.of(
                        "volume-nearly-full",
                        Place.Region.VOLUME,
                        String.format(
                                Locale.ROOT,
                                "%,d bytes are free, %d of %d clusters; under %d %% counts as nearly full.",
                                space.freeBytes(),
                                space.freeClusters(),
                                space.clusters(),
                                LEAST_FREE_PERCENT))));
        card.read()
                .health()
                .forEach(each -> remarks.add(Remark.of(
                        each.severity() == Severity.BLOCKER ? "volume-damaged" : "volume-warning",
                        each.where(),
                        each.words())));
        card.read()
                .interrupted()
                .ifPresent(change -> remarks.add(Remark.of("change-interrupted", Place.Region.VOLUME, change)));
        return remarks;
    }

    private static boolean isNearlyFull(VolumeSpace space) {
        return space.freeClusters() * 100 < space.clusters() * LEAST_FREE_PERCENT;
    }
}
