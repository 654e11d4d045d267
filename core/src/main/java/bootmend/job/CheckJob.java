package bootmend.job;

import bootmend.CardException;
import bootmend.change.OpenChange;
import bootmend.check.CardContent;
import bootmend.check.CardContents;
import bootmend.check.CardFiles;
import bootmend.check.CardRead;
import bootmend.check.Checker;
import bootmend.check.ConfigText;
import bootmend.check.HealthRemark;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fat.FileSample;
import bootmend.fat.FileSampler;
import bootmend.fat.VolumeSpace;
import bootmend.tuning.resolve.BoardFacts;
import java.io.IOException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Checks a card for a purpose and writes nothing. */
public final class CheckJob {

    private final Workplace workplace;

    public CheckJob(Workplace workplace) {
        this.workplace = workplace;
    }

    public CheckView run(CheckRequest request) throws CardException {
        BoardFacts facts = new RequestedBoard(workplace.tables()).facts(request.board());
        try (OpenCard card = OpenCard.open(workplace.opener(), request.card(), false)) {
            return check(card, request, facts);
        } catch (CardException e) {
            throw e;
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    private CheckView check(OpenCard card, CheckRequest request, BoardFacts facts) throws IOException {
        CardListing listing = CardListing.of(card.volume());
        CardContent unsampled = new CardContents(workplace.tables()).of(read(card, listing), facts);
        CardContent content = unsampled.withSamples(samples(card.volume(), listing, unsampled));
        return new CheckView(new CardViews(workplace).of(card), request.purpose(), content.boardIds(),
                facts.board().isPresent(),
                new Checker(workplace.tables()).check(content, request.purpose()), workplace.instant().truncatedTo(ChronoUnit.SECONDS));
    }

    private CardRead read(OpenCard card, CardListing listing) throws IOException {
        FatVolume volume = card.volume();
        List<ConfigText> config = List.of();
        Optional<String> problem = Optional.empty();
        try {
            config = ConfigFiles.read(volume).all().stream()
                    .map(file -> new ConfigText(file.path(), file.document(), file.doubts())).toList();
        } catch (CardException e) {
            boolean there = volume.find(ConfigFiles.NAME).isPresent();
            problem = there ? Optional.of(sentence(e.getMessage())) : Optional.empty();
        }
        Optional<String> cutShort = card.recovery(workplace.store()).find()
                .filter(change -> change.extent() == OpenChange.Extent.PART
                        || change.extent() == OpenChange.Extent.ALL)
                .map(RecoverJob::view)
                .map(waiting -> "\"" + waiting.title() + "\", begun " + waiting.began() + ": " + waiting.state() + ".");
        return new CardRead(new CardFiles(listing.entries()), config, problem, space(volume),
                health(card, listing), cutShort);
    }

    /** On an image that ends within its FAT there is nothing to count. */
    private static Optional<VolumeSpace> space(FatVolume volume) {
        try {
            return Optional.of(VolumeSpace.of(volume));
        } catch (IOException cutOff) {
            return Optional.empty();
        }
    }

    private static List<HealthRemark> health(OpenCard card, CardListing listing) throws IOException {
        List<HealthRemark> health = new ArrayList<>();
        card.table().doubts().forEach(doubt -> health.add(HealthRemark.doubt("partition table", sentence(doubt))));
        card.volume().doubts().forEach(doubt -> health.add(new HealthRemark(true, "volume", sentence(doubt))));
        listing.doubts().forEach((folder, doubts) -> doubts.forEach(doubt ->
                health.add(new HealthRemark(true, folder, sentence(doubt)))));
        return health;
    }

    private static Map<String, FileSample> samples(FatVolume volume, CardListing listing, CardContent content)
            throws IOException {
        FileSampler sampler = new FileSampler(volume);
        Map<String, FileSample> samples = new HashMap<>();
        for (String path : content.wantedSamples()) {
            DirectoryEntry entry = listing.entry(path);
            samples.put(path, sampler.sample(entry));
        }
        return samples;
    }

    private static String sentence(String clause) {
        String text = clause.isEmpty() ? clause : Character.toUpperCase(clause.charAt(0)) + clause.substring(1);
        return text.endsWith(".") ? text : text + ".";
    }
}
