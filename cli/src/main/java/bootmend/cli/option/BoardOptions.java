package bootmend.cli.option;

import bootmend.request.BoardRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** What is known about the board that a card is for. */
public final class BoardOptions {

    @Option(
            names = "--board",
            paramLabel = "B",
            description = "The board, by the config file's own word for it, such as pi4 or cm4.")
    private String board;

    @Option(
            names = "--revision",
            paramLabel = "CODE",
            description = "The board's revision code, such as c03111; it says which board it is.")
    private String revision;

    @Option(names = "--serial", paramLabel = "HEX", description = "The board's serial number, in hexadecimal.")
    private String serial;

    @Option(
            names = "--pin",
            paramLabel = "PIN=LEVEL",
            description = "The level of a pin at start, 0 or 1, such as 4=1. May be given several times.")
    private List<String> pins = new ArrayList<>();

    @Option(
            names = "--monitor",
            paramLabel = "NAME",
            description = "The name of an attached monitor. May be given several times.")
    private List<String> monitors = new ArrayList<>();

    @Option(names = "--no-monitor", description = "No monitor is attached.")
    private boolean noMonitor;

    @Option(names = "--tryboot", negatable = true, description = "Whether the board is started with its try-once flag.")
    private Boolean tryboot;

    @Option(
            names = "--boot-var",
            paramLabel = "NAME=NUMBER",
            description = "The value of a boot variable, such as partition=2. May be given several times.")
    private List<String> variables = new ArrayList<>();

    public BoardRequest request() {
        return new BoardRequest(
                Optional.ofNullable(board),
                Optional.ofNullable(revision),
                Optional.ofNullable(serial),
                pins,
                monitors.isEmpty() && !noMonitor ? Optional.empty() : Optional.of(monitors),
                Optional.ofNullable(tryboot),
                variables);
    }
}
