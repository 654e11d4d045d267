package bootmend;

/** Says next steps as what they are called in the sources, for tests of core, which has no words for them. */
public final class StepNames implements StepWords {

    @Override
    public String plain(NextStep.Plain step) {
        return "<" + step + ">.";
    }

    @Override
    public String allow(NextStep.Allow step) {
        return "<" + step + ">.";
    }

    @Override
    public String recoverCard(NextStep.RecoverCard step) {
        return "<" + step + ">.";
    }

    @Override
    public String givePartition(NextStep.GivePartition step) {
        return "<" + step + ">.";
    }

    @Override
    public String giveSetting(NextStep.GiveSetting step) {
        return "<" + step + ">.";
    }

    @Override
    public String unpackImage(NextStep.UnpackImage step) {
        return "<" + step + ">.";
    }
}
