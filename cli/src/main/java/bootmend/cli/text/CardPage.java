package bootmend.cli.text;

import bootmend.boot.BootDiagnosis;
import bootmend.card.PartitionView;
import bootmend.page.Amount;
import bootmend.page.VerdictLine;
import bootmend.view.BoardView;
import bootmend.view.CardView;
import bootmend.view.ConfigView;
import bootmend.view.LineEffectView;
import bootmend.view.ShowView;
import bootmend.view.TuningView;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Prints a card: the card itself, the config file, the tuning lines, what they come to on boards, and cautions. */
public final class CardPage {

    /** The file that a reset changes, with what it includes. */
    private static final String RESET_FILE = "config.txt";

    private static final int NAME_WIDTH = 16;

    private final Screen screen;

    public CardPage(Screen screen) {
        this.screen = screen;
    }

    public void print(ShowView show) {
        CardView view = show.card();
        PartitionView partition = view.partition();
        field("card", view.card() + " (" + view.kind() + ", " + Amount.size(view.bytes()) + ")");
        if (!partition.isThere()) {
            field("boot partition", "none: this is " + partition.reason());
        } else if (partition.isMounted()) {
            field("boot partition", partition.reason() + ", " + partition.fatType());
        } else {
            partition(partition);
        }
        view.config().ifPresent(this::config);
        if (view.config().isPresent() && show.board().isEmpty()) {
            field(
                    "meant for",
                    show.anyBootable()
                            ? show.boards().stream().map(BoardView::board).collect(Collectors.joining(" "))
                            : partition.isThere() ? "nothing on the card tells a board" : "nothing tells a board");
        }
        show.boot().ifPresent(boot -> boot(show, boot));
        view.notes().forEach(note -> field("note", note));
        if (view.config().isPresent()) {
            screen.blank();
            tuning(view, show.board());
            boards(show);
            new CautionPage(screen).print(show.cautions());
        }
    }

    /** The command stands on a line of its own, where it is not broken in two. */
    private void boot(ShowView show, BootDiagnosis boot) {
        field(
                "boot chain",
                VerdictLine.verdict(boot) + " "
                        + VerdictLine.notLookedAt(show.board().isPresent()) + ".");
        screen.exact(" ".repeat(NAME_WIDTH) + "All of it: bootmend diagnose "
                + show.card().card());
        show.firmware().forEach(build -> field("firmware", build.file() + ": " + build.words()));
    }

    private void partition(PartitionView partition) {
        field("partition table", partition.table());
        field(
                "boot partition",
                (partition.number() == 0 ? "the whole card" : "number " + partition.number()) + ", "
                        + partition.reason());
        field(
                "volume",
                partition.fatType() + ", " + Amount.size(partition.bytes()) + ", clusters of "
                        + Amount.size(partition.clusterBytes()) + ", from sector " + partition.firstSector());
        field(
                "label, serial",
                (partition.label().isEmpty() ? "no label" : partition.label()) + ", " + partition.serial());
    }

    private void boards(ShowView show) {
        if (show.board().isPresent()) {
            screen.blank();
            new EffectivePage(screen).print(show.boards().get(0));
        } else if (!show.keys().isEmpty()) {
            screen.blank();
            screen.line(
                    show.anyBootable()
                            ? "What the boards that this card can be meant for would run:"
                            : "What each known board would run:");
            screen.blank();
            new BoardsPage(screen).print(show.boards(), show.keys());
            screen.blank();
            show.boards().stream()
                    .filter(board -> !board.effective().isEmpty())
                    .findFirst()
                    .ifPresent(board -> screen.exact("More on one board: bootmend show --board " + board.board() + " "
                            + show.card().card()));
        }
    }

    private void config(ConfigView config) {
        field("config file", config.path() + ", " + grouped(config.bytes()) + " bytes");
    }

    /** Digits in groups of three, without the number formats of Java, which take 3 ms to load. */
    private static String grouped(int number) {
        StringBuilder digits = new StringBuilder(Integer.toString(number));
        for (int i = digits.length() - 3; i > 0; i -= 3) {
            digits.insert(i, ',');
        }
        return digits.toString();
    }

    private void tuning(CardView view, Optional<String> board) {
        if (view.tuning().isEmpty()) {
            screen.line("The config file has no tuning line: the card is at stock.");
            return;
        }
        boolean severalFiles =
                view.tuning().stream().map(TuningView::file).distinct().count() > 1;
        List<List<String>> rows = new ArrayList<>();
        List<String> styles = new ArrayList<>();
        for (TuningView line : view.tuning()) {
            String place = severalFiles ? line.file() + ":" + line.line() : Integer.toString(line.line());
            rows.add(List.of(
                    place,
                    line.section(),
                    line.key(),
                    Amount.of(line.value(), line.unit()),
                    line.stock().orElse("not published"),
                    line.active() && !line.resets() ? state(line) + ", left alone by a reset" : state(line)));
            styles.add(style(line));
        }
        String last = board.map(id -> "on " + id).orElse("state");
        screen.table(List.of("line", "section", "key", "value", "stock", last), rows, styles);
        screen.blank();
        verdict(view);
    }

    private void verdict(CardView view) {
        long active = view.tuning().stream()
                .filter(line -> line.active() && line.resets())
                .count();
        if (active == 0) {
            screen.line("No active line tunes this card: it is at stock.");
        } else {
            screen.line("bold", Amount.count(active, "active tuning line") + ": this card is not at stock.");
            if (view.config().filter(config -> config.path().equals(RESET_FILE)).isPresent()) {
                screen.exact("Back to stock: bootmend reset " + view.card());
            }
        }
    }

    private static String state(TuningView line) {
        return line.effect().map(LineEffectView::words).orElse(line.state());
    }

    private static String style(TuningView line) {
        return line.effect()
                .map(effect -> EffectStyle.of(effect.effect()))
                .orElse(line.active() && line.resets() ? EffectStyle.COUNTS : "");
    }

    private void field(String name, String text) {
        screen.paragraph(name, NAME_WIDTH, text);
    }
}
