package bootmend.view;

import bootmend.CardException;
import bootmend.boot.BootTables;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.config.ConfigLine;
import bootmend.config.LineKind;
import bootmend.fat.Directory;
import bootmend.fat.DirectoryEntry;
import bootmend.tuning.Board;
import bootmend.tuning.TuningLine;
import bootmend.tuning.TuningLines;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Resolution;
import bootmend.tuning.resolve.Resolver;
import bootmend.tuning.resolve.StockLines;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What a card's config file comes to on the boards that the card can be meant for, or on every board where nothing tells one. */
public final class CardBoards {

    private static final String PREFIX = "os_prefix";
    /** How many folders are looked into for kernels. No source: a bound against hostile cards. */
    private static final int MOST_FOLDERS = 8;

    private final TuningTables tables;

    public CardBoards(TuningTables tables) {
        this.tables = tables;
    }

    /** Which lines are at stock; boards are asked about only where some line may be. */
    public StockLines stockLines(OpenCard card, ConfigFiles files) throws CardException, IOException {
        boolean any = files.all().stream()
                .flatMap(file -> TuningLines.find(file.document(), tables.vocabulary()).stream())
                .anyMatch(this::mayBeStock);
        return StockLines.of(tables, any ? resolutions(card, files) : List.of(), files::pathOf);
    }

    private boolean mayBeStock(TuningLine line) {
        return line.isActive()
                && TuningNumber.parse(line.value()).isPresent()
                && tables.stock()
                        .isSomewhere(
                                line.tuningKey(),
                                TuningNumber.parse(line.value()).getAsLong());
    }

    private List<Resolution> resolutions(OpenCard card, ConfigFiles files) throws CardException, IOException {
        Resolver resolver = new Resolver(tables);
        return of(card, files).stream()
                .map(board -> resolver.resolve(
                        files.main().path(), files.main().document(), files.includes(), BoardFacts.of(board)))
                .toList();
    }

    /** The boards that the card can be meant for; every known one where nothing on it tells one. */
    public List<Board> of(OpenCard card, ConfigFiles files) throws CardException, IOException {
        Set<String> meant = new BootTables(tables).meantFor(names(card, files));
        return tables.boards().all().stream()
                .filter(board -> meant.isEmpty() || meant.contains(board.id()))
                .toList();
    }

    /** The root folder's names, which were read already, and those of folders that the config file's prefixes name. */
    public static List<String> names(OpenCard card, ConfigFiles files) throws CardException, IOException {
        List<String> names = new ArrayList<>(names(card.volume().root()));
        List<String> folders = files.all().stream()
                .flatMap(file -> file.document().lines().stream())
                .map(ConfigLine::kind)
                .filter(LineKind.Setting.class::isInstance)
                .map(LineKind.Setting.class::cast)
                .filter(setting ->
                        setting.key().equals(PREFIX) && setting.value().contains("/"))
                .map(setting -> setting.value().substring(0, setting.value().lastIndexOf('/')))
                .distinct()
                .limit(MOST_FOLDERS)
                .toList();
        for (String folder : folders) {
            Optional<DirectoryEntry> entry = card.volume().find(folder).filter(DirectoryEntry::folder);
            if (entry.isPresent()) {
                names.addAll(names(card.volume().list(entry.get())));
            }
        }
        return names;
    }

    private static List<String> names(Directory directory) {
        return directory.entries().stream()
                .filter(entry -> !entry.folder())
                .map(DirectoryEntry::name)
                .toList();
    }
}
