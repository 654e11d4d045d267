package bootmend.cli.json;

import bootmend.view.BoardView;
import bootmend.view.CautionView;
import bootmend.view.EffectiveView;
import bootmend.view.PowerView;
import bootmend.view.ShowView;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;

/**
 * A card with what it comes to on boards, as a JSON document; field names are part of the interface. Where a board was
 * asked about: {@code board}, {@code effective} and {@code cpuPower}; else {@code boards} and {@code anyBootable}.
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ShowJson(
        @JsonUnwrapped CardJson card,
        String board,
        List<EffectiveJson> effective,
        PowerView cpuPower,
        List<BoardJson> boards,
        Boolean anyBootable,
        List<CautionView> cautions) {

    /** What a card comes to on one of several boards. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record BoardJson(String board, List<EffectiveJson> effective, PowerView cpuPower) {

        public static BoardJson of(BoardView view) {
            return new BoardJson(
                    view.board(), EffectiveJson.of(view), view.cpuPower().orElse(null));
        }
    }

    /**
     * What a key comes to; {@code stock} has every value that stock may have, {@code percent} is there where it is one.
     */
    @JsonInclude(JsonInclude.Include.NON_EMPTY)
    record EffectiveJson(
            String board,
            String key,
            String value,
            String unit,
            String state,
            String file,
            int line,
            String setBy,
            List<String> dependsOn,
            List<EffectiveView.OtherValue> otherwise,
            Boolean mayBeStock,
            List<Long> stock,
            Double percent,
            Double volts,
            String reason) {

        public static List<EffectiveJson> of(BoardView view) {
            return view.effective().stream().map(each -> of(view.board(), each)).toList();
        }

        private static EffectiveJson of(String board, EffectiveView each) {
            boolean depends = !each.dependsOn().isEmpty();
            return new EffectiveJson(
                    board,
                    each.key(),
                    each.value(),
                    each.unit(),
                    each.state(),
                    each.file(),
                    each.line(),
                    each.setBy(),
                    each.dependsOn(),
                    each.otherwise(),
                    depends ? each.mayBeStock() : null,
                    each.stock(),
                    each.percent().size() == 1 ? each.percent().get(0) : null,
                    each.volts().orElse(null),
                    each.reason());
        }
    }

    public static ShowJson of(ShowView view) {
        CardJson card = CardJson.of(view.card());
        if (view.card().config().isEmpty()) {
            return new ShowJson(card, view.board().orElse(null), null, null, null, null, null);
        }
        if (view.board().isEmpty()) {
            return new ShowJson(
                    card,
                    null,
                    null,
                    null,
                    view.boards().stream().map(BoardJson::of).toList(),
                    view.anyBootable(),
                    view.cautions());
        }
        BoardView only = view.boards().get(0);
        return new ShowJson(
                card, only.board(), EffectiveJson.of(only), only.cpuPower().orElse(null), null, null, view.cautions());
    }
}
