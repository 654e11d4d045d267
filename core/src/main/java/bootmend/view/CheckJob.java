package bootmend.view;

import bootmend.CardException;
import bootmend.card.CardListing;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.check.CardContent;
import bootmend.check.CardContents;
import bootmend.check.CardRead;
import bootmend.check.Checker;
import bootmend.fat.BootFiles;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileSample;
import bootmend.request.RequestedBoard;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

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
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    private CheckView check(OpenCard card, CheckRequest request, BoardFacts facts) throws CardException, IOException {
        CardListing listing = CardListing.of(card.volume());
        CardRead read = new CardReads(workplace.store()).read(card, listing);
        CardContent unsampled = new CardContents(workplace.tables()).of(read, facts);
        CardContent content = unsampled.withSamples(samples(card.volume(), listing, unsampled));
        return new CheckView(
                new CardViews(workplace).of(card),
                request.purpose(),
                content.boardIds(),
                facts.board().isPresent(),
                new Checker(workplace.tables()).check(content, request.purpose()),
                workplace.instant().truncatedTo(ChronoUnit.SECONDS));
    }

    private static Map<String, FileSample> samples(BootFiles volume, CardListing listing, CardContent content) {
        Map<String, FileSample> samples = new HashMap<>();
        // In the order in which they lie on the card: a packed image is unpacked forward.
        List<String> inPlace = content.wantedSamples().stream()
                .sorted(Comparator.comparingLong(
                        (String path) -> listing.entry(path).firstCluster()))
                .toList();
        for (String path : inPlace) {
            samples.put(path, sample(volume, listing.entry(path)));
        }
        return samples;
    }

    private static FileSample sample(BootFiles volume, DirectoryEntry entry) {
        try {
            return volume.sample(entry);
        } catch (IOException e) {
            return new FileSample(entry.size(), new byte[0], List.of(), List.of(e.getMessage()));
        }
    }
}
