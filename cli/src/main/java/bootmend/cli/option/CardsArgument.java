package bootmend.cli.option;

import bootmend.CardException;
import bootmend.batch.CardNames;
import bootmend.batch.NamedCards;
import bootmend.request.CardRequest;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The cards that a command is about: one, or a batch. */
public final class CardsArgument {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Parameters(
            arity = "1..*",
            paramLabel = "CARD",
            description =
                    "The cards: image files, block devices, folders of image files, patterns such as 'lab-*.img'.")
    private List<String> names;

    @Option(
            names = "--partition",
            paramLabel = "N",
            description = "Take partition N, counted from 1, instead of finding the boot partition.")
    private Integer partition;

    @Option(
            names = "--offset",
            paramLabel = "BYTES",
            description =
                    "Take the FAT volume that begins at this byte of the card, a multiple of 512: where no partition "
                            + "table leads to it, a volume is changed only so.")
    private Long offset;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    /** What was named, as cards; what that leaves out is noted on standard error. */
    public List<Path> cards(CardNames how) throws CardException {
        NamedCards named = how.expand(names);
        named.note().ifPresent(note -> spec.commandLine().getErr().println("bootmend: " + note));
        return named.cards();
    }

    public CardRequest request(Path card) {
        return new CardRequest(
                card,
                partition == null ? OptionalInt.empty() : OptionalInt.of(partition),
                offset == null ? OptionalLong.empty() : OptionalLong.of(offset));
    }

    /** One of them, for a command on one card. */
    public CardArgument only(Path card) {
        return CardArgument.of(card, partition, offset, json);
    }

    public boolean json() {
        return json;
    }
}
