package bootmend.job;

import bootmend.CardException;
import bootmend.check.CardContent;
import bootmend.check.CardContents;
import bootmend.check.CardRead;
import bootmend.check.Checker;
import bootmend.check.FileText;
import bootmend.fat.BootFiles;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileSample;
import bootmend.tuning.resolve.BoardFacts;
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
        } catch (CardException e) {
            throw e;
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    private CheckView check(OpenCard card, CheckRequest request, BoardFacts facts) throws IOException {
        CardListing listing = CardListing.of(card.volume());
        String config = ShowViews.startFile(card, facts);
        CardRead read = new CardReads(workplace.store()).read(card, listing, config);
        CardContent unsampled = new CardContents(workplace.tables()).of(read, facts);
        CardContent content = unsampled
                .withSamples(samples(card.volume(), listing, unsampled))
                .withTexts(texts(card.volume(), listing, unsampled));
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

    /** Small files that are read for what they hold; what cannot be read is told about as damage elsewhere. */
    private static Map<String, FileText> texts(BootFiles volume, CardListing listing, CardContent content) {
        Map<String, FileText> texts = new HashMap<>();
        for (String path : content.wantedTexts()) {
            DirectoryEntry entry = listing.entry(path);
            try {
                byte[] bytes = volume.read(entry, FileText.MOST_BYTES).bytes();
                texts.put(path, new FileText(bytes, bytes.length >= entry.size()));
            } catch (IOException e) {
                texts.put(path, new FileText(new byte[0], false));
            }
        }
        return texts;
    }

    private static FileSample sample(BootFiles volume, DirectoryEntry entry) {
        try {
            return volume.sample(entry);
        } catch (IOException e) {
            return new FileSample(entry.size(), new byte[0], List.of(), List.of(e.getMessage()));
        }
    }
}
