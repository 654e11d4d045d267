package bootmend.cli.json;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.cli.CommandLines;
import bootmend.workplace.Workplace;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The keys of commands' documents, which programs rely on: a record that is changed must not change them unseen. */
class JsonKeysTest {

    private static final Path DEMO = Path.of("cards");

    @TempDir
    private Path home;

    @Test
    void documentsHaveTheKeysThatProgramsRelyOn() throws Exception {
        run("demo", home.resolve(DEMO).toString());
        Path log = Files.writeString(home.resolve("log.csv"), "Time,Clock MHz,Temperature\n0,2000,60\n60,2000,81\n");
        run(("trial add --label lab-07 --board pi4 --set arm_freq=1500 --outcome holds --full-load --minutes 50 "
                        + "--mask 0 --peak 55")
                .split(" "));
        StringBuilder found = new StringBuilder();
        for (String line :
                expected().lines().filter(line -> line.startsWith("> ")).toList()) {
            String[] command = line.substring(2)
                    .replace("CARDS", home.resolve(DEMO).toString())
                    .replace("LOG", log.toString())
                    .split(" ");
            SortedSet<String> keys = new TreeSet<>();
            collect(new ObjectMapper().readTree(run(command)), "", keys);
            found.append(line).append('\n').append(String.join("\n", keys)).append('\n');
        }

        assertThat(found.toString()).isEqualTo(expected());
    }

    private static void collect(JsonNode node, String path, SortedSet<String> keys) {
        if (node.isArray()) {
            node.forEach(each -> collect(each, path + "[]", keys));
        } else if (node.isObject()) {
            for (Map.Entry<String, JsonNode> field : node.properties()) {
                String key = path + "/" + field.getKey();
                keys.add(key);
                collect(field.getValue(), key, keys);
            }
        }
    }

    private static String expected() throws IOException {
        try (InputStream in = JsonKeysTest.class.getResourceAsStream("keys.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private String run(String... command) {
        StringWriter out = new StringWriter();
        PrintWriter writer = new PrintWriter(out, true);
        CommandLines.create(
                        Workplace.ofThisComputer(home.resolve("home")),
                        null,
                        writer,
                        new PrintWriter(new StringWriter()))
                .execute(command);
        return out.toString();
    }
}
