package bootmend.cli.json;

import bootmend.CardException;
import bootmend.trial.Grounds;
import bootmend.trial.Run;
import bootmend.trial.Standing;
import bootmend.trial.Surroundings;
import bootmend.trial.Unit;
import bootmend.view.AttachedCard;
import bootmend.view.LineEffectView;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * How records of core's stand in documents where the key is not the component's name. A mix-in names a component by its
 * accessor; what it does not name stays as it is.
 */
final class JsonKeys {

    private JsonKeys() {}

    interface ByText {
        @JsonValue
        @Override
        String toString();
    }

    interface ByWord {
        @JsonValue
        String word();
    }

    @JsonSerialize(converter = Json.ErrorToTold.class)
    interface OfError {}

    @JsonPropertyOrder({"path", "bytes", "sha256"})
    interface OfConfig {
        @JsonProperty
        String path();

        @JsonProperty
        int bytes();

        @JsonProperty
        String sha256();
    }

    /** The effect's own keys are there only where a board was asked about and reads the line. */
    interface OfTuning {
        @JsonInclude(JsonInclude.Include.NON_ABSENT)
        @JsonUnwrapped
        Optional<LineEffectView> effect();
    }

    interface OfLineEffect {
        @JsonProperty("effectText")
        String words();
    }

    /** Null is what the log has no columns for. */
    interface OfLog {
        @JsonProperty("setClockMHz")
        OptionalDouble setClock();

        @JsonProperty("shareBelowSetClock")
        OptionalDouble shareBelow();

        @JsonProperty("shareBelowInsideTheRun")
        OptionalDouble shareBelowInside();

        @JsonProperty("meanClockMHz")
        OptionalDouble meanClock();

        @JsonProperty("highestClockMHz")
        OptionalDouble highestClock();

        @JsonProperty("busyPercent")
        OptionalDouble busy();

        @JsonProperty("peakDegC")
        OptionalDouble peak();

        @JsonProperty("secondsTo80DegC")
        OptionalDouble secondsTo80();

        @JsonProperty("throttleMask")
        @JsonSerialize(converter = Json.MaskToText.class)
        OptionalLong mask();
    }

    /** What a card is. {@code stock} is whether no line that resets is active. */
    @JsonPropertyOrder({"card", "kind", "bytes", "partition", "config", "tuning", "stock", "notes", "error"})
    interface OfCard {
        @JsonProperty("error")
        @JsonInclude(JsonInclude.Include.NON_ABSENT)
        Optional<CardException> configProblem();

        @JsonProperty("stock")
        boolean isStock();
    }

    /** Null is what was not measured. */
    interface OfTrial {
        @JsonUnwrapped
        Unit unit();

        @JsonUnwrapped
        Run run();

        @JsonUnwrapped
        Surroundings surroundings();

        @JsonProperty
        @JsonUnwrapped
        Standing standing();

        @JsonUnwrapped
        Grounds grounds();

        @JsonProperty("knownGood")
        boolean isKnownGood();
    }

    /** {@code counts} is {@code failed}, {@code held}, {@code throttled} or {@code undecided}. */
    interface OfStanding {
        @JsonProperty("counts")
        @JsonSerialize(converter = Json.ConstantToWord.class)
        Standing.Kind kind();
    }

    interface OfRun {
        @JsonProperty("peakDegC")
        OptionalDouble peak();

        @JsonProperty("clockMHz")
        OptionalDouble clock();

        @JsonProperty("coreVolts")
        OptionalDouble volts();

        @JsonProperty("throttleMask")
        @JsonSerialize(converter = Json.MaskToText.class)
        OptionalLong mask();
    }

    interface OfSurroundings {
        @JsonProperty("ambientDegC")
        OptionalDouble ambient();
    }

    /** Empty texts and no contradictions where a trial rests on what was told alone. */
    interface OfGrounds {
        @JsonProperty("settingsFrom")
        String settings();

        @JsonProperty("logSha256")
        String log();
    }

    /** {@code system} is null on a disk that does not hold the running system. */
    interface OfAttachedCard {
        @JsonSerialize(converter = Json.ConstantToWord.class)
        AttachedCard.Boot boot();
    }
}
