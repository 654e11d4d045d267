package bootmend.job;

import bootmend.CardException;
import bootmend.check.CardContent;
import bootmend.check.CardContents;
import bootmend.check.Checker;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fat.FileSample;
import bootmend.fat.FileSampler;
import bootmend.tuning.Board;
import bootmend.tuning.Boards;
import bootmend.tuning.resolve.BoardFacts;
import java.io.IOException;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Checks a card for a purpose and writes nothing. */
public final class CheckJob {

    private final Workplace workplace;

    public CheckJob(Workplace workplace) {
        this.workplace = workplace;
    }

    public CheckView run(CheckRequest request) throws CardException {
        BoardFacts facts = facts(request);
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
        CardContent unsampled = new CardContents(workplace.tables()).of(new CardReads(workplace.store()).read(card, listing), facts);
        CardContent content = unsampled.withSamples(samples(card.volume(), listing, unsampled));
        return new CheckView(new CardViews(workplace).of(card), request.purpose(), content.boardIds(),
                facts.board().isPresent(),
                new Checker(workplace.tables()).check(content, request.purpose()),
                workplace.instant().truncatedTo(ChronoUnit.SECONDS));
    }

    private BoardFacts facts(CheckRequest request) throws CardException {
        Boards boards = workplace.tables().boards();
        BoardFacts facts = BoardFacts.none();
        if (request.board().isPresent()) {
            facts = BoardFacts.of(boards.find(request.board().get()).orElseThrow(() -> CardException.usage(
                    "there is no board \"" + request.board().get() + "\"",
                    "Boards are " + boards.all().stream().map(Board::id).collect(Collectors.joining(", ")) + ".")));
        }
        if (request.revision().isEmpty()) {
            return facts;
        }
        try {
            BoardFacts known = facts.withRevision(workplace.tables().revisions().decode(request.revision().get()));
            if (known.board().isEmpty()) {
                throw CardException.usage("revision code " + request.revision().get() + " is no known board's",
                        "Give the board with --board.");
            }
            return known;
        } catch (IllegalArgumentException e) {
            throw CardException.usage("the revision code does not fit", e.getMessage());
        }
    }

    private static Map<String, FileSample> samples(FatVolume volume, CardListing listing, CardContent content) {
        FileSampler sampler = new FileSampler(volume);
        Map<String, FileSample> samples = new HashMap<>();
        for (String path : content.wantedSamples()) {
            DirectoryEntry entry = listing.entry(path);
            samples.put(path, sample(sampler, entry));
        }
        return samples;
    }

    private static FileSample sample(FileSampler sampler, DirectoryEntry entry) {
        try {
            return sampler.sample(entry);
        } catch (IOException e) {
            return new FileSample(entry.size(), new byte[0], List.of(), List.of(e.getMessage()));
        }
    }
}
