package bootmend.cli.option;

import bootmend.request.CardRequest;
import java.nio.file.Path;
import java.util.OptionalInt;
import java.util.OptionalLong;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The card that a command is about, and how its answer is given. */
public final class CardArgument {

    @Parameters(
            paramLabel = "CARD",
            description = "The card: an image file, a block device, or the folder where its boot partition is mounted.")
    private Path card;

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

    static CardArgument of(Path card, Integer partition, Long offset, boolean json) {
        CardArgument argument = new CardArgument();
        argument.card = card;
        argument.partition = partition;
        argument.offset = offset;
        argument.json = json;
        return argument;
    }

    public CardRequest request() {
        return new CardRequest(
                card,
                partition == null ? OptionalInt.empty() : OptionalInt.of(partition),
                offset == null ? OptionalLong.empty() : OptionalLong.of(offset));
    }

    public String name() {
        return card.toString();
    }

    public boolean json() {
        return json;
    }
}
