package bootmend.boot;

import java.util.List;

/** What repairs the first broken link; front ends put it into words and name their own command or button for it. */
public sealed interface Remedy {

    /** Let the file system repair of this card run. */
    record RepairCard() implements Remedy {}

    /** Put the settings back to stock. */
    record ResetSettings() implements Remedy {}

    /** Give a file its right name, both in the root folder. */
    record RenameFile(String from, String to) implements Remedy {}

    /** Save the config file as plain text again. */
    record SavePlain(String file) implements Remedy {}

    /** Put these files on the card, from a card or package of the same kind. */
    record PutFiles(List<String> files) implements Remedy {
        public PutFiles {
            files = List.copyOf(files);
        }
    }

    /** Take these files off the card. */
    record RemoveFiles(List<String> files) implements Remedy {
        public RemoveFiles {
            files = List.copyOf(files);
        }
    }

    /** Correct a line, or take it out. */
    record CorrectLine(String file, int line) implements Remedy {}

    /** Set a key in the config file. */
    record SetKey(String key, String value) implements Remedy {}

    /** Make {@code root=} in this file fit the card; {@code root} is a value that would, empty where none is seen. */
    record FitRoot(String file, String root) implements Remedy {}

    /** Make the command line one line again. */
    record OneLine(String file) implements Remedy {}

    /** Copy the card or write the image again, for this one ends too early. */
    record CopyAgain() implements Remedy {}

    /** The system on the card is gone or damaged: write it anew, after saving what can be saved. */
    record WriteAnew() implements Remedy {}

    /** The card is for other boards. */
    record OtherBoard() implements Remedy {}

    /** Name the whole card, for a mounted folder does not show its other partitions. */
    record ShowWholeCard() implements Remedy {}
}
