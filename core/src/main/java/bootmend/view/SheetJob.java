package bootmend.view;

import bootmend.CardException;
import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.config.ConfigLine;
import bootmend.config.ConfigName;
import bootmend.config.LineKind;
import bootmend.config.VisibleText;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.request.RequestedBoard;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads a card's config files line by line, with what each tuning line comes to; writes nothing. */
public final class SheetJob {

    /** How many lines of one file are given. No source: a bound against hostile cards. */
    static final int MOST_LINES = 20_000;

    private final Workplace workplace;

    public SheetJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /**
     * A config file that cannot be read is part of the view, not a failure.
     *
     * @throws CardException of kind usage where what is said about the board makes no sense
     */
    public SheetView run(CardRequest request, BoardRequest about) throws CardException {
        BoardFacts facts = new RequestedBoard(workplace.tables()).facts(about);
        try (OpenCard card = OpenCard.open(workplace.opener(), request, false)) {
            ShowView show = new ShowViews(workplace).of(card, facts);
            boolean staged = card.volume().root().find(ConfigName.TRY_ONCE).isPresent();
            return new SheetView(
                    show,
                    files(card, show.card()),
                    workplace.boards(),
                    InterruptedChange.of(card.waiting(workplace.store())),
                    staged);
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    /** Where a line stands. */
    private record Spot(String file, int line) {}

    private static List<SheetFile> files(OpenCard card, CardView view) throws CardException, IOException {
        if (view.config().isEmpty()) {
            return List.of();
        }
        Map<Spot, TuningView> tuning = new HashMap<>();
        view.tuning().forEach(line -> tuning.put(new Spot(line.file(), line.line()), line));
        List<SheetFile> files = new ArrayList<>();
        for (ConfigFile file : ConfigFiles.read(card.volume()).all()) {
            List<ConfigLine> lines = file.document().lines();
            files.add(new SheetFile(
                    file.path(),
                    lines.stream()
                            .limit(MOST_LINES)
                            .map(line -> new SheetLine(
                                    line.number(),
                                    VisibleText.of(line.text()),
                                    kind(line.kind()),
                                    Optional.ofNullable(tuning.get(new Spot(file.path(), line.number())))))
                            .toList(),
                    Math.max(0, lines.size() - MOST_LINES)));
        }
        return files;
    }

    private static SheetLine.Kind kind(LineKind kind) {
        if (kind instanceof LineKind.Blank) {
            return SheetLine.Kind.BLANK;
        } else if (kind instanceof LineKind.Comment || kind instanceof LineKind.CommentedSetting) {
            return SheetLine.Kind.COMMENT;
        } else if (kind instanceof LineKind.Section) {
            return SheetLine.Kind.SECTION;
        } else if (kind instanceof LineKind.Setting) {
            return SheetLine.Kind.SETTING;
        }
        return kind instanceof LineKind.Include ? SheetLine.Kind.INCLUDE : SheetLine.Kind.OTHER;
    }
}
