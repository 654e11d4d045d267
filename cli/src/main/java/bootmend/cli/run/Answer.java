package bootmend.cli.run;

import bootmend.CardException;
import bootmend.cli.json.ErrorJson;
import bootmend.cli.json.JsonText;
import bootmend.cli.option.CardArgument;
import bootmend.cli.text.ErrorWords;
import bootmend.cli.text.Screen;
import picocli.CommandLine;

/** Gives a command's answer on the right stream and turns its errors into exit codes. */
public final class Answer {

    /** A command's work; it may stop with an error for the user. */
    @FunctionalInterface
    public interface Work {
        int run() throws CardException;
    }

    private final CommandLine line;
    private final String about;
    private final boolean asJson;

    public Answer(CommandLine line, CardArgument card) {
        this(line, card.name(), card.json());
    }

    /** An answer that is about no card. */
    public Answer(CommandLine line, boolean asJson) {
        this(line, "", asJson);
    }

    private Answer(CommandLine line, String about, boolean asJson) {
        this.line = line;
        this.about = about;
        this.asJson = asJson;
    }

    /** Runs {@code work}; an error goes to standard error, and into the JSON document where one was asked for. */
    public int of(Work work) {
        try {
            return work.run();
        } catch (CardException e) {
            if (asJson) {
                json(ErrorJson.of(about, e));
            }
            return new ErrorWords(line.getErr()).tell(about, e);
        }
    }

    public Screen screen() {
        return new Screen(line.getOut(), line.getColorScheme().ansi());
    }

    /** The place for words while the answer itself is JSON on standard output. */
    public Screen sideScreen() {
        return new Screen(
                asJson ? line.getErr() : line.getOut(), line.getColorScheme().ansi());
    }

    public void json(Object document) {
        line.getOut().println(JsonText.of(document));
        line.getOut().flush();
    }
}
