package bootmend.cli.json;

import bootmend.CardException;
import bootmend.cli.outcome.CommandWords;
import bootmend.cli.outcome.ExitCode;

/** An error as a JSON document: {@code card}, {@code error} {{@code what}, {@code remedy}, {@code exitCode}}. */
public record ErrorJson(String card, Told error) {

    /** What happened and what to do. */
    public record Told(String what, String remedy, int exitCode) {}

    public static ErrorJson of(String card, CardException error) {
        return new ErrorJson(card, error(card, error));
    }

    /** @param card as the user named it; empty where it is about none */
    public static Told error(String card, CardException error) {
        return new Told(error.getMessage(), CommandWords.about(card).remedy(error), ExitCode.of(error));
    }
}
