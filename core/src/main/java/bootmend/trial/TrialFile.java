package bootmend.trial;

import bootmend.CardException;
import bootmend.store.YamlMapping;
import bootmend.store.YamlText;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.TuningTables;
import com.fasterxml.jackson.dataformat.yaml.YAMLGenerator;
import java.io.IOException;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** A trial as a YAML file. */
final class TrialFile {

    /** The layout of this version; a file with a higher number is a later version's. */
    static final int SCHEMA = 1;

    private static final Set<String> KEYS = Set.of(
            "schema",
            "when",
            "board",
            "label",
            "settings",
            "outcome",
            "minutes",
            "full_load",
            "peak_degC",
            "clock_under_load_MHz",
            "core_volts",
            "throttle_mask",
            "scores",
            "cooling",
            "supply",
            "ambient_degC",
            "settings_from",
            "log_sha256",
            "contradictions",
            "notes");
    private static final Map<String, Boolean> YES_NO = Map.of("true", true, "yes", true, "false", false, "no", false);

    private final TuningTables tables;

    TrialFile(TuningTables tables) {
        this.tables = tables;
    }

    /** @throws CardException that names file and line, if the file is no trial */
    Trial read(String id, YamlMapping yaml) throws CardException {
        int schema = yaml.get("schema", Integer::valueOf);
        if (schema != SCHEMA) {
            throw yaml.errorAt("schema", "this bootmend reads schema " + SCHEMA + ", not " + schema);
        }
        yaml.refuseKeysOtherThan(KEYS);
        Unit unit = new Unit(
                yaml.get("board", this::board),
                yaml.get("label", text -> TextLimits.name("label", text, TextLimits.MAX_LABEL)));
        Run run = new Run(
                number(yaml, "minutes", Quantity.MINUTES),
                yaml.find("full_load", TrialFile::yes).orElse(false),
                number(yaml, "peak_degC", Quantity.PEAK),
                number(yaml, "clock_under_load_MHz", Quantity.CLOCK),
                number(yaml, "core_volts", Quantity.VOLTS),
                yaml.find("throttle_mask", TrialFile::mask)
                        .map(OptionalLong::of)
                        .orElse(OptionalLong.empty()));
        Surroundings surroundings = new Surroundings(
                yaml.find("cooling", text -> TextLimits.line("cooling", text, TextLimits.MAX_LINE))
                        .orElse(""),
                yaml.find("supply", text -> TextLimits.line("supply", text, TextLimits.MAX_LINE))
                        .orElse(""),
                number(yaml, "ambient_degC", Quantity.AMBIENT));
        return new Trial(
                id,
                yaml.get("when", TrialFile::instant),
                unit,
                settings(yaml),
                yaml.get("outcome", TrialFile::outcome),
                run,
                scores(yaml),
                surroundings,
                grounds(yaml),
                yaml.find("notes", TextLimits::notes).orElse(""));
    }

    private static Grounds grounds(YamlMapping yaml) throws CardException {
        YamlMapping lines = entries(yaml, "contradictions");
        List<String> contradictions = new ArrayList<>();
        for (String number : lines.keys()) {
            contradictions.add(lines.get(number, text -> TextLimits.name("contradiction", text, TextLimits.MAX_NOTES)));
        }
        return new Grounds(
                yaml.find("settings_from", text -> TextLimits.line("file of the settings", text, TextLimits.MAX_LINE))
                        .orElse(""),
                yaml.find("log_sha256", text -> TextLimits.line("log's digest", text, TextLimits.MAX_LINE))
                        .orElse(""),
                contradictions);
    }

    private Map<String, Long> settings(YamlMapping yaml) throws CardException {
        YamlMapping lines = entries(yaml, "settings");
        Map<String, Long> settings = new TreeMap<>();
        for (String key : lines.keys()) {
            settings.put(key, lines.get(key, text -> setting(key, text)));
        }
        return settings;
    }

    private Map<String, Double> scores(YamlMapping yaml) throws CardException {
        YamlMapping lines = entries(yaml, "scores");
        Map<String, Double> scores = new TreeMap<>();
        for (String name : lines.keys()) {
            scores.put(name, lines.get(name, text -> {
                double value = decimal(text);
                Trial.checkScore(name, value);
                return value;
            }));
        }
        return scores;
    }

    private static YamlMapping entries(YamlMapping yaml, String key) throws CardException {
        YamlMapping lines = yaml.mapping(key);
        if (lines.keys().size() > TextLimits.MAX_ENTRIES) {
            throw yaml.errorAt(key, "there are more than " + TextLimits.MAX_ENTRIES + " " + key);
        }
        return lines;
    }

    private String board(String text) {
        if (tables.boards().find(text).isEmpty()) {
            throw new IllegalArgumentException("there is no board " + text + "; boards are named like pi4");
        }
        return text;
    }

    private long setting(String key, String text) {
        if (tables.vocabulary().findOnCard(key).isEmpty()) {
            throw new IllegalArgumentException("this is no tuning key");
        }
        return TuningNumber.parse(text)
                .orElseThrow(() -> new IllegalArgumentException("the value should be a number, found " + text));
    }

    private static OptionalDouble number(YamlMapping yaml, String key, Quantity quantity) throws CardException {
        ToDoubleFunction<String> reader = text -> quantity.check(decimal(text));
        return yaml.find(key, reader::applyAsDouble).map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    private static double decimal(String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("the value should be a number, found " + text, e);
        }
    }

    private static long mask(String text) {
        return ThrottleMask.parse(text)
                .orElseThrow(() ->
                        new IllegalArgumentException("the throttle mask is written 0x0 to 0xFFFFFFFF, found " + text));
    }

    private static boolean yes(String text) {
        Boolean value = YES_NO.get(text.toLowerCase(Locale.ROOT));
        if (value == null) {
            throw new IllegalArgumentException("write true or false, found " + text);
        }
        return value;
    }

    private static Instant instant(String text) {
        try {
            return Instant.parse(text);
        } catch (DateTimeParseException e) {
            throw new IllegalArgumentException("a time is written like 2026-11-24T15:30:00Z, found " + text, e);
        }
    }

    private static Outcome outcome(String text) {
        return Outcome.of(text)
                .orElseThrow(() -> new IllegalArgumentException(
                        "an outcome is one of boots, no boot, locks up, misbehaves, throttles, holds; found " + text));
    }

    static byte[] write(Trial trial) {
        return YamlText.of(
                "A trial of one setting on one board. You may edit this file; it is checked wherever trials are listed.",
                yaml -> write(trial, yaml));
    }

    private static void write(Trial trial, YAMLGenerator yaml) throws IOException {
        yaml.writeNumberField("schema", SCHEMA);
        yaml.writeStringField("when", trial.when().toString());
        yaml.writeStringField("board", trial.unit().board());
        yaml.writeStringField("label", trial.unit().label());
        yaml.writeObjectFieldStart("settings");
        for (Map.Entry<String, Long> setting : trial.settings().entrySet()) {
            yaml.writeNumberField(setting.getKey(), setting.getValue());
        }
        yaml.writeEndObject();
        yaml.writeStringField("outcome", trial.outcome().word());
        number(yaml, "minutes", trial.run().minutes());
        yaml.writeBooleanField("full_load", trial.run().fullLoad());
        number(yaml, "peak_degC", trial.run().peak());
        number(yaml, "clock_under_load_MHz", trial.run().clock());
        number(yaml, "core_volts", trial.run().volts());
        if (trial.run().mask().isPresent()) {
            yaml.writeStringField(
                    "throttle_mask", ThrottleMask.text(trial.run().mask().getAsLong()));
        }
        yaml.writeObjectFieldStart("scores");
        for (Map.Entry<String, Double> score : trial.scores().entrySet()) {
            number(yaml, score.getKey(), OptionalDouble.of(score.getValue()));
        }
        yaml.writeEndObject();
        yaml.writeStringField("cooling", trial.surroundings().cooling());
        yaml.writeStringField("supply", trial.surroundings().supply());
        number(yaml, "ambient_degC", trial.surroundings().ambient());
        write(trial.grounds(), yaml);
        yaml.writeStringField("notes", trial.notes());
    }

    private static void write(Grounds grounds, YAMLGenerator yaml) throws IOException {
        if (!grounds.settings().isEmpty()) {
            yaml.writeStringField("settings_from", grounds.settings());
        }
        if (!grounds.log().isEmpty()) {
            yaml.writeStringField("log_sha256", grounds.log());
        }
        if (!grounds.contradictions().isEmpty()) {
            yaml.writeObjectFieldStart("contradictions");
            for (int i = 0; i < grounds.contradictions().size(); i++) {
                yaml.writeStringField(
                        Integer.toString(i + 1), grounds.contradictions().get(i));
            }
            yaml.writeEndObject();
        }
    }

    private static void number(YAMLGenerator yaml, String key, OptionalDouble value) throws IOException {
        if (value.isPresent()) {
            yaml.writeFieldName(key);
            double number = value.getAsDouble();
            if (number == Math.rint(number) && Math.abs(number) < Integer.MAX_VALUE) {
                yaml.writeNumber((long) number);
            } else {
                yaml.writeNumber(number);
            }
        }
    }
}
