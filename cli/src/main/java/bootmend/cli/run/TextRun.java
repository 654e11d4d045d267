package bootmend.cli.run;

import bootmend.cli.json.ChangeJson;
import bootmend.cli.option.CardArgument;
import bootmend.cli.option.ChangeOptions;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.text.Screen;
import bootmend.operation.ChangeOperation;
import bootmend.operation.ChangeOrder;
import bootmend.workplace.Workplace;
import java.io.PrintStream;
import picocli.CommandLine;

/** Gives what a change makes of a config file on standard output, byte for byte; what it changed is told beside it. */
final class TextRun {

    private final CommandLine line;
    private final CardArgument card;
    private final ChangeOptions options;

    TextRun(CommandLine line, CardArgument card, ChangeOptions options) {
        this.line = line;
        this.card = card;
        this.options = options;
    }

    /** The exit code. */
    int run(Workplace workplace, ChangeOrder order) {
        Answer answer = new Answer(line, card);
        return answer.of(() -> {
            ChangeOperation.TextChange made = new ChangeOperation(workplace).workOutText(card.request(), order);
            if (card.json()) {
                answer.json(ChangeJson.of(made.change().leave()));
                return ExitCode.DONE;
            }
            new ChangePreview(options.dryRun() ? answer.screen() : beside()).content(made.change());
            if (!options.dryRun()) {
                PrintStream out = System.out;
                out.write(made.text(), 0, made.text().length);
                out.flush();
            }
            return ExitCode.DONE;
        });
    }

    private Screen beside() {
        return new Screen(line.getErr(), line.getColorScheme().ansi());
    }
}
