package bootmend.cli.option;

import bootmend.CardException;
import bootmend.request.CardRequest;
import java.nio.file.Path;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** The card that a command is about, and how its answer is given. */
public final class CardArgument {

    @Parameters(
            index = "0",
            paramLabel = "CARD",
            description = "The card: an image file, a block device, or the folder where its boot partition is mounted.")
    private Path card;

    @Mixin
    private CardOptions options = new CardOptions();

    static CardArgument of(Path card, CardOptions options) {
        CardArgument argument = new CardArgument();
        argument.card = card;
        argument.options = options;
        return argument;
    }

    public CardRequest request() throws CardException {
        return options.request(card);
    }

    public String name() {
        return card.toString();
    }

    public boolean json() {
        return options.json();
    }
}
