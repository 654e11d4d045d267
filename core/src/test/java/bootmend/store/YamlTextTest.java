package bootmend.store;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is written is laid out for people and read back as it was. */
class YamlTextTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "plain",
                "two\nlines",
                "\u0085",
                "next\u0085line",
                "a\nline and a separator\u2028here",
                "paragraph\u2029",
                "# no comment",
                "- no list",
                "true",
                " blanks "
            })
    void everyTextComesBack(String text) throws CardException, IOException {
        byte[] bytes = YamlText.of("a comment", yaml -> yaml.writeStringField("notes", text));

        assertThat(YamlFile.read("trial.yaml", bytes).get("notes", Function.identity()))
                .isEqualTo(text);
    }

    @Test
    void linesStandUnderEachOtherForPeopleToEdit() {
        assertThat(new String(
                        YamlText.of("kept by hand", yaml -> yaml.writeStringField("notes", "first\nsecond")),
                        StandardCharsets.UTF_8))
                .isEqualTo("# kept by hand\nnotes: |-\n  first\n  second\n");
    }
}
