package bootmend;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Every library that a front end's jar carries is named beside its licence; the build lists what it carries. */
class ShippedLicencesTest {

    private static final String FOLDER = "/META-INF/licenses/";
    private static final Pattern TEXT = Pattern.compile("^    .+: ([^ ]+\\.txt)$", Pattern.MULTILINE);

    private static List<String> shipped() throws IOException {
        return resource("/shipped-libraries.txt")
                .lines()
                .map(String::strip)
                .filter(line -> line.contains(":jar:"))
                .map(line -> line.split(" ", 2)[0].split(":", -1))
                .map(part -> part[0] + ":" + part[1] + ":" + part[part.length - 2])
                .distinct()
                .toList();
    }

    private static String resource(String name) throws IOException {
        try (InputStream in = ShippedLicencesTest.class.getResourceAsStream(name)) {
            assertThat(in).as(name).isNotNull();
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void namesEveryLibraryAndNoOther() throws IOException {
        List<String> named = resource(FOLDER + "README.txt")
                .lines()
                .filter(line -> line.matches("[^ ]+:[^ ]+:[^ ]+"))
                .toList();

        assertThat(shipped()).hasSizeGreaterThan(10);
        assertThat(named).containsExactlyInAnyOrderElementsOf(shipped());
    }

    @Test
    void carriesEveryTextThatIsNamed() throws IOException {
        List<String> texts = TEXT.matcher(resource(FOLDER + "README.txt"))
                .results()
                .map(found -> found.group(1))
                .distinct()
                .toList();

        assertThat(texts).contains("LGPL-2.1.txt", "Apache-2.0.txt");
        for (String text : texts) {
            assertThat(resource(FOLDER + text)).as(text).hasSizeGreaterThan(1000);
        }
    }
}
