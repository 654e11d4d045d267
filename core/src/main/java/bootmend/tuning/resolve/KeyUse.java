package bootmend.tuning.resolve;

import bootmend.config.Condition;
import bootmend.config.Truth;
import bootmend.tuning.Board;
import bootmend.tuning.Stock;
import bootmend.tuning.StockValues;
import bootmend.tuning.TuningKey;
import java.util.OptionalInt;

/**
 * Whether a board does anything with a key.
 *
 * @param condition whether it does
 * @param reason why not; empty unless the condition is false
 */
record KeyUse(Condition condition, String reason) {

    static KeyUse of(TuningKey key, BoardFacts facts, StockValues stock) {
        if (facts.board().isEmpty()) {
            return key.boards().isEvery() ? used() : new KeyUse(Condition.dependsOn("which board it is"), "");
        }
        Board board = facts.board().get();
        OptionalInt revision = facts.revisionNumber();
        if (stock.of(key.key(), board.id(), revision).stream().allMatch(Stock.DoesNothing.class::isInstance)) {
            return new KeyUse(
                    Condition.FAILS,
                    board.id() + " has no use for " + key.key()
                            + ": the published table of stock values says that it does nothing there");
        }
        return switch (key.boards().contains(board.id(), revision)) {
            case TRUE -> used();
            case UNKNOWN -> new KeyUse(Condition.dependsOn("the board's revision"), "");
            case FALSE -> notListed(key, board, revision);
        };
    }

    private static KeyUse notListed(TuningKey key, Board board, OptionalInt revision) {
        if (key.unclear().contains(board.id(), revision) != Truth.FALSE) {
            return new KeyUse(
                    Condition.dependsOn("whether " + board.id() + " reads " + key.key()
                            + ", which the published sources do not settle"),
                    "");
        }
        return new KeyUse(
                Condition.FAILS,
                board.id() + " does not read " + key.key() + " (published for: " + key.appliesTo() + ")");
    }

    private static KeyUse used() {
        return new KeyUse(Condition.HOLDS, "");
    }

    boolean isIgnored() {
        return condition.truth() == Truth.FALSE;
    }
}
