package bootmend.cli.text;

import bootmend.page.Amount;
import bootmend.view.BoardView;
import bootmend.view.EffectiveView;
import bootmend.view.PowerView;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Prints what a card's config file comes to on one board. */
final class EffectivePage {

    private static final String MICROVOLT = "microvolt";

    private final Screen screen;

    EffectivePage(Screen screen) {
        this.screen = screen;
    }

    void print(BoardView view) {
        if (view.effective().isEmpty()) {
            screen.line("On " + view.board() + " no tuning line counts: it runs at stock.");
            return;
        }
        screen.line("What " + view.board() + " runs with this card:");
        screen.blank();
        boolean volts = view.effective().stream().anyMatch(each -> each.volts().isPresent());
        boolean clocks =
                view.effective().stream().anyMatch(each -> !each.percent().isEmpty());
        List<List<String>> rows = new ArrayList<>();
        List<String> styles = new ArrayList<>();
        for (EffectiveView each : view.effective()) {
            List<String> row = new ArrayList<>(List.of(each.key(), Amount.of(each.value(), each.unit()), stock(each)));
            if (clocks) {
                row.add(Amount.percent(each.percent()));
            }
            if (volts) {
                row.add(each.volts()
                        .map(value -> Amount.volts(value, each.unit().equals(MICROVOLT)))
                        .orElse(""));
            }
            row.add(from(each));
            row.add(state(each));
            rows.add(row);
            styles.add(EffectStyle.of(each.state()));
        }
        screen.table(header(clocks, volts), rows, styles);
        view.cpuPower().ifPresent(this::power);
    }

    private static List<String> header(boolean clocks, boolean volts) {
        List<String> header = new ArrayList<>(List.of("key", "value", "stock"));
        if (clocks) {
            header.add("against stock");
        }
        if (volts) {
            header.add("volts");
        }
        header.add("from");
        header.add("state");
        return header;
    }

    private static String stock(EffectiveView each) {
        return each.stock().isEmpty()
                ? "not published"
                : each.stock().stream().map(String::valueOf).collect(Collectors.joining(" or "));
    }

    private static String from(EffectiveView each) {
        String line = each.file() + " line " + each.line();
        return each.setBy().equals(each.key()) ? line : line + ", " + each.setBy();
    }

    private static String state(EffectiveView each) {
        return switch (each.state()) {
            case "depends" -> "depends on " + String.join(" and ", each.dependsOn()) + "; otherwise " + otherwise(each);
            case "ignored" -> "ignored: " + each.reason();
            default -> each.state();
        };
    }

    private static String otherwise(EffectiveView each) {
        List<String> others = new ArrayList<>();
        each.otherwise()
                .forEach(other -> others.add(
                        Amount.of(other.value(), each.unit()) + " (" + other.file() + " line " + other.line() + ")"));
        if (each.mayBeStock()) {
            others.add("stock");
        }
        return String.join(" or ", others);
    }

    private void power(PowerView power) {
        screen.blank();
        String sum = power.ratios().stream()
                .map(ratio -> String.format(Locale.ROOT, "%.2f", ratio))
                .distinct()
                .collect(Collectors.joining(" or "));
        screen.line("CPU power against stock: "
                + (power.ratios().isEmpty()
                        ? power.unknown()
                        : sum + " times, by C V^2 f; leakage is not in it, so real heat differs"));
        screen.line("  Source: " + power.source());
    }
}
