package bootmend.cli;

import bootmend.CardException;

/** An error as a JSON document: {@code card}, {@code error} {{@code what}, {@code remedy}, {@code exitCode}}. */
record ErrorJson(String card, Told error) {

    /** What happened and what to do. */
    record Told(String what, String remedy, int exitCode) {}

    static ErrorJson of(String card, CardException error) {
        return new ErrorJson(card, error(error));
    }

    static Told error(CardException error) {
        return new Told(error.getMessage(), error.remedy(), ExitCode.of(error));
    }
}
