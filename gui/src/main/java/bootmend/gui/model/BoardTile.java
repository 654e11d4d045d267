package bootmend.gui.model;

import bootmend.gui.text.Words;
import bootmend.page.Amount;
import bootmend.view.BoardView;
import bootmend.view.EffectiveView;
import bootmend.view.ShowView;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What one tuning key comes to, on the chosen board or over all that the card can be meant for.
 *
 * @param key of the line that sets it, such as {@code arm_freq}
 * @param value with its unit, or several that boards differ in
 * @param detail against stock, volts, what it depends on, why it is ignored; may be empty
 * @param state {@code set}, {@code depends}, {@code ignored} or {@code differs}
 */
public record BoardTile(String key, String value, String detail, String state) {

    private static final String STOCK = "stock";
    private static final String DIFFERS = "differs";
    private static final String MICROVOLT = "microvolt";
    private static final int MOST_VALUES = 3;

    /** One for each key that a line sets; keys that one line sets together share a tile. */
    public static List<BoardTile> of(ShowView view, Words words) {
        Map<String, List<String>> together = new LinkedHashMap<>();
        for (String key : view.keys()) {
            together.computeIfAbsent(setBy(key, view.boards()), none -> new ArrayList<>())
                    .add(key);
        }
        List<BoardTile> tiles = new ArrayList<>();
        together.forEach((setBy, keys) -> tiles.addAll(
                view.board().isPresent()
                        ? onBoard(setBy, keys, view.boards(), words)
                        : List.of(over(setBy, keys, view.boards(), words))));
        return tiles;
    }

    private static String setBy(String key, List<BoardView> boards) {
        return boards.stream()
                .flatMap(board -> board.effective().stream())
                .filter(each -> each.key().equals(key))
                .map(EffectiveView::setBy)
                .findFirst()
                .orElse(key);
    }

    /** Where the keys come to different things, each has a tile of its own. */
    private static List<BoardTile> onBoard(String setBy, List<String> keys, List<BoardView> boards, Words words) {
        List<EffectiveView> all = boards.stream()
                .flatMap(board -> board.effective().stream())
                .filter(each -> keys.contains(each.key()))
                .toList();
        boolean alike = all.stream()
                        .map(each -> each.value() + each.state() + each.percent())
                        .distinct()
                        .count()
                == 1;
        if (all.size() < 2 || !alike) {
            return all.stream()
                    .map(each -> new BoardTile(each.key(), amount(each), detail(each, words), each.state()))
                    .toList();
        }
        EffectiveView first = all.get(0);
        return List.of(new BoardTile(
                setBy, amount(first), words.of("tile.sets", all.size()) + "; " + detail(first, words), first.state()));
    }

    private static String amount(EffectiveView each) {
        return Amount.of(each.value(), each.unit());
    }

    private static String detail(EffectiveView each, Words words) {
        List<String> detail = new ArrayList<>();
        if (!each.percent().isEmpty()) {
            detail.add(words.of("sheet.against", Amount.percent(each.percent())));
        } else if (!each.stock().isEmpty()) {
            detail.add(words.of(
                    "tile.stock",
                    each.stock().stream().map(String::valueOf).collect(Collectors.joining(words.of("tile.or")))));
        }
        each.volts()
                .ifPresent(volts -> detail.add(Amount.volts(volts, each.unit().equals(MICROVOLT))));
        if (each.state().equals("depends")) {
            detail.add(words.of("tile.depends", String.join(words.of("tile.and"), each.dependsOn())));
        } else if (each.state().equals("ignored")) {
            detail.add(words.of("tile.ignored", each.reason()));
        }
        return String.join("; ", detail);
    }

    private static BoardTile over(String setBy, List<String> keys, List<BoardView> boards, Words words) {
        Set<String> values = new LinkedHashSet<>();
        for (BoardView board : boards) {
            board.effective().stream()
                    .filter(each -> keys.contains(each.key()) && !each.state().equals("ignored"))
                    .map(BoardTile::amount)
                    .forEach(values::add);
            if (board.effective().stream().noneMatch(each -> each.setBy().equals(setBy))) {
                values.add(STOCK);
            }
        }
        String value = values.stream().limit(MOST_VALUES).collect(Collectors.joining(words.of("tile.or")));
        boolean same = values.size() == 1;
        String detail = same ? words.of("tile.everyboard", boards.size()) : words.of("tile.byboard");
        return new BoardTile(setBy, value.isEmpty() ? STOCK : value, detail, same ? "set" : DIFFERS);
    }
}
