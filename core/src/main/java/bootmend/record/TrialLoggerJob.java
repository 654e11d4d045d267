package bootmend.record;

import bootmend.CardException;
import bootmend.trial.BoardLogger;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Hands out the logger for the board. */
public final class TrialLoggerJob {

    /** The script's text. */
    public String text() {
        return BoardLogger.text();
    }

    /** Writes the script to a file that is not there yet. */
    public void write(Path file) throws CardException {
        try {
            Files.writeString(file, text(), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        } catch (FileAlreadyExistsException e) {
            throw CardException.refused(
                    file + " is there already and was left alone", "Name another file, or delete that one.");
        } catch (IOException e) {
            throw CardException.refused(
                    file + " could not be written (" + e.getMessage() + ")",
                    "Name a file in a folder that you may write to.",
                    e);
        }
    }
}
