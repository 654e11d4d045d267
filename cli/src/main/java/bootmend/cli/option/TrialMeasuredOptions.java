package bootmend.cli.option;

import bootmend.cli.json.Given;
import bootmend.record.TrialRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** What was measured in a trial, and what was around the board. */
public final class TrialMeasuredOptions {

    @Option(names = "--minutes", paramLabel = "N", description = "How long it ran at the set clock.")
    private Double minutes;

    @Option(names = "--full-load", description = "Every processor core was kept busy all that time.")
    private boolean fullLoad;

    @Option(names = "--peak", paramLabel = "DEGC", description = "Highest temperature, in degC.")
    private Double peak;

    @Option(names = "--clock", paramLabel = "MHZ", description = "Clock under load, in MHz.")
    private Double clock;

    @Option(
            names = "--mask",
            paramLabel = "MASK",
            description =
                    "The board's throttle report at the end, such as 0x0 or 0x50000. Without it a hold does not count.")
    private String mask;

    @Option(
            names = "--score",
            paramLabel = "NAME=NUMBER",
            description = "A result, higher is better, such as \"one core=312\". May be given several times.")
    private List<String> scores = new ArrayList<>();

    @Option(
            names = "--cooling",
            paramLabel = "TEXT",
            defaultValue = "",
            description = "What cooled the board; trials are compared by these words.")
    private String cooling = "";

    @Option(names = "--supply", paramLabel = "TEXT", defaultValue = "", description = "What fed the board.")
    private String supply = "";

    @Option(names = "--ambient", paramLabel = "DEGC", description = "Temperature of the air, in degC.")
    private Double ambient;

    public TrialRequest.Measured measured() {
        return new TrialRequest.Measured(
                Given.number(minutes),
                fullLoad,
                Given.number(peak),
                Given.number(clock),
                Optional.ofNullable(mask),
                scores);
    }

    public String cooling() {
        return cooling;
    }

    public String supply() {
        return supply;
    }

    public OptionalDouble ambient() {
        return Given.number(ambient);
    }
}
