package bootmend.cli.card;

import bootmend.cli.CommandLines;
import bootmend.cli.json.JsonText;
import bootmend.cli.outcome.ExitCode;
import bootmend.fixtures.DemoCard;
import bootmend.fixtures.DemoCards;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend demo}: cards to try everything on, and the main job walked on one of them. */
@Command(
        name = "demo",
        header = "Cards to try everything on.",
        mixinStandardHelpOptions = true,
        description =
                "Makes demo cards, real in shape with invented content, and walks the main job on one: show, reset, "
                        + "show. Needs no card, no reader, no special rights and no network.",
        footer = {"", "Example:", "  bootmend demo bench"})
public final class DemoCommand implements Callable<Integer> {

    @Parameters(
            arity = "0..1",
            paramLabel = "DIR",
            defaultValue = "bootmend-demo",
            description = "Folder for the cards, made where it is missing (default: ${DEFAULT-VALUE}).")
    private Path folder;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    @Spec
    private CommandSpec spec;

    /** The demo as a JSON document. */
    record DemoJson(String folder, List<CardJson> cards, List<StepJson> steps) {

        /** One card that was made. */
        record CardJson(String card, String story, boolean tuned) {}

        /** One command of the walk; {@code answer} is what it printed. */
        record StepJson(String command, int exitCode, String answer) {}
    }

    @Override
    public Integer call() throws IOException {
        PrintWriter words =
                json ? spec.commandLine().getErr() : spec.commandLine().getOut();
        List<DemoCard> cards = DemoCards.all();
        for (DemoCard card : cards) {
            if (Files.exists(folder.resolve(card.fileName()))) {
                spec.commandLine()
                        .getErr()
                        .println("bootmend: " + folder.resolve(card.fileName())
                                + " is there already and was left alone. Name another folder, or delete that one.");
                return ExitCode.REFUSED;
            }
        }
        DemoCards.writeAll(folder);
        words.println("Demo cards in " + folder + " (a school's robotics lab, all invented):");
        cards.forEach(card -> words.printf("  %-28s %s%n", card.fileName(), card.story()));
        List<DemoJson.StepJson> steps =
                walk(words, cards.stream().filter(DemoCard::tuned).findFirst().orElseThrow());
        words.println();
        words.println("Their undo records are in " + records() + ". To go on by yourself:");
        words.println("  export BOOTMEND_HOME=" + records());
        if (json) {
            List<DemoJson.CardJson> made = cards.stream()
                    .map(card -> new DemoJson.CardJson(
                            folder.resolve(card.fileName()).toString(), card.story(), card.tuned()))
                    .toList();
            spec.commandLine().getOut().println(JsonText.of(new DemoJson(folder.toString(), made, steps)));
        }
        return steps.stream().mapToInt(DemoJson.StepJson::exitCode).max().orElse(ExitCode.DONE);
    }

    private List<DemoJson.StepJson> walk(PrintWriter words, DemoCard card) {
        String path = folder.resolve(card.fileName()).toString();
        List<DemoJson.StepJson> steps = new ArrayList<>();
        for (List<String> command :
                List.of(List.of("show", path), List.of("reset", "--yes", path), List.of("show", path))) {
            words.println();
            words.println("> bootmend " + String.join(" ", command));
            String[] arguments = command.toArray(String[]::new);
            StringWriter answer = new StringWriter();
            PrintWriter out = new PrintWriter(answer, true);
            CommandLine line = CommandLines.createFor(arguments, Workplace.ofThisComputer(records()), null, out, out);
            line.setColorScheme(spec.commandLine().getColorScheme());
            int code = line.execute(arguments);
            words.print(answer);
            steps.add(new DemoJson.StepJson("bootmend " + String.join(" ", command), code, answer.toString()));
        }
        return steps;
    }

    /** The demo keeps its undo records beside its cards, so that it leaves nothing in the user's own. */
    private Path records() {
        return folder.resolve("records");
    }
}
