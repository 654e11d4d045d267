package bootmend.gui.model;

import bootmend.finding.Finding;
import bootmend.gui.text.Words;
import bootmend.page.Amount;
import bootmend.view.BoardView;
import bootmend.view.EffectiveView;
import bootmend.view.LineEffectView;
import bootmend.view.SheetFile;
import bootmend.view.SheetLine;
import bootmend.view.SheetView;
import bootmend.view.TuningView;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;

/** Lays a card's config files out in rows, each line with what becomes of it on the chosen board. */
public final class SheetRows {

    private static final String SET = "set";
    private static final String DEPENDS = "depends";

    private final Words words;

    public SheetRows(Words words) {
        this.words = words;
    }

    /** @param findings what a check says about a line of a file */
    public List<SheetRow> of(SheetView view, BiFunction<String, Integer, List<Finding>> findings) {
        List<SheetRow> rows = new ArrayList<>();
        for (SheetFile file : view.files()) {
            if (view.files().size() > 1) {
                rows.add(new SheetRow.File(file.path()));
            }
            for (SheetLine line : file.lines()) {
                rows.add(new SheetRow.Line(
                        file.path(),
                        line,
                        beside(view, file.path(), line),
                        tone(line),
                        findings.apply(file.path(), line.number())));
            }
            if (file.unshown() > 0) {
                rows.add(new SheetRow.Rest(file.unshown()));
            }
        }
        return rows;
    }

    private static SheetRow.Tone tone(SheetLine line) {
        if (line.tuning().isEmpty()) {
            return line.kind() == SheetLine.Kind.COMMENT ? SheetRow.Tone.QUIET : SheetRow.Tone.PLAIN;
        }
        TuningView tuning = line.tuning().get();
        String effect = tuning.effect().map(LineEffectView::effect).orElse(tuning.active() ? SET : "");
        boolean counts = effect.equals(SET) || effect.equals(DEPENDS);
        if (!counts) {
            return line.kind() == SheetLine.Kind.COMMENT ? SheetRow.Tone.QUIET : SheetRow.Tone.IDLE;
        }
        return tuning.resets() ? SheetRow.Tone.COUNTS : SheetRow.Tone.MAY_COUNT;
    }

    private String beside(SheetView view, String file, SheetLine line) {
        if (line.tuning().isEmpty()) {
            return "";
        }
        TuningView tuning = line.tuning().get();
        if (tuning.effect().isEmpty()) {
            String stock =
                    tuning.stock().map(value -> words.of("sheet.stock", value)).orElse("");
            return tuning.active() ? Amount.of(tuning.value(), tuning.unit()) + stock : tuning.state();
        }
        String effect = tuning.effect().get().words();
        Optional<String> numbers = view.show().board().flatMap(board -> numbers(view, file, line.number()));
        return numbers.map(each -> each + (effect.equals(SET) ? "" : "; " + effect))
                .orElse(effect);
    }

    /** What the line's keys come to; where one line sets several keys that differ against stock, nothing. */
    private Optional<String> numbers(SheetView view, String file, int line) {
        List<String> all = view.show().boards().stream()
                .map(BoardView::effective)
                .flatMap(List::stream)
                .filter(each -> each.file().equals(file) && each.line() == line)
                .map(this::numbers)
                .distinct()
                .toList();
        return all.size() == 1 ? Optional.of(all.get(0)) : Optional.empty();
    }

    private String numbers(EffectiveView each) {
        List<String> parts = new ArrayList<>();
        parts.add(Amount.of(each.value(), each.unit()));
        if (!each.percent().isEmpty()) {
            parts.add(words.of("sheet.against", Amount.percent(each.percent())));
        }
        each.volts()
                .ifPresent(volts -> parts.add(Amount.volts(volts, each.unit().equals("microvolt"))));
        return String.join(", ", parts);
    }
}
