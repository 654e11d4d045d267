package bootmend.cli.card;

import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.cli.text.Screen;
import bootmend.view.BoardJob;
import bootmend.view.RevisionView;
import bootmend.workplace.Workplace;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend board}: what a revision code says. */
@Command(
        name = "board",
        header = "A board's revision code decoded.",
        mixinStandardHelpOptions = true,
        description = "Decodes a board's revision code: which board it is, its chip and memory, and whether its "
                + "warranty bit is set.",
        footer = {"", "Example:", "  bootmend board c03111"})
public final class BoardCommand implements Callable<Integer> {

    private static final int NAME_WIDTH = 14;
    private static final int MEGABYTES = 1024;

    private final Workplace workplace;

    @Parameters(paramLabel = "REVISION", description = "The revision code, in hexadecimal as the board prints it.")
    private String code;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    @Spec
    private CommandSpec spec;

    /** A decoded code as a JSON document; null is what the code does not tell or bootmend does not know. */
    record RevisionJson(
            String code,
            String style,
            String board,
            String type,
            String revision,
            String chip,
            Integer memoryMegabytes,
            Integer maker,
            boolean warrantyVoid,
            String warranty,
            List<String> barred,
            String unknownBits,
            List<String> sources) {

        static RevisionJson of(RevisionView view) {
            return new RevisionJson(
                    view.code(),
                    view.style(),
                    view.board().orElse(null),
                    view.type().orElse(null),
                    view.revision(),
                    view.chip().orElse(null),
                    boxed(view.memoryMegabytes()),
                    boxed(view.maker()),
                    view.warrantyVoid(),
                    view.warranty(),
                    view.barred(),
                    view.unknownBits(),
                    view.sources());
        }

        private static Integer boxed(OptionalInt number) {
            return number.isPresent() ? number.getAsInt() : null;
        }
    }

    public BoardCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), json);
        return answer.of(() -> {
            RevisionView view = new BoardJob(workplace).run(code);
            if (json) {
                answer.json(RevisionJson.of(view));
            } else {
                print(answer.screen(), view);
            }
            return ExitCode.DONE;
        });
    }

    private static void print(Screen screen, RevisionView view) {
        screen.line("bold", "Revision code " + view.code() + " (" + view.style() + " style)");
        field(
                screen,
                "board",
                view.board().orElse("not known to bootmend")
                        + view.type().map(type -> ", type number " + type).orElse(""));
        field(screen, "revision", view.revision());
        field(screen, "chip", view.chip().orElse("not known to bootmend"));
        field(screen, "memory", memory(view.memoryMegabytes()));
        field(screen, "warranty bit", view.warranty());
        field(screen, "barred", view.barred().isEmpty() ? "nothing" : String.join("; ", view.barred()));
        if (!view.unknownBits().equals("0x0")) {
            field(screen, "unknown", "bits " + view.unknownBits() + " have no published meaning");
        }
        String name = view.sources().size() == 1 ? "source" : "sources";
        for (String source : view.sources()) {
            field(screen, name, source);
            name = "";
        }
        view.board().ifPresent(board -> {
            screen.blank();
            screen.line("More on this board: bootmend explain " + board);
        });
    }

    private static String memory(OptionalInt megabytes) {
        if (megabytes.isEmpty()) {
            return "the code does not tell";
        }
        int size = megabytes.getAsInt();
        return size % MEGABYTES == 0 ? size / MEGABYTES + " GB" : size + " MB";
    }

    private static void field(Screen screen, String name, String text) {
        screen.paragraph(name, NAME_WIDTH, text);
    }
}
