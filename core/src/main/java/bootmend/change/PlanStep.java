package bootmend.change;

import bootmend.fat.SectorChange;
import java.util.List;
import java.util.Objects;

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
        IN_PLACE("overwrite the content in place"),
        /** The boot sector or its backup is written from the other. */
        REPAIR_BOOT_SECTOR("repair the boot sector"),
        /** The FAT copies are made equal to the better one. */
        REPAIR_FAT("make the FAT copies equal"),
        /** Chains, sizes and folders are made to agree. */
        REPAIR_FILES("repair files and folders"),
        /** Clusters of no file are marked free. */
        FREE_LOST("free lost clusters"),
        /** FSInfo is put right. */
        REPAIR_FS_INFO("count the free clusters anew"),
        /** A file gets another name. */
        RENAME("give the config file its name"),
        /** The marks of a volume in use or with errors are taken away. */
        MARK_CLEAN("mark the volume as put away in order");

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
        Objects.requireNonNull(kind);
        changes = List.copyOf(changes);
    }

    PlanStep reversed() {
        return new PlanStep(
                kind.reversed(), changes.stream().map(SectorChange::reversed).toList());
    }
}
