package bootmend.cli.json;

import bootmend.card.PartitionView;
import bootmend.view.CardView;
import bootmend.view.LineEffectView;
import bootmend.view.TuningView;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/** A card as a JSON document; its field names are part of the interface. */
public record CardJson(
        String card,
        String kind,
        long bytes,
        PartitionView partition,
        ConfigJson config,
        List<TuningLineJson> tuning,
        boolean stock,
        List<String> notes,
        @JsonInclude(JsonInclude.Include.NON_NULL) ErrorJson.Told error) {

    /**
     * One tuning line; {@code stock} is null where none is published; {@code effect} and {@code effectText} are there
     * where a board was asked about and reads the line.
     */
    record TuningLineJson(
            String file,
            int line,
            String section,
            String key,
            String value,
            String unit,
            String stock,
            boolean active,
            String state,
            boolean resets,
            @JsonInclude(JsonInclude.Include.NON_NULL) String effect,
            @JsonInclude(JsonInclude.Include.NON_NULL) String effectText) {

        static TuningLineJson of(TuningView line) {
            return new TuningLineJson(
                    line.file(),
                    line.line(),
                    line.section(),
                    line.key(),
                    line.value(),
                    line.unit(),
                    line.stock().orElse(null),
                    line.active(),
                    line.state(),
                    line.resets(),
                    line.effect().map(LineEffectView::effect).orElse(null),
                    line.effect().map(LineEffectView::words).orElse(null));
        }
    }

    static CardJson of(CardView view) {
        return new CardJson(
                view.card(),
                view.kind(),
                view.bytes(),
                view.partition(),
                view.config().map(ConfigJson::of).orElse(null),
                view.tuning().stream().map(TuningLineJson::of).toList(),
                view.isStock(),
                view.notes(),
                view.configProblem()
                        .map(problem -> ErrorJson.error(view.card(), problem))
                        .orElse(null));
    }
}
