package bootmend.gui.model;

import bootmend.NextStep;
import bootmend.StepWords;
import bootmend.config.VisibleText;
import bootmend.gui.text.Words;
import java.util.Locale;
import java.util.stream.Collectors;

/** Says next steps as places in the window. */
public final class StepPlaces implements StepWords {

    private final Words words;

    public StepPlaces(Words words) {
        this.words = words;
    }

    @Override
    public String plain(NextStep.Plain step) {
        return switch (step) {
            case REPAIR_CARD -> words.of("step.repair");
            case SHOW_CARD -> words.of("step.show");
            case RESET_CARD -> words.of("step.reset");
            case LIST_CARDS -> words.of("step.cards");
            case LIST_CHANGES -> words.of("step.changes");
            case LIST_EARLIER -> words.of("step.earlier");
            case STAGE_SETTINGS -> words.of("step.stage");
            case GIVE_SETTINGS -> words.of("step.settings");
            case NAME_FILES -> words.of("step.files");
            case ADD_TRIAL -> words.of("step.addtrial");
            case LIST_TRIALS -> words.of("step.trials");
            case LIST_DELETED_TRIALS -> words.of("step.deletedtrials");
            case GIVE_TRIAL_DETAILS -> words.of("step.details");
            case LIST_PROFILES -> words.of("step.profiles");
            case GIVE_BOARD -> words.of("step.board");
            case GIVE_BOARD_DETAILS -> words.of("step.boarddetails");
            case GIVE_CLOCK -> words.of("step.clock");
            case GIVE_AMBIENT -> words.of("step.air");
            case TAKE_OTHER_PARTITION -> words.of("step.otherpartition");
            case LEAVE_PARTITION_OUT -> words.of("step.partitionout");
            case TAKE_OTHER_LOG -> words.of("step.otherlog");
            case SET_DATA_FOLDER -> words.of("step.datafolder");
            case SET_LIBRARY_FOLDER -> words.of("step.libraryfolder");
            case DO_AGAIN -> words.of("step.again");
            case NAME_RECORD -> words.of("step.record");
        };
    }

    @Override
    public String allow(NextStep.Allow step) {
        return switch (step) {
            case IN_PLACE -> words.of("allow.inplace");
            case OTHER_BOARD -> words.of("allow.otherboard");
            case BLOCKERS -> words.of("allow.blockers");
            case CONTRADICTED -> words.of("allow.contradicted");
            case REPLACE -> words.of("allow.replace");
            case FIXED_DISK -> words.of("allow.fixeddisk");
        };
    }

    @Override
    public String recoverCard(NextStep.RecoverCard step) {
        return step.record()
                .map(record -> words.of("step.recover.record", VisibleText.of(record)))
                .orElseGet(() -> words.of("step.recover"));
    }

    @Override
    public String givePartition(NextStep.GivePartition step) {
        return words.of(
                "step.partition", step.numbers().stream().map(String::valueOf).collect(Collectors.joining(", ")));
    }

    @Override
    public String giveSetting(NextStep.GiveSetting step) {
        return words.of("step.setting", VisibleText.of(step.key()));
    }

    @Override
    public String unpackImage(NextStep.UnpackImage step) {
        return words.of(
                "step.unpack",
                VisibleText.of(step.file()),
                step.packing().name().toLowerCase(Locale.ROOT));
    }
}
