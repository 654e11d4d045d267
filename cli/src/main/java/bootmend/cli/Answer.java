package bootmend.cli;

import bootmend.CardException;
import picocli.CommandLine;

/** Gives a command's answer on the right stream and turns its errors into exit codes. */
final class Answer {

    /** A command's work; it may stop with an error for the user. */
    @FunctionalInterface
    interface Work {
        int run() throws CardException;
    }

    private final CommandLine line;
    private final String about;
    private final boolean asJson;

    Answer(CommandLine line, CardArgument card) {
        this(line, card.name(), card.json());
    }

    /** An answer that is about no card. */
    Answer(CommandLine line, boolean asJson) {
        this(line, "", asJson);
    }

    private Answer(CommandLine line, String about, boolean asJson) {
        this.line = line;
        this.about = about;
        this.asJson = asJson;
    }

    /** Runs {@code work}; an error goes to standard error, and into the JSON document where one was asked for. */
    int of(Work work) {
        try {
            return work.run();
        } catch (CardException e) {
            if (asJson) {
                json(ErrorJson.of(about, e));
            }
            return new ErrorWords(line.getErr()).tell(about, e);
        }
    }

    Screen screen() {
        return new Screen(line.getOut(), line.getColorScheme().ansi());
    }

    /** The place for words while the answer itself is JSON on standard output. */
    Screen sideScreen() {
        return new Screen(
                asJson ? line.getErr() : line.getOut(), line.getColorScheme().ansi());
    }

    void json(Object document) {
        line.getOut().println(JsonText.of(document));
        line.getOut().flush();
    }
}
