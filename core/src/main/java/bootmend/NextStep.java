package bootmend;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** A thing that a user can do next; a closed set, which each front end puts into words of its own through {@link StepWords}. */
public sealed interface NextStep
        permits NextStep.Plain,
                NextStep.Allow,
                NextStep.RecoverCard,
                NextStep.GivePartition,
                NextStep.GiveSetting,
                NextStep.UnpackImage {

    /** The step as these words say it. */
    String in(StepWords words);

    /** The steps that need no value. */
    enum Plain implements NextStep {
        /** Have damage to the card repaired. */
        REPAIR_CARD,
        /** Look at what is on the card. */
        SHOW_CARD,
        /** Put the card back to stock. */
        RESET_CARD,
        /** See which cards are in readers, and which disks are there besides. */
        LIST_CARDS,
        /** See the changes that were made to the card. */
        LIST_CHANGES,
        /** See what the card's config file was before. */
        LIST_EARLIER,
        /** Put settings on the card for one start. */
        STAGE_SETTINGS,
        /** Name settings, each a key of the config file with its value. */
        GIVE_SETTINGS,
        /** Name the files that are meant. */
        NAME_FILES,
        /** Record a trial. */
        ADD_TRIAL,
        /** See the trials that are kept. */
        LIST_TRIALS,
        /** See the trials that were deleted. */
        LIST_DELETED_TRIALS,
        /** See what can be said of a trial. */
        GIVE_TRIAL_DETAILS,
        /** See the profiles that are kept. */
        LIST_PROFILES,
        /** Say which kind of board it is. */
        GIVE_BOARD,
        /** Say more about the board: its revision code, the levels of its pins. */
        GIVE_BOARD_DETAILS,
        /** Say at which clock in MHz the board ran. */
        GIVE_CLOCK,
        /** Say how warm the air was, in degC. */
        GIVE_AMBIENT,
        /** Do it on the card's other boot partition. */
        TAKE_OTHER_PARTITION,
        /** Name no partition, so that the one that boots is found. */
        LEAVE_PARTITION_OUT,
        /** Have the log written to another file. */
        TAKE_OTHER_LOG,
        /** Have the data kept in another folder. */
        SET_DATA_FOLDER,
        /** Let the helper libraries be unpacked to another folder. */
        SET_LIBRARY_FOLDER,
        /** Do the same on the same cards again; those that are done stay as they are. */
        DO_AGAIN,
        /** Say which undo record is this card's, or put one away whose card is gone. */
        NAME_RECORD;

        @Override
        public String in(StepWords words) {
            return words.plain(this);
        }
    }

    /** Allows what was refused because of a risk; upon that the same work is done. */
    enum Allow implements NextStep {
        /** A file on a full card is overwritten where it stands: a cut in the middle leaves it half old, half new. */
        IN_PLACE,
        /** What one board takes goes on a card for another. */
        OTHER_BOARD,
        /** Settings go on a card although a check finds a blocker in them. */
        BLOCKERS,
        /** A trial is kept, undecided, although its log contradicts it. */
        CONTRADICTED,
        /** What is kept under a name goes for what is kept there now. */
        REPLACE,
        /** A disk that does not look like a card that can be taken out is changed. */
        FIXED_DISK;

        @Override
        public String in(StepWords words) {
            return words.allow(this);
        }
    }

    /**
     * Bring an interrupted change to an end.
     *
     * @param record the undo record's file, as text, not yet safe to show; empty where that is not known
     */
    record RecoverCard(Optional<String> record) implements NextStep {

        /** With an undo record that is not known here. */
        public static final RecoverCard NO_RECORD = new RecoverCard(Optional.empty());

        public RecoverCard {
            Objects.requireNonNull(record);
        }

        public static RecoverCard of(Path record) {
            return new RecoverCard(Optional.of(record.toString()));
        }

        @Override
        public String in(StepWords words) {
            return words.recoverCard(this);
        }
    }

    /**
     * Say which partition is meant.
     *
     * @param numbers those there are, at least one
     */
    record GivePartition(List<Integer> numbers) implements NextStep {

        public GivePartition {
            numbers = List.copyOf(numbers);
            if (numbers.isEmpty()) {
                throw new IllegalArgumentException("there is no partition to give");
            }
        }

        @Override
        public String in(StepWords words) {
            return words.givePartition(this);
        }
    }

    /**
     * Say what a setting was.
     *
     * @param key the config file's key
     */
    record GiveSetting(String key) implements NextStep {

        public GiveSetting {
            Objects.requireNonNull(key);
        }

        @Override
        public String in(StepWords words) {
            return words.giveSetting(this);
        }
    }

    /**
     * Unpack a packed image, and use what comes of it.
     *
     * @param file the packed file's name without its folder; not yet safe to show
     */
    record UnpackImage(Packing packing, String file) implements NextStep {

        /** How an image is packed. */
        public enum Packing {
            GZIP,
            XZ,
            ZSTD,
            ZIP
        }

        public UnpackImage {
            Objects.requireNonNull(packing);
            Objects.requireNonNull(file);
        }

        @Override
        public String in(StepWords words) {
            return words.unpackImage(this);
        }
    }
}
