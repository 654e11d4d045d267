package bootmend.card;

import bootmend.CardException;
import bootmend.config.ConfigDocument;
import bootmend.config.IncludeSource;
import bootmend.config.Truth;
import bootmend.tuning.Board;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Effective;
import bootmend.tuning.resolve.EffectiveState;
import bootmend.tuning.resolve.Resolution;
import bootmend.tuning.resolve.Resolver;
import java.util.LinkedHashMap;
import java.util.Map;

/** Reads from a card the tuning settings that a board runs with it. */
public final class CardSettings {

    private final TuningTables tables;

    public CardSettings(TuningTables tables) {
        this.tables = tables;
    }

    /**
     * Key to value as written, for every line that sets something on the board; keys that set several stand as themselves.
     *
     * @throws CardException when a setting hangs on something that the card does not tell
     */
    public Map<String, String> of(ConfigFiles files, Board board) throws CardException {
        return of(files.main().path(), files.main().document(), files.includes(), board);
    }

    /** The same of a config file that need not be the card's. */
    public Map<String, String> of(String path, ConfigDocument document, IncludeSource includes, Board board)
            throws CardException {
        Resolution resolution = resolve(path, document, includes, board);
        Map<String, String> settings = new LinkedHashMap<>();
        for (Effective effective : resolution.effective()) {
            if (effective.state() == EffectiveState.IGNORED || !isKept(effective)) {
                continue;
            }
            boolean sureLine = effective.chosen().source().condition().truth() == Truth.TRUE
                    && effective.otherwise().isEmpty();
            if (!sureLine) {
                throw CardException.refused(
                        effective.key() + " depends on " + String.join(", ", effective.dependsOn()) + " ("
                                + effective.file() + " line " + effective.line() + ")",
                        "Make the card say it plainly for " + board.id() + ", then try again.");
            }
            settings.put(effective.chosen().setBy(), effective.chosen().written());
        }
        return settings;
    }

    /** Key to value as the board takes it, keys that set several taken apart. */
    public Map<String, String> inForce(ConfigFiles files, Board board) {
        return inForce(files.main().path(), files.main().document(), files.includes(), board);
    }

    /** The same of a config file that need not be the card's. */
    public Map<String, String> inForce(String path, ConfigDocument document, IncludeSource includes, Board board) {
        Map<String, String> settings = new LinkedHashMap<>();
        for (Effective effective : resolve(path, document, includes, board).effective()) {
            if (effective.state() == EffectiveState.SET && isKept(effective)) {
                settings.put(effective.key(), effective.value());
            }
        }
        return settings;
    }

    private boolean isKept(Effective effective) {
        return tables.vocabulary()
                .findOnCard(effective.chosen().setBy())
                .filter(TuningKey::isKept)
                .isPresent();
    }

    private Resolution resolve(String path, ConfigDocument document, IncludeSource includes, Board board) {
        return new Resolver(tables).resolve(path, document, includes, BoardFacts.of(board));
    }
}
