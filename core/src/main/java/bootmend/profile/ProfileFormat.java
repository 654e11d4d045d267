package bootmend.profile;

import bootmend.CardException;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLGenerator;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The form of a profile on disk: YAML 1.2, meant to be read and edited by hand.
 *
 * <p>Fields: {@code schema} (1), {@code name}, {@code board}, {@code settings} (key to value), {@code cooling},
 * {@code supply}, {@code evidence} (a list of {@code trial}, {@code holds}, {@code minutes}, {@code fullLoad},
 * {@code throttled}), {@code notes}.
 */
final class ProfileFormat {

    static final int SCHEMA = 1;
    private static final Set<String> FIELDS =
            Set.of("schema", "name", "board", "settings", "cooling", "supply", "evidence", "notes");
    private static final int MOST_ENTRIES = 1000;
    private static final YAMLMapper YAML = YAMLMapper.builder()
            .disable(YAMLGenerator.Feature.WRITE_DOC_START_MARKER)
            .enable(YAMLGenerator.Feature.MINIMIZE_QUOTES)
            .enable(YAMLGenerator.Feature.ALWAYS_QUOTE_NUMBERS_AS_STRINGS)
            .build();

    private final String file;

    /** @param file the file's name, for errors */
    ProfileFormat(String file) {
        this.file = file;
    }

    byte[] write(Profile profile) throws IOException {
        ObjectNode root = YAML.createObjectNode();
        root.put("schema", SCHEMA);
        root.put("name", profile.name());
        root.put("board", profile.board());
        ObjectNode settings = root.putObject("settings");
        profile.settings().forEach((key, value) -> putValue(settings, key, value));
        root.put("cooling", profile.cooling());
        root.put("supply", profile.supply());
        var evidence = root.putArray("evidence");
        for (Evidence each : profile.evidence()) {
            evidence.addObject()
                    .put("trial", each.trial())
                    .put("holds", each.holds())
                    .put("minutes", each.minutes())
                    .put("fullLoad", each.fullLoad())
                    .put("throttled", each.throttled());
        }
        root.put("notes", profile.notes());
        return YAML.writeValueAsBytes(root);
    }

    /** Whole numbers are written as people write them, without quotes. */
    private static void putValue(ObjectNode settings, String key, String value) {
        if (value.matches("0|-?[1-9]\\d{0,8}")) {
            settings.put(key, Integer.parseInt(value));
        } else {
            settings.put(key, value);
        }
    }

    /** @throws CardException naming the file, and the line where YAML itself is wrong */
    Profile read(byte[] bytes) throws CardException {
        JsonNode root;
        try {
            root = YAML.readTree(bytes);
        } catch (JsonProcessingException e) {
            int line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
            throw wrong("it is not valid YAML" + (line > 0 ? " at line " + line : ""));
        } catch (IOException e) {
            throw wrong(e.getMessage());
        }
        if (root == null || !root.isObject()) {
            throw wrong("it holds no fields");
        }
        for (var names = root.fieldNames(); names.hasNext();) {
            String name = names.next();
            if (!FIELDS.contains(name)) {
                throw wrong("it has an unknown field " + name);
            }
        }
        if (root.path("schema").asInt() != SCHEMA) {
            throw wrong("its schema is not " + SCHEMA);
        }
        return new Profile(text(root, "name", true), text(root, "board", true), settings(root.path("settings")),
                text(root, "cooling", false), text(root, "supply", false), evidence(root.path("evidence")),
                text(root, "notes", false));
    }

    private Map<String, String> settings(JsonNode node) throws CardException {
        if (!node.isObject() || node.size() > MOST_ENTRIES) {
            throw wrong("settings should be a list of key: value");
        }
        Map<String, String> settings = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> field : node.properties()) {
            if (!field.getValue().isValueNode() || field.getValue().isNull()) {
                throw wrong("settings: " + field.getKey() + " should have one value");
            }
            settings.put(field.getKey(), field.getValue().asText());
        }
        return settings;
    }

    private List<Evidence> evidence(JsonNode node) throws CardException {
        List<Evidence> evidence = new ArrayList<>();
        if (node.isMissingNode() || node.isNull()) {
            return evidence;
        }
        if (!node.isArray() || node.size() > MOST_ENTRIES) {
            throw wrong("evidence should be a list");
        }
        for (JsonNode each : node) {
            boolean typed = each.path("holds").isBoolean() && each.path("minutes").canConvertToInt()
                    && each.path("fullLoad").isBoolean() && each.path("throttled").isBoolean();
            if (!typed) {
                throw wrong("each piece of evidence needs holds, fullLoad and throttled (true or false) and minutes");
            }
            evidence.add(new Evidence(each.path("trial").asText(), each.path("holds").asBoolean(),
                    each.path("minutes").asInt(), each.path("fullLoad").asBoolean(),
                    each.path("throttled").asBoolean()));
        }
        return evidence;
    }

    private String text(JsonNode root, String field, boolean required) throws CardException {
        JsonNode node = root.path(field);
        if (node.isMissingNode() || node.isNull()) {
            if (required) {
                throw wrong("its field " + field + " is missing");
            }
            return "";
        }
        if (!node.isValueNode()) {
            throw wrong("its field " + field + " should be text");
        }
        return node.asText();
    }

    private CardException wrong(String what) {
        return CardException.unreadable("the profile " + file + " cannot be read: " + what,
                "Put it right in a text editor, or delete it.");
    }
}
