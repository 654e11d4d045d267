package bootmend.cli.card;

import bootmend.cli.run.Answer;
import bootmend.cli.text.Screen;
import bootmend.page.Amount;
import bootmend.view.AttachedCard;
import bootmend.view.CardsJob;
import bootmend.workplace.Workplace;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code bootmend cards}: which cards are attached to this computer. */
@Command(
        name = "cards",
        header = "The cards that are attached to this computer.",
        mixinStandardHelpOptions = true,
        description =
                "Lists the disks that are attached to this computer, and which of them look like boot cards. Writes "
                        + "nothing.",
        footer = {"", "Example:", "  bootmend cards"})
public final class CardsCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    @Spec
    private CommandSpec spec;

    /** The list as a JSON document. */
    record CardsJson(List<AttachedCard> cards) {}

    public CardsCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        return new Answer(spec.commandLine(), json)
                .of(() -> new CardsJob(workplace).run(), CardsJson::new, CardsCommand::print);
    }

    private static void print(Screen screen, List<AttachedCard> cards) {
        if (cards.isEmpty()) {
            screen.line("No disk with a medium is attached to this computer.");
            return;
        }
        List<List<String>> rows = new ArrayList<>();
        for (AttachedCard card : cards) {
            rows.add(List.of(
                    card.path(),
                    Amount.size(card.bytes()),
                    card.bus(),
                    kind(card),
                    word(card.boot()),
                    mounted(card.mountedAt()),
                    card.model()));
            for (AttachedCard.Part part : card.partitions()) {
                rows.add(List.of(
                        "  " + part.path(),
                        Amount.size(part.bytes()),
                        "",
                        "",
                        "",
                        mounted(part.mountedAt()),
                        part.name()));
            }
        }
        screen.table(List.of("path", "size", "bus", "kind", "boot card", "mounted at", "model"), rows);
        screen.blank();
        cards.forEach(card -> screen.paragraph(card.path(), 16, card.words() + "."));
    }

    private static String kind(AttachedCard card) {
        return (card.removable() ? "removable" : "built in") + (card.readOnly() ? ", read-only" : "");
    }

    private static String mounted(List<String> points) {
        return points.isEmpty() ? "-" : String.join(", ", points);
    }

    private static String word(AttachedCard.Boot boot) {
        return boot.name().toLowerCase(Locale.ROOT);
    }
}
