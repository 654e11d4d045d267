package bootmend.change;

import bootmend.fat.SectorChange;
import java.util.List;

/** Sectors that are written in one go and forced together before the next step begins. */
public record PlanStep(Kind kind, List<SectorChange> changes) {

    /** What a step is for. */
    public enum Kind {
        /** Nothing that the card's files use is touched yet. */
        PREPARE("write the new content beside the old"),
        /** From here on the new content counts. */
        COMMIT("switch over to the new content"),
        /** What is no longer used is released. */
        CLEAN_UP("release the old content"),
        /** The content is overwritten where it stands; only the undo record can bring it back. */
        IN_PLACE("overwrite the content where it stands"),
        /** A damage of the file system is mended. */
        MEND("mend the file system"),
        /** A file gets another name. */
        RENAME("give the config file its name");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        Kind reversed() {
            return switch (this) {
                case PREPARE -> CLEAN_UP;
                case CLEAN_UP -> PREPARE;
                default -> this;
            };
        }
    }

    public PlanStep {
        changes = List.copyOf(changes);
    }

    PlanStep reversed() {
        return new PlanStep(kind.reversed(), changes.stream().map(SectorChange::reversed).toList());
    }
}
