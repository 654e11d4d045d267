package bootmend.cli.profile;

import bootmend.CardException;
import bootmend.cli.json.ErrorJson;
import bootmend.cli.json.JsonText;
import bootmend.cli.option.JsonOption;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.text.ErrorWords;
import bootmend.cli.text.ProfilePage;
import bootmend.cli.text.Screen;
import java.util.function.Consumer;
import picocli.CommandLine;

/** Gives the answer of a command on profiles, as words or as JSON, and turns its errors into exit codes. */
final class ProfileAnswer {

    private final CommandLine line;
    private final boolean json;

    ProfileAnswer(CommandLine line, JsonOption option) {
        this.line = line;
        this.json = option.json();
    }

    /** Works out the answer. */
    @FunctionalInterface
    interface Work<T> {
        T run() throws CardException;
    }

    /** @param words prints the answer where JSON is not asked for */
    <T> int of(Work<T> work, Consumer<T> words) {
        try {
            T answer = work.run();
            if (json) {
                line.getOut().println(JsonText.of(answer));
            } else {
                words.accept(answer);
            }
            return ExitCode.DONE;
        } catch (CardException e) {
            if (json) {
                line.getOut().println(JsonText.of(ErrorJson.of("", e)));
            }
            return new ErrorWords(line.getErr()).tell("", e);
        }
    }

    Screen screen() {
        return new Screen(line.getOut(), line.getColorScheme().ansi());
    }

    ProfilePage page() {
        return new ProfilePage(screen());
    }
}
