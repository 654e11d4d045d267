package bootmend.cli.option;

import bootmend.CardException;
import bootmend.request.CardRequest;
import bootmend.request.GivenText;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import picocli.CommandLine.Option;

/** How cards are to be opened, and how the answer is given. */
public final class CardOptions {

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

    private GivenText given;

    /** @throws CardException where standard input, which {@code -} stands for, cannot be read */
    CardRequest request(Path card) throws CardException {
        CardRequest request = new CardRequest(
                card,
                partition == null ? OptionalInt.empty() : OptionalInt.of(partition),
                offset == null ? OptionalLong.empty() : OptionalLong.of(offset),
                Optional.empty());
        return SideRequest.isStandardInput(card.toString()) ? request.given(standardInput()) : request;
    }

    /** It can be read only once. */
    private GivenText standardInput() throws CardException {
        if (given == null) {
            given = SideRequest.standardInput();
        }
        return given;
    }

    boolean json() {
        return json;
    }
}
