package bootmend.cli;

import bootmend.job.CardView;
import bootmend.job.ConfigView;
import bootmend.job.PartitionView;
import bootmend.job.TuningView;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Prints a card: five lines on the card itself, the config file, the tuning lines, and what follows from them. */
final class CardPage {

    private static final String ACTIVE_STYLE = "fg(yellow)";

    private final Screen screen;

    CardPage(Screen screen) {
        this.screen = screen;
    }

    void print(CardView view) {
        PartitionView partition = view.partition();
        field("card", view.card() + " (" + view.kind() + ", " + Screen.size(view.bytes()) + ")");
        field("partition table", partition.table());
        field("boot partition", (partition.number() == 0 ? "the whole card" : "number " + partition.number())
                + ", " + partition.reason());
        field("volume", partition.fatType() + ", " + Screen.size(partition.bytes()) + ", clusters of "
                + Screen.size(partition.clusterBytes()) + ", from sector " + partition.firstSector());
        field("label, serial", (partition.label().isEmpty() ? "no label" : partition.label())
                + ", " + partition.serial());
        view.config().ifPresent(this::config);
        view.notes().forEach(note -> field("note", note));
        if (view.config().isPresent()) {
            screen.blank();
            tuning(view);
        }
    }

    private void config(ConfigView config) {
        field("config file", config.path() + ", " + String.format(Locale.ROOT, "%,d", config.bytes()) + " bytes");
    }

    private void tuning(CardView view) {
        if (view.tuning().isEmpty()) {
            screen.line("The config file has no tuning line: the card is at stock.");
            return;
        }
        boolean severalFiles = view.tuning().stream().map(TuningView::file).distinct().count() > 1;
        List<List<String>> rows = new ArrayList<>();
        List<String> styles = new ArrayList<>();
        for (TuningView line : view.tuning()) {
            String place = severalFiles ? line.file() + ":" + line.line() : Integer.toString(line.line());
            rows.add(List.of(place, line.section(), line.key(), value(line), line.stock().orElse("not published"),
                    line.active() && !line.resets() ? line.state() + ", left alone by a reset" : line.state()));
            styles.add(line.active() && line.resets() ? ACTIVE_STYLE : "");
        }
        screen.table(List.of("line", "section", "key", "value", "stock", "state"), rows, styles);
        screen.blank();
        verdict(view);
    }

    private void verdict(CardView view) {
        long active = view.tuning().stream().filter(line -> line.active() && line.resets()).count();
        if (active == 0) {
            screen.line("No active line tunes this card: it is at stock.");
        } else {
            screen.line("bold", Screen.count((int) active, "active tuning line") + ": this card is not at stock.");
            screen.line("Back to stock: bootmend reset " + view.card());
        }
    }

    private static String value(TuningView line) {
        boolean number = line.value().matches("-?\\d+");
        return line.unit().equals("flag") || !number ? line.value() : line.value() + " " + line.unit();
    }

    private void field(String name, String text) {
        screen.line(String.format(Locale.ROOT, "%-16s%s", name, text));
    }
}
