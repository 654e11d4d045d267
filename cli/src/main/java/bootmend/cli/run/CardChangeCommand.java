package bootmend.cli.run;

import bootmend.cli.option.CardArgument;
import bootmend.cli.option.ChangeOptions;
import bootmend.operation.ChangeOrder;
import bootmend.workplace.Workplace;
import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** What the commands that change one card have in common. */
public abstract class CardChangeCommand implements Callable<Integer> {

    private final Workplace workplace;
    private final Question question;

    @Mixin
    private CardArgument card;

    @Mixin
    private ChangeOptions options;

    @Spec
    private CommandSpec spec;

    public CardChangeCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    public final CardArgument card() {
        return card;
    }

    public final ChangeOptions options() {
        return options;
    }

    public final Answer answer() {
        return new Answer(spec.commandLine(), card);
    }

    /** @param nothing what to say where there is nothing to change */
    public final int change(ChangeOrder order, String nothing) {
        return new ChangeRun(answer(), card, options, question, nothing).run(options.on(workplace), order);
    }
}
