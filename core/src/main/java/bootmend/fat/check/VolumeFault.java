package bootmend.fat.check;

import bootmend.Sentence;
import bootmend.finding.Finding;
import bootmend.finding.Fix;
import bootmend.finding.Place;
import bootmend.finding.Purpose;
import bootmend.finding.Rule;
import bootmend.finding.Severity;
import java.util.Map;

/** The kinds of damage that a full look at a volume finds; how heavy each is, is this project's own judgement. */
enum VolumeFault {
    BOOT_SECTOR("boot-sector-damaged", Weight.HURT, Fix.REPAIR, "a board or a computer may not find the volume at all"),
    BOOT_BACKUP(
            "boot-backup-damaged",
            Weight.SIGN,
            Fix.REPAIR,
            "nothing could take the place of the boot sector if that were hurt"),
    BEYOND_BELIEF(
            "beyond-belief",
            Weight.HURT,
            Fix.NOTHING,
            "the boot sector may describe another volume than this, so no file is touched"),
    IMAGE_CUT_OFF(
            "image-cut-off",
            Weight.HURT,
            Fix.OTHER_FILE,
            "what lay behind the end is not in this image; read the card into an image again"),
    FAT_COPIES("fat-copies-differ", Weight.HURT, Fix.REPAIR, "one system may read files whole that another reads torn"),
    FAT_MARKS("fat-marks-wrong", Weight.SIGN, Fix.REPAIR, "a system may take the FAT for one of another volume"),
    FS_INFO("fs-info-damaged", Weight.SIGN, Fix.REPAIR, "systems that trust it may fill the volume wrongly"),
    IN_USE("dirty-mark", Weight.SIGN, Fix.REPAIR, "the card was pulled, or the board hung, with the volume in use"),
    HARD_ERROR(
            "hard-error-mark",
            Weight.SIGN,
            Fix.REPAIR,
            "a system met a read or write error; the card may be wearing out"),
    CHAIN_LOOPS("chain-loops", Weight.HURT, Fix.REPAIR, "a reader that does not count never comes to its end"),
    CHAIN_INTO_FREE(
            "chain-into-free",
            Weight.HURT,
            Fix.REPAIR,
            "what came after is not its own any more, so it ends there and is to be copied onto the card again"),
    CHAIN_INTO_BAD(
            "chain-into-bad",
            Weight.HURT,
            Fix.REPAIR,
            "what came after cannot be read, so it ends there and is to be copied onto the card again"),
    CHAIN_OUTSIDE(
            "chain-outside",
            Weight.HURT,
            Fix.REPAIR,
            "what came after is not known any more, so it ends there and is to be copied onto the card again"),
    CROSS_LINKED(
            "cross-linked",
            Weight.HURT,
            Fix.OTHER_FILE,
            "which of them the shared clusters belong to cannot be told, so both are left alone"),
    CHAIN_SHORT(
            "chain-shorter-than-size",
            Weight.HURT,
            Fix.REPAIR,
            "what is missing is not known any more, so it ends there and may have to be copied onto the card again"),
    CHAIN_LONG("chain-longer-than-size", Weight.SIGN, Fix.REPAIR, "the clusters behind its end are of no use to it"),
    NO_CHAIN(
            "size-without-chain",
            Weight.HURT,
            Fix.REPAIR,
            "nothing of its content can be found from here, so it is empty and is to be copied onto the card again"),
    NO_SIZE("chain-without-size", Weight.SIGN, Fix.REPAIR, "it reads as empty though it has content"),
    LOST_CLUSTERS(
            "lost-clusters",
            Weight.SIGN,
            Fix.DECISION,
            "they hold room, and perhaps pieces of files that are gone from their folders"),
    ORPHANED_LONG_NAMES(
            "orphaned-long-names",
            Weight.SIGN,
            Fix.REPAIR,
            "they do no harm, but a system without long names left them behind"),
    DUPLICATE_NAMES(
            "duplicate-names",
            Weight.HURT,
            Fix.NOTHING,
            "which of them is read differs from system to system, so they are left alone"),
    BAD_ENTRY(
            "bad-entry",
            Weight.HURT,
            Fix.NOTHING,
            "it may be noise, so it is left alone and with it whatever it shares clusters with"),
    FOLDER_LOST("folder-unreadable", Weight.HURT, Fix.OTHER_FILE, "the files it held are not listed any more"),
    FOLDER_DOTS("folder-dots-wrong", Weight.SIGN, Fix.NOTHING, "it may have been another folder before"),
    FOLDER_SIZE(
            "folder-with-size",
            Weight.SIGN,
            Fix.REPAIR,
            "a folder's entry gives no size; some systems refuse such a folder"),
    TOO_LARGE("too-large-to-check", Weight.SIGN, Fix.NOTHING, "what lies beyond was not looked at");

    private final Rule rule;

    /** @param meaning a clause on what follows from it */
    VolumeFault(String id, Weight weight, Fix fix, String meaning) {
        this.rule = Rule.of(id, weight.severities, fix, Sentence.of(meaning));
    }

    private enum Weight {
        /** Content may be lost or wrong where it is found. */
        HURT(Severity.BLOCKER, Severity.WARNING),
        /** A sign only, or repaired without a loss. */
        SIGN(Severity.WARNING, Severity.NOTE);

        private final Map<Purpose, Severity> severities;

        Weight(Severity others, Severity stabilityRun) {
            this.severities =
                    Map.of(Purpose.SHIP, others, Purpose.FIRMWARE_UPDATE, others, Purpose.STABILITY_RUN, stabilityRun);
        }
    }

    Rule rule() {
        return rule;
    }

    /** @param what a clause on what was found there */
    Finding at(Place where, String what) {
        return Finding.of(rule, where, Sentence.of(what));
    }

    boolean isKindOf(Finding finding) {
        return finding.rule().equals(rule);
    }
}
