package bootmend.profile;

import bootmend.CardException;
import bootmend.store.YamlMapping;
import bootmend.store.YamlText;
import bootmend.tuning.TuningNumber;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A profile as a YAML file, meant to be read and edited by hand.
 *
 * <p>Fields: {@code schema} (1), {@code name}, {@code board}, {@code settings} (key to value), {@code cooling},
 * {@code supply}, {@code evidence} (a trial's id to {@code holds}, {@code minutes}, {@code full_load} and
 * {@code throttled}), {@code notes}.
 */
final class ProfileFile {

    /** The layout of this version; a file with a higher number is a later version's. */
    static final int SCHEMA = 1;

    private static final String COMMENT = """
            A bootmend profile: tuning settings for one board, with the trials that back them.
            Higher clocks and voltages heat a board and can damage it. Its maker's limits and local rules come first.""";
    private static final Set<String> KEYS =
            Set.of("schema", "name", "board", "settings", "cooling", "supply", "evidence", "notes");
    private static final Set<String> EVIDENCE_KEYS = Set.of("holds", "minutes", "full_load", "throttled");
    private static final int MOST_MINUTES = 1_000_000;

    private ProfileFile() {}

    static byte[] write(Profile profile) {
        return YamlText.of(COMMENT, yaml -> {
            yaml.writeNumberField("schema", SCHEMA);
            yaml.writeStringField("name", profile.name());
            yaml.writeStringField("board", profile.board());
            yaml.writeObjectFieldStart("settings");
            for (Map.Entry<String, String> each : profile.settings().entrySet()) {
                yaml.writeStringField(each.getKey(), each.getValue());
            }
            yaml.writeEndObject();
            yaml.writeStringField("cooling", profile.cooling());
            yaml.writeStringField("supply", profile.supply());
            yaml.writeObjectFieldStart("evidence");
            for (Evidence each : profile.evidence()) {
                yaml.writeObjectFieldStart(each.trial());
                yaml.writeBooleanField("holds", each.holds());
                yaml.writeNumberField("minutes", each.minutes());
                yaml.writeBooleanField("full_load", each.fullLoad());
                yaml.writeBooleanField("throttled", each.throttled());
                yaml.writeEndObject();
            }
            yaml.writeEndObject();
            yaml.writeStringField("notes", profile.notes());
        });
    }

    /** @throws CardException that names file and line, if the file is no profile */
    static Profile read(YamlMapping yaml) throws CardException {
        int schema = yaml.get("schema", ProfileFile::number);
        if (schema != SCHEMA) {
            throw yaml.errorAt("schema", "this bootmend reads schema " + SCHEMA + ", not " + schema);
        }
        yaml.refuseKeysOtherThan(KEYS);
        return new Profile(
                yaml.get("name", text -> text),
                yaml.get("board", text -> text),
                settings(yaml),
                yaml.find("cooling", text -> text).orElse(""),
                yaml.find("supply", text -> text).orElse(""),
                evidence(yaml),
                yaml.find("notes", text -> text).orElse(""));
    }

    private static Map<String, String> settings(YamlMapping yaml) throws CardException {
        YamlMapping lines = yaml.mapping("settings");
        Map<String, String> settings = new LinkedHashMap<>();
        for (String key : lines.keys()) {
            settings.put(key, lines.get(key, ProfileFile::value));
        }
        if (settings.isEmpty()) {
            throw yaml.errorAt("settings", "settings should have at least one line, such as arm_freq: 1800");
        }
        return settings;
    }

    /** A value that would not stay on its line of the config file is none. */
    private static String value(String text) {
        if (TuningNumber.parse(text).isEmpty()) {
            throw new IllegalArgumentException("the value should be a number, found " + text);
        }
        return text;
    }

    private static List<Evidence> evidence(YamlMapping yaml) throws CardException {
        YamlMapping trials = yaml.mapping("evidence");
        List<Evidence> evidence = new ArrayList<>();
        for (String trial : trials.keys()) {
            YamlMapping each = trials.mapping(trial);
            each.refuseKeysOtherThan(EVIDENCE_KEYS);
            evidence.add(new Evidence(
                    trial,
                    each.get("holds", ProfileFile::yes),
                    each.get("minutes", ProfileFile::number),
                    each.get("full_load", ProfileFile::yes),
                    each.get("throttled", ProfileFile::yes)));
        }
        return evidence;
    }

    private static int number(String text) {
        if (!text.matches("\\d{1,7}") || Integer.parseInt(text) > MOST_MINUTES) {
            throw new IllegalArgumentException("the value should be a whole number, found " + text);
        }
        return Integer.parseInt(text);
    }

    private static boolean yes(String text) {
        return switch (text) {
            case "true", "yes" -> true;
            case "false", "no" -> false;
            default -> throw new IllegalArgumentException("write true or false, found " + text);
        };
    }
}
