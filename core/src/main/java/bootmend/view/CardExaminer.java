package bootmend.view;

import bootmend.CardException;
import bootmend.Sentence;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.BootTables;
import bootmend.boot.Depth;
import bootmend.card.CardListing;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.change.Interruption;
import bootmend.change.OpenChange;
import bootmend.change.UndoStore;
import bootmend.check.CardFiles;
import bootmend.check.ConfigText;
import bootmend.check.ExaminedCard;
import bootmend.fat.BootFiles;
import bootmend.fat.VolumeSpace;
import bootmend.finding.Finding;
import bootmend.finding.Fix;
import bootmend.finding.Place;
import bootmend.finding.Rule;
import bootmend.finding.Severity;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads from an open card what checks are made on. */
public final class CardExaminer {

    private static final Rule IN_PART = Rule.of(
            "read-in-part",
            Rule.always(Severity.BLOCKER),
            Fix.REPAIR,
            "What is read from there may not be all that should be there.");

    private final UndoStore store;
    private final BootTables boot;

    public CardExaminer(Workplace workplace) {
        this.store = workplace.store();
        this.boot = new BootTables(workplace.tables());
    }

    /**
     * The card as it is.
     *
     * @param facts what is known about the board
     * @param depth whether boot files are opened
     */
    public ExaminedCard read(OpenCard card, CardListing listing, BoardFacts facts, Depth depth)
            throws CardException, IOException {
        String name = ShowViews.startFile(card, facts);
        BootFiles volume = card.volume();
        List<ConfigText> config = List.of();
        Optional<String> problem = Optional.empty();
        try {
            config = ConfigFiles.read(volume, name).all().stream()
                    .map(file -> new ConfigText(file.path(), file.document(), file.warnings()))
                    .toList();
        } catch (CardException e) {
            boolean there = volume.find(name).isPresent();
            problem = there ? Optional.of(Sentence.of(e.getMessage())) : Optional.empty();
        }
        Optional<String> interrupted = interrupted(card.waiting(store));
        List<Finding> health = health(card, listing);
        Optional<VolumeSpace> space = space(volume, health);
        ExaminedCard read =
                new ExaminedCard(new CardFiles(listing.entries()), config, problem, space, health, interrupted);
        return card.hasBootPartition() ? read.withBoot(BootDiagnosis.of(card.bootCard(), facts, boot, depth)) : read;
    }

    private static Optional<String> interrupted(Interruption found) {
        if (found instanceof Interruption.Ambiguous) {
            return InterruptedChange.of(found).words().stream().findFirst();
        }
        return found.exact()
                .filter(OpenChange::isBegun)
                .map(RecoveryView::of)
                .map(waiting -> "\"" + waiting.title() + "\", begun " + waiting.began() + ": " + waiting.state() + ".");
    }

    /** Where the FAT cannot be read whole, that is a finding and there is nothing to count. */
    private static Optional<VolumeSpace> space(BootFiles volume, List<Finding> health) {
        try {
            return Optional.of(volume.space());
        } catch (IOException e) {
            health.add(Finding.of(IN_PART, Place.Region.FAT, "The FAT cannot be read whole (" + e.getMessage() + ")."));
            return Optional.empty();
        }
    }

    private static List<Finding> health(OpenCard card, CardListing listing) {
        List<Finding> health = new ArrayList<>();
        health.addAll(card.tableFindings());
        card.volume()
                .warnings()
                .forEach(warning -> health.add(Finding.of(IN_PART, Place.Region.VOLUME, Sentence.of(warning))));
        listing.warnings()
                .forEach((folder, warnings) -> warnings.forEach(
                        warning -> health.add(Finding.of(IN_PART, Place.folder(folder), Sentence.of(warning)))));
        health.addAll(card.fullLook());
        return health;
    }
}
