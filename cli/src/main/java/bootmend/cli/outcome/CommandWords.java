package bootmend.cli.outcome;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.StepWords;
import bootmend.config.VisibleText;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Says next steps as commands and options. */
public final class CommandWords implements StepWords {

    /** Names that every shell takes as they are, so that a command with one can be copied. */
    private static final Pattern PLAIN = Pattern.compile("[A-Za-z0-9./_][A-Za-z0-9./_-]*");

    private final String card;

    private CommandWords(String card) {
        this.card = card;
    }

    /** Where the card that it is about is not known. */
    public static CommandWords withoutCard() {
        return new CommandWords("");
    }

    /** @param card as the user named it; empty where it is about none */
    public static CommandWords about(String card) {
        return new CommandWords(card);
    }

    /** What to do about an error, safe to print. */
    @Override
    public String remedy(CardException error) {
        return VisibleText.of(StepWords.super.remedy(error));
    }

    @Override
    public String plain(NextStep.Plain step) {
        return switch (step) {
            case REPAIR_CARD -> "Run " + command("repair") + ", which shows first what it would do.";
            case SHOW_CARD -> "Look at the card with " + command("show") + ".";
            case RESET_CARD -> command("reset") + " brings any card to stock.";
            case LIST_CARDS -> "`bootmend cards` lists the cards in readers.";
            case LIST_CHANGES -> command("history") + " lists the changes.";
            case LIST_EARLIER -> command("earlier") + " lists what the card had before.";
            case STAGE_SETTINGS -> "Stage some with `bootmend trial stage`.";
            case GIVE_SETTINGS -> "Name settings, such as --set arm_freq=1850.";
            case NAME_FILES -> "Name files with --file, such as --file kernel8.img.";
            case ADD_TRIAL -> "Begin with `bootmend trial add`.";
            case LIST_TRIALS -> "See `bootmend trial list`.";
            case LIST_DELETED_TRIALS -> "See `bootmend trial list --deleted`.";
            case GIVE_TRIAL_DETAILS -> "See `bootmend trial add --help`.";
            case LIST_PROFILES -> "See `bootmend profile list`.";
            case GIVE_BOARD -> "Name the board with --board, such as --board pi4.";
            case GIVE_BOARD_DETAILS -> "More about the board can be said with --revision and --pin.";
            case GIVE_CLOCK -> "Give the clock in MHz, such as --clock 2000.";
            case GIVE_AMBIENT -> "Give the air's temperature in degC, such as --ambient 22.";
            case TAKE_OTHER_PARTITION -> "Try it on the other boot partition, with --partition.";
            case LEAVE_PARTITION_OUT -> "Leave --partition out; the boot partition is found without it.";
            case TAKE_OTHER_LOG -> "Name another file with --log.";
            case SET_DATA_FOLDER -> "The data folder is named with BOOTMEND_HOME.";
            case SET_LIBRARY_FOLDER -> "Java is given that folder with -Djna.tmpdir=FOLDER.";
            case DO_AGAIN -> "Give the command again for the cards that were not started.";
            case NAME_RECORD ->
                "If you know which of them is this card's, name it: " + command("recover --record ID")
                        + "; one whose card is gone is put away with `bootmend recover --forget ID`.";
        };
    }

    @Override
    public String allow(NextStep.Allow step) {
        return switch (step) {
            case IN_PLACE -> "With --in-place the risk is accepted.";
            case OTHER_BOARD -> "With --other-board it is put there all the same.";
            case BLOCKERS -> "With --despite-blockers it is done all the same.";
            case CONTRADICTED -> "With --note it is kept, undecided.";
            case REPLACE -> "With --replace it takes the place of what is there.";
            case FIXED_DISK -> "If you are sure, add --fixed-disk.";
        };
    }

    @Override
    public String recoverCard(NextStep.RecoverCard step) {
        return "Run " + command("recover")
                + step.record()
                        .map(record -> "; the undo record is " + VisibleText.of(record) + ".")
                        .orElse(".");
    }

    @Override
    public String givePartition(NextStep.GivePartition step) {
        return "Choose one with "
                + step.numbers().stream().map(number -> "--partition " + number).collect(Collectors.joining(" or "))
                + ".";
    }

    @Override
    public String giveSetting(NextStep.GiveSetting step) {
        return "Say it with --set " + VisibleText.of(step.key()) + "=NUMBER.";
    }

    @Override
    public String unpackImage(NextStep.UnpackImage step) {
        String unpacker =
                switch (step.packing()) {
                    case GZIP -> "gzip -dk";
                    case XZ -> "xz -dk";
                    case ZSTD -> "zstd -d";
                    case ZIP -> "unzip";
                };
        return "Unpack it with `" + unpacker + " " + VisibleText.of(step.file())
                + "` and use the image that comes of it.";
    }

    private String command(String name) {
        return PLAIN.matcher(card).matches()
                ? "`bootmend " + name + " " + card + "`"
                : "`bootmend " + name + "` on the card";
    }
}
