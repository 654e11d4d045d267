package bootmend.cli.option;

import bootmend.CardException;
import bootmend.request.CardRequest;
import bootmend.request.GivenText;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;

/** A card or config file that is named beside the one that a command is about. */
public final class SideRequest {

    private static final String STANDARD_INPUT = "-";

    private SideRequest() {}

    /** Whether the name stands for a config file on standard input. */
    public static boolean isStandardInput(String name) {
        return name.equals(STANDARD_INPUT);
    }

    /** @throws CardException where it is no name, or standard input cannot be read */
    public static CardRequest of(String name) throws CardException {
        CardRequest request;
        try {
            request = CardRequest.of(Path.of(name));
        } catch (InvalidPathException e) {
            throw CardException.usage(
                    name + " is no name of a file here (" + e.getReason() + ")", "Check the spelling.");
        }
        return isStandardInput(name) ? request.given(standardInput()) : request;
    }

    static GivenText standardInput() throws CardException {
        try {
            return new GivenText(System.in.readNBytes(GivenText.MOST_BYTES + 1));
        } catch (IOException e) {
            throw CardException.unreadable(
                    "standard input could not be read (" + e.getMessage() + ")", "Name the file instead.", e);
        }
    }
}
