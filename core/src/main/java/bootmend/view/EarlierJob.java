package bootmend.view;

import bootmend.CardException;
import bootmend.card.CardEarlier;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.card.PartitionView;
import bootmend.config.ConfigDocument;
import bootmend.earlier.EarlierVersion;
import bootmend.earlier.EarlierVersions;
import bootmend.earlier.PresentFile;
import bootmend.earlier.SearchProgress;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.request.RequestedBoard;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Looks for earlier versions of a card's config file and says what is known of each; writes nothing. */
public final class EarlierJob {

    private final Workplace workplace;

    public EarlierJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /**
     * Searches the card.
     *
     * @param about the board whose trials and profiles are asked; where none is named, those of all that the card can be for
     * @param progress told how far the search through free clusters came; it may stop it
     */
    public EarlierView run(CardRequest request, BoardRequest about, SearchProgress progress) throws CardException {
        BoardFacts facts = new RequestedBoard(workplace.tables()).facts(about);
        try (OpenCard card = OpenCard.open(workplace.opener(), request, false)) {
            CardEarlier earlier = new CardEarlier(workplace);
            Optional<PresentFile> now = earlier.present(card);
            EarlierVersions found = earlier.of(card, progress);
            return view(card, facts, now, found);
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    private EarlierView view(OpenCard card, BoardFacts facts, Optional<PresentFile> now, EarlierVersions found)
            throws CardException, IOException {
        HeldSettings held = HeldSettings.of(workplace, card, facts);
        SettingLines lines = new SettingLines(workplace.tables().vocabulary());
        ConfigDocument present =
                ConfigDocument.parse(now.map(PresentFile::bytes).orElse(new byte[0]));
        List<EarlierVersionView> versions = new ArrayList<>();
        boolean passed = false;
        for (EarlierVersion version : found.newestFirst()) {
            boolean before = !passed && !version.newer();
            passed |= before;
            ConfigDocument document = ConfigDocument.parse(version.text());
            versions.add(new EarlierVersionView(
                    versions.size() + 1,
                    version,
                    before,
                    lines.settings(document),
                    lines.changes(document, present),
                    lines.others(document, present),
                    held.of(document)));
        }
        PartitionView partition = card.partition();
        return new EarlierView(
                card.named(),
                now.map(file -> new EarlierView.Present(file.bytes(), lines.settings(present), held.of(present))),
                versions,
                held.knownGoodProfiles(),
                found.complete(),
                found.searched(),
                found.dropped(),
                partition.isMounted());
    }
}
