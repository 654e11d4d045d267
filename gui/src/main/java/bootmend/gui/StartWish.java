package bootmend.gui;

import bootmend.CardException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * What the window is to open when it starts.
 *
 * @param demo whether demo cards are to be made
 * @param paths cards to open; of a demo, the folder for its cards or nothing
 */
record StartWish(boolean demo, List<Path> paths) {

    private static final String DEMO = "--demo";

    StartWish {
        paths = List.copyOf(paths);
    }

    /** @throws CardException of kind usage where the arguments make no sense */
    static StartWish of(List<String> arguments) throws CardException {
        boolean demo = false;
        List<Path> paths = new ArrayList<>();
        for (String argument : arguments) {
            if (argument.equals(DEMO)) {
                demo = true;
            } else if (argument.startsWith("--")) {
                throw CardException.usage("there is no option " + argument, "See --help.");
            } else {
                paths.add(path(argument));
            }
        }
        if (demo && paths.size() > 1) {
            throw CardException.usage("--demo takes one folder", "Name one, or none for a new one.");
        }
        return new StartWish(demo, paths);
    }

    private static Path path(String argument) throws CardException {
        try {
            return Path.of(argument);
        } catch (InvalidPathException e) {
            throw CardException.usage(
                    argument + " is no name of a file here (" + e.getReason() + ")", "Check the spelling.");
        }
    }

    /**
     * The folder for a demo's cards, made where it is missing.
     *
     * @throws CardException of kind refused where it cannot be made or written to
     */
    Path demoFolder() throws CardException {
        try {
            if (paths.isEmpty()) {
                return Files.createTempDirectory("bootmend-demo");
            }
            return Files.createDirectories(paths.get(0));
        } catch (IOException e) {
            throw CardException.refused(
                    "the folder for the demo cards could not be made (" + e + ")",
                    "Name a folder you may write to.",
                    e);
        }
    }
}
