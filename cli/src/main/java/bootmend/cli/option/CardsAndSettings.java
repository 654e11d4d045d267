package bootmend.cli.option;

import bootmend.CardException;
import bootmend.batch.CardNames;
import bootmend.batch.NamedCards;
import bootmend.request.CardRequest;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The cards that a command is about, one or a batch, and the settings for them, among each other. */
public final class CardsAndSettings implements CardSelection {

    private static final Pattern SETTING = Pattern.compile("[A-Za-z0-9_:.-]*=");

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Parameters(
            arity = "1..*",
            paramLabel = "CARD|KEY=VALUE",
            description =
                    "The cards: image files, block devices, folders of image files, patterns such as 'lab-*.img'; and the "
                            + "settings, as the config file has them. A file with an equals sign in its name is "
                            + "named with its folder, such as ./a=b.img.")
    private List<String> words;

    @Mixin
    private CardOptions options = new CardOptions();

    @Override
    public List<Path> cards(CardNames how) throws CardException {
        NamedCards named =
                how.expand(words.stream().filter(word -> !isSetting(word)).toList());
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

    /** What was named, as settings. */
    public List<String> settings() {
        return words.stream().filter(CardsAndSettings::isSetting).toList();
    }

    private static boolean isSetting(String word) {
        return SETTING.matcher(word).lookingAt();
    }
}
