package bootmend.cli.card;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.cli.json.EarlierJson;
import bootmend.cli.option.CardArgument;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.cli.run.Question;
import bootmend.cli.run.StopSignal;
import bootmend.cli.text.EarlierPage;
import bootmend.cli.text.SearchBar;
import bootmend.config.VisibleText;
import bootmend.earlier.SearchProgress;
import bootmend.request.BoardRequest;
import bootmend.view.EarlierJob;
import bootmend.view.EarlierVersionView;
import bootmend.view.EarlierView;
import bootmend.workplace.Workplace;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code bootmend earlier}: what the config file was before, as far as it still stands on the card. */
@Command(
        name = "earlier",
        header = "What the card's config file was before.",
        mixinStandardHelpOptions = true,
        description =
                "Looks for earlier versions of the config file: copies that editors left, deleted files, free clusters, and "
                        + "the undo records of this computer; the newest first, with what each tuned and how that differs "
                        + "from now. Nothing is written. Ctrl-C ends the search and shows what was found so far. "
                        + "`bootmend reset --to-earlier N` puts one back.",
        footer = {
            "",
            "Examples:",
            "  bootmend earlier lab-07.img",
            "  bootmend earlier lab-07.img --text 2",
            "  bootmend reset lab-07.img --to-earlier 2"
        })
public final class EarlierCommand implements Callable<Integer> {

    private static final int FEWEST_OF_HASH = 6;

    private final Workplace workplace;
    private final Question question;

    @Mixin
    private CardArgument card;

    @Option(
            names = "--board",
            paramLabel = "B",
            description = "Ask only the trials and profiles of this board, such as pi4, for settings that held.")
    private String board;

    @Option(
            names = "--near",
            description = "Leave it at what is found at once: copies, deleted files, and free clusters near the config "
                    + "file.")
    private boolean near;

    @Option(names = "--all", description = "List every version; otherwise the newest twenty.")
    private boolean all;

    @Option(
            names = "--text",
            paramLabel = "N",
            description = "Print the text of one version, by its number or the beginning of its sha256.")
    private String text;

    @Spec
    private CommandSpec spec;

    public EarlierCommand(Workplace workplace, Question question) {
        this.workplace = workplace;
        this.question = question;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), card);
        return answer.of(() -> {
            EarlierView view = search();
            if (text != null) {
                print(one(view));
            } else if (card.json()) {
                answer.json(EarlierJson.of(view));
            } else {
                new EarlierPage(answer.screen(), card.name()).print(view, all);
            }
            return ExitCode.DONE;
        });
    }

    private EarlierView search() throws CardException {
        BoardRequest about = board == null ? BoardRequest.none() : BoardRequest.of(board);
        EarlierJob job = new EarlierJob(workplace);
        if (near) {
            return job.run(card.request(), about, SearchProgress.AT_ONCE);
        }
        try (StopSignal stop = new StopSignal();
                SearchBar bar = question.canAsk() && !card.json()
                        ? SearchBar.onTerminal(spec.commandLine().getErr())
                        : SearchBar.none()) {
            return job.run(card.request(), about, (done, free) -> {
                bar.at(done, free);
                return stop.pause(0);
            });
        }
    }

    private EarlierVersionView one(EarlierView view) throws CardException {
        String which = text.strip().toLowerCase(Locale.ROOT);
        return view.versions().stream()
                .filter(version -> Integer.toString(version.n()).equals(which)
                        || which.length() >= FEWEST_OF_HASH && version.sha256().startsWith(which))
                .findFirst()
                .orElseThrow(() -> CardException.usage(
                        "no earlier version is found under \"" + VisibleText.of(text) + "\"",
                        "",
                        NextStep.Plain.LIST_EARLIER));
    }

    private void print(EarlierVersionView version) {
        version.lines().forEach(spec.commandLine().getOut()::println);
        spec.commandLine().getOut().flush();
    }
}
