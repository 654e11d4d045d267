package bootmend.cli.card;

import bootmend.CardException;
import bootmend.batch.CardNames;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.Verdict;
import bootmend.cli.json.DiagnoseJson;
import bootmend.cli.json.ErrorJson;
import bootmend.cli.option.BoardOptions;
import bootmend.cli.option.CardsArgument;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.cli.text.DiagnosisPage;
import bootmend.cli.text.ErrorWords;
import bootmend.view.DiagnoseJob;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code bootmend diagnose}: why a card does not boot. */
@Command(
        name = "diagnose",
        header = "Say why a card does not boot, and what to do.",
        mixinStandardHelpOptions = true,
        description =
                "Follows what a board needs from the card, link by link: partition, boot firmware, config file, kernel, "
                        + "device tree, overlays, early file system, command line, root. Says where it stops, what that most "
                        + "likely came from, and what repairs it. Writes nothing. Without --board it does so for each board that "
                        + "the card can be meant for.",
        footer = {
            "",
            "Exit code 0 where some board gets through as far as the card can tell, 1 where each one stops.",
            "",
            "Examples:",
            "  bootmend diagnose lab-07.img",
            "  bootmend diagnose --board pi4 --json lab-07.img"
        })
public final class DiagnoseCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Mixin
    private CardsArgument argument;

    @Mixin
    private BoardOptions board;

    @Spec
    private CommandSpec spec;

    private Optional<BootDiagnosis> last = Optional.empty();

    public DiagnoseCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() throws CardException {
        List<Path> cards = argument.cards(new CardNames(true));
        Answer answer = new Answer(spec.commandLine(), argument.json());
        return answer.of(() -> {
            List<Object> documents = new ArrayList<>();
            int worst = ExitCode.DONE;
            for (Path card : cards) {
                worst = Math.max(worst, one(card, answer, documents, cards.size() == 1));
            }
            if (argument.json()) {
                answer.json(documents.size() == 1 ? documents.get(0) : Map.of("cards", documents));
            }
            last.ifPresent(diagnosis -> DiagnosisPage.notTold(answer.screen(), diagnosis));
            return worst;
        });
    }

    private int one(Path card, Answer answer, List<Object> documents, boolean alone) throws CardException {
        try {
            BootDiagnosis diagnosis = new DiagnoseJob(workplace).run(argument.request(card), board.request());
            if (argument.json()) {
                documents.add(DiagnoseJson.of(card.toString(), diagnosis));
            } else {
                if (last.isPresent()) {
                    answer.screen().blank();
                }
                new DiagnosisPage(answer.screen(), card.toString()).print(diagnosis);
                last = Optional.of(diagnosis);
            }
            boolean stops =
                    diagnosis.boards().stream().allMatch(each -> each.chain().verdict() instanceof Verdict.Stops);
            return stops ? ExitCode.BLOCKER : ExitCode.DONE;
        } catch (CardException e) {
            if (alone) {
                throw e;
            }
            documents.add(ErrorJson.of(card.toString(), e));
            return new ErrorWords(spec.commandLine().getErr()).tell(card.toString(), e);
        }
    }
}
