package bootmend.cli.json;

import bootmend.CardException;
import bootmend.finding.Severity;
import bootmend.trial.Grounds;
import bootmend.trial.LogSummary;
import bootmend.trial.Outcome;
import bootmend.trial.Run;
import bootmend.trial.Standing;
import bootmend.trial.Surroundings;
import bootmend.trial.ThrottleMask;
import bootmend.trial.Trial;
import bootmend.view.AttachedCard;
import bootmend.view.CardView;
import bootmend.view.ConfigView;
import bootmend.view.LineEffectView;
import bootmend.view.TuningView;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.util.StdConverter;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.time.Instant;
import java.util.Locale;
import java.util.OptionalLong;

/**
 * Writes records as JSON documents: each component under its name, null for what is empty, times by ISO 8601 in UTC. Where
 * a document's key differs from the record's, a mix-in in {@link JsonKeys} has it.
 */
public final class Json {

    private Json() {}

    /** A document with indents. */
    public static String text(Object document) {
        try {
            return mapper().enable(SerializationFeature.INDENT_OUTPUT).writeValueAsString(document);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    public static ObjectMapper mapper() {
        return JsonMapper.builder()
                .addModule(new Jdk8Module())
                .addMixIn(Instant.class, JsonKeys.ByText.class)
                .addMixIn(CardException.class, JsonKeys.OfError.class)
                .addMixIn(ConfigView.class, JsonKeys.OfConfig.class)
                .addMixIn(TuningView.class, JsonKeys.OfTuning.class)
                .addMixIn(LineEffectView.class, JsonKeys.OfLineEffect.class)
                .addMixIn(CardView.class, JsonKeys.OfCard.class)
                .addMixIn(Severity.class, JsonKeys.ByWord.class)
                .addMixIn(Outcome.class, JsonKeys.ByWord.class)
                .addMixIn(LogSummary.class, JsonKeys.OfLog.class)
                .addMixIn(Trial.class, JsonKeys.OfTrial.class)
                .addMixIn(Run.class, JsonKeys.OfRun.class)
                .addMixIn(Grounds.class, JsonKeys.OfGrounds.class)
                .addMixIn(Standing.class, JsonKeys.OfStanding.class)
                .addMixIn(Surroundings.class, JsonKeys.OfSurroundings.class)
                .addMixIn(AttachedCard.class, JsonKeys.OfAttachedCard.class)
                .build();
    }

    /** An error as it stands in a document. */
    static final class ErrorToTold extends StdConverter<CardException, ErrorJson.Told> {
        @Override
        public ErrorJson.Told convert(CardException error) {
            return ErrorJson.error("", error);
        }
    }

    /** A throttle report in hexadecimal, null where there is none. */
    static final class MaskToText extends StdConverter<OptionalLong, String> {
        @Override
        public String convert(OptionalLong mask) {
            return mask.isPresent() ? ThrottleMask.text(mask.getAsLong()) : null;
        }
    }

    /** A constant by its own name in lower case. */
    static final class ConstantToWord extends StdConverter<Enum<?>, String> {
        @Override
        public String convert(Enum<?> constant) {
            return constant.name().toLowerCase(Locale.ROOT);
        }
    }
}
