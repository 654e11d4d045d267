package bootmend.cli.card;

import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.cli.text.Screen;
import bootmend.page.Amount;
import bootmend.view.AttachedCard;
import bootmend.view.CardsJob;
import bootmend.workplace.Workplace;
import java.util.ArrayList;
import java.util.Collections;
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

    /** The list as a JSON document; {@code system} is null on a disk that does not hold the running system. */
    record CardsJson(List<DiskJson> cards) {

        /** One disk. */
        record DiskJson(
                String path,
                long bytes,
                String model,
                String bus,
                boolean removable,
                boolean readOnly,
                String boot,
                String words,
                String system,
                List<AttachedCard.Part> partitions,
                List<String> mountedAt) {

            static DiskJson of(AttachedCard card) {
                return new DiskJson(
                        card.path(),
                        card.bytes(),
                        card.model(),
                        card.bus(),
                        card.removable(),
                        card.readOnly(),
                        word(card.boot()),
                        card.words(),
                        card.system().orElse(null),
                        card.partitions(),
                        card.mountedAt());
            }
        }
    }

    public CardsCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), json);
        return answer.of(() -> {
            List<AttachedCard> cards = new CardsJob(workplace).run();
            if (json) {
                answer.json(
                        new CardsJson(cards.stream().map(CardsJson.DiskJson::of).toList()));
            } else {
                print(answer.screen(), cards);
            }
            return ExitCode.DONE;
        });
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
        screen.table(
                List.of("path", "size", "bus", "kind", "boot card", "mounted at", "model"),
                rows,
                Collections.nCopies(rows.size(), ""));
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
