package bootmend.cli.json;

import bootmend.boot.BootChain;
import bootmend.boot.Verdict;
import bootmend.view.BoardView;
import bootmend.view.CardView;
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
        @JsonUnwrapped CardView card,
        String board,
        List<EffectiveJson> effective,
        PowerView cpuPower,
        List<BoardJson> boards,
        Boolean anyBootable,
        List<CautionView> cautions,
        List<BootJson> boot,
        List<DiagnoseJson.Firmware> firmware) {

    /**
     * What a board's boot chain comes to by names and settings alone; {@code verdict} is {@code boots}, {@code stops} or
     * {@code unknown}, {@code link} the first that does not let the board through.
     */
    @JsonInclude(JsonInclude.Include.NON_EMPTY)
    record BootJson(String board, String verdict, String link, String why) {

        static BootJson of(BootChain chain) {
            if (chain.verdict() instanceof Verdict.Stops stops) {
                return new BootJson(
                        chain.board(),
                        chain.verdict().word(),
                        stops.cause().link().word(),
                        stops.cause().sentence());
            }
            if (chain.verdict() instanceof Verdict.Unknown unknown) {
                return new BootJson(
                        chain.board(), chain.verdict().word(), unknown.link().word(), unknown.why());
            }
            return new BootJson(chain.board(), chain.verdict().word(), null, null);
        }

        static List<BootJson> of(ShowView view) {
            return view.boot()
                    .map(boot -> boot.boards().stream()
                            .map(board -> of(board.chain()))
                            .toList())
                    .orElse(null);
        }
    }

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
        CardView card = view.card();
        if (view.card().config().isEmpty()) {
            return new ShowJson(card, view.board().orElse(null), null, null, null, null, null, BootJson.of(view), null);
        }
        if (view.board().isEmpty()) {
            return new ShowJson(
                    card,
                    null,
                    null,
                    null,
                    view.boards().stream().map(BoardJson::of).toList(),
                    view.anyBootable(),
                    view.cautions(),
                    BootJson.of(view),
                    null);
        }
        BoardView only = view.boards().get(0);
        return new ShowJson(
                card,
                only.board(),
                EffectiveJson.of(only),
                only.cpuPower().orElse(null),
                null,
                null,
                view.cautions(),
                BootJson.of(view),
                view.firmware().stream().map(DiagnoseJson.Firmware::of).toList());
    }
}
