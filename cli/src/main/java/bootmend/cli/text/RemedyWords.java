package bootmend.cli.text;

import bootmend.boot.Remedy;
import bootmend.config.ConfigName;
import java.util.Set;

/**
 * What repairs the first broken link, said as commands.
 *
 * @param card as the user named it
 */
public record RemedyWords(String card) {

    /** A card's own, which none takes from another unasked. */
    private static final Set<String> OWN = Set.of(ConfigName.NAME, ConfigName.TRY_ONCE, "cmdline.txt");

    public String of(Remedy remedy) {
        if (remedy instanceof Remedy.RepairCard) {
            return "Have the card repaired: " + command("repair") + ", which shows first what it would do.";
        } else if (remedy instanceof Remedy.ResetSettings) {
            return "Put the settings back to stock: " + command("reset") + ".";
        } else if (remedy instanceof Remedy.RenameFile rename) {
            return "Name the file " + rename.from() + " " + rename.to() + ": "
                    + (rename.to().equals(ConfigName.NAME) ? command("repair") + " does that." : "by hand.");
        } else if (remedy instanceof Remedy.SavePlain save) {
            return save.file().equals(ConfigName.NAME)
                    ? "Save the config file as plain text: " + command("repair") + " does that."
                    : "Save " + save.file() + " anew by hand, as plain text without a byte-order mark.";
        } else if (remedy instanceof Remedy.PutFiles files) {
            return "Put " + String.join(", ", files.files())
                    + " on the card, from a card or package of the same kind and release"
                    + (files.files().stream().anyMatch(OWN::contains)
                            ? "."
                            : ": " + command("repair --from GOOD") + " does that.");
        } else if (remedy instanceof Remedy.RemoveFiles files) {
            return "Take " + String.join(", ", files.files()) + " off the card.";
        } else if (remedy instanceof Remedy.CorrectLine line) {
            return "Correct line " + line.line() + " of " + line.file() + ", or take it out.";
        } else if (remedy instanceof Remedy.SetKey key) {
            return "Put the line " + key.key() + "=" + key.value() + " into " + ConfigName.NAME + ".";
        } else if (remedy instanceof Remedy.FitRoot root) {
            return "Correct root= in " + root.file()
                    + (root.root().isEmpty() ? "." : "; root=" + root.root() + " would fit this card.");
        } else if (remedy instanceof Remedy.OneLine line) {
            return "Make " + line.file() + " one line again.";
        } else if (remedy instanceof Remedy.CopyAgain) {
            return "Copy the card again, or write the image to it again: this one ends too early.";
        } else if (remedy instanceof Remedy.WriteAnew) {
            return "Save what can be saved from the system on the card, then write the card anew.";
        } else if (remedy instanceof Remedy.OtherBoard) {
            return "Take a card that is made for this board.";
        } else if (remedy instanceof Remedy.ShowWholeCard) {
            return "Unmount the card and name its reader's device or an image of it: a mounted folder does not show the "
                    + "other partitions.";
        }
        throw new IllegalStateException("no words for " + remedy);
    }

    private String command(String name) {
        return "bootmend " + name + " " + card;
    }
}
