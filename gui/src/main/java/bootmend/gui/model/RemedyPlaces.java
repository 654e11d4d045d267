package bootmend.gui.model;

import bootmend.boot.Remedy;
import bootmend.config.ConfigName;
import bootmend.gui.text.Words;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import java.util.Optional;

/** What repairs the first broken link of a boot chain, said with the window's own places. */
public final class RemedyPlaces {

    private final Words words;

    public RemedyPlaces(Words words) {
        this.words = words;
    }

    /** The remedy in a sentence or two; names from the card are still to be made visible. */
    public String of(Remedy remedy) {
        if (remedy instanceof Remedy.RepairCard) {
            return words.of("remedy.repair");
        } else if (remedy instanceof Remedy.ResetSettings) {
            return words.of("remedy.reset");
        } else if (remedy instanceof Remedy.RenameFile rename) {
            return words.of("remedy.rename", rename.from(), rename.to());
        } else if (remedy instanceof Remedy.SavePlain) {
            return words.of("remedy.plain");
        } else if (remedy instanceof Remedy.PutFiles files) {
            return words.of("remedy.put", String.join(", ", files.files()));
        } else if (remedy instanceof Remedy.RemoveFiles files) {
            return words.of("remedy.remove", String.join(", ", files.files()));
        } else if (remedy instanceof Remedy.CorrectLine line) {
            return words.of("remedy.line", String.valueOf(line.line()), line.file());
        } else if (remedy instanceof Remedy.SetKey key) {
            return words.of("remedy.key", key.key() + "=" + key.value(), ConfigName.NAME);
        } else if (remedy instanceof Remedy.FitRoot root) {
            return root.root().isEmpty()
                    ? words.of("remedy.root", root.file())
                    : words.of("remedy.root.fits", root.file(), "root=" + root.root());
        } else if (remedy instanceof Remedy.OneLine line) {
            return words.of("remedy.oneline", line.file());
        } else if (remedy instanceof Remedy.CopyAgain) {
            return words.of("remedy.copy");
        } else if (remedy instanceof Remedy.WriteAnew) {
            return words.of("remedy.anew");
        } else if (remedy instanceof Remedy.OtherBoard) {
            return words.of("remedy.board");
        } else if (remedy instanceof Remedy.ShowWholeCard) {
            return words.of("remedy.whole");
        }
        throw new IllegalStateException("no words for " + remedy);
    }

    /** The change that carries the remedy out, where there is one. */
    public static Optional<ChangeOrder> order(Remedy remedy) {
        if (remedy instanceof Remedy.RepairCard
                || remedy instanceof Remedy.SavePlain
                || remedy instanceof Remedy.RenameFile rename && rename.to().equals(ConfigName.NAME)) {
            return Optional.of(ChangeOrder.of(ChangeRequest.Repair.PLAIN));
        }
        return remedy instanceof Remedy.ResetSettings
                ? Optional.of(ChangeOrder.of(ChangeRequest.ToStock.PLAIN))
                : Optional.empty();
    }
}
