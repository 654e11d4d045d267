package bootmend.tuning;

/** One of bootmend's own data files is not as it must be; the message names the file, the line and what is wrong. */
public final class DataFileException extends RuntimeException {

    DataFileException(String file, long line, String problem) {
        super("Data file " + file + ", line " + line + ": " + problem
                + ". This bootmend is damaged; build or install it again.");
    }

    DataFileException(String file, Exception cause) {
        super(
                "Data file " + file + " cannot be read (" + cause.getMessage()
                        + "). This bootmend is damaged; build or install it again.",
                cause);
    }
}
