package bootmend.view;

import bootmend.CardException;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.Depth;
import bootmend.card.CardListing;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.check.CardContent;
import bootmend.check.CardContents;
import bootmend.check.Checker;
import bootmend.check.ExaminedCard;
import bootmend.check.FileText;
import bootmend.fat.BootFiles;
import bootmend.fat.DirectoryEntry;
import bootmend.request.RequestedBoard;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.time.temporal.ChronoUnit;
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
        ExaminedCard read = new CardExaminer(workplace).read(card, listing, facts, Depth.CONTENTS);
        CardContent content = content(card, listing, read, facts);
        return new CheckView(
                new CardViews(workplace).of(card),
                request.purpose(),
                content.boardIds(),
                facts.board().isPresent(),
                new Checker(workplace.tables()).check(content, request.purpose()),
                read.boot().map(BootDiagnosis::versions).orElse(List.of()),
                workplace.instant().truncatedTo(ChronoUnit.SECONDS));
    }

    private CardContent content(OpenCard card, CardListing listing, ExaminedCard read, BoardFacts facts) {
        CardContent content = new CardContents(workplace.tables()).of(read, facts);
        if (!card.hasBootPartition() && facts.board().isEmpty()) {
            content = content.withoutBoardTold();
        }
        return content.withTexts(texts(card.volume(), listing, content));
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
}
