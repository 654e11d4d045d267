package bootmend.cli.option;

import bootmend.CardException;
import bootmend.batch.CardNames;
import bootmend.batch.NamedCards;
import bootmend.request.CardRequest;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The cards that a command is about: one, or a batch. */
public final class CardsArgument implements CardSelection {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Parameters(
            arity = "1..*",
            paramLabel = "CARD",
            description =
                    "The cards: image files, block devices, folders of image files, patterns such as 'lab-*.img'.")
    private List<String> names;

    @Mixin
    private CardOptions options = new CardOptions();

    @Override
    public List<Path> cards(CardNames how) throws CardException {
        NamedCards named = how.expand(names);
        named.note().ifPresent(note -> spec.commandLine().getErr().println("bootmend: " + note));
        return named.cards();
    }

    @Override
    public CardRequest request(Path card) throws CardException {
        return options.request(card);
    }

    @Override
    public CardArgument only(Path card) {
        return CardArgument.of(card, options);
    }

    @Override
    public boolean json() {
        return options.json();
    }
}
