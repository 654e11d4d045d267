package bootmend.cli.outcome;

import bootmend.CardException;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Makes files that a command writes beside its answer; what is there already is left alone. */
public final class NewFile {

    private NewFile() {}

    /** Opens a file that must not be there yet, for UTF-8 text. */
    public static Writer open(Path file) throws CardException {
        try {
            return Files.newBufferedWriter(
                    file, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        } catch (FileAlreadyExistsException e) {
            throw there(file);
        } catch (IOException e) {
            throw failed(file, e);
        }
    }

    public static CardException there(Path file) {
        return CardException.refused(
                file + " is there already and was left alone", "Name another file, or delete that one.");
    }

    public static CardException failed(Path file, IOException e) {
        return CardException.refused(
                file + " could not be written (" + e.getMessage() + ")",
                "Name a file in a folder that is there and that you may write to.",
                e);
    }
}
