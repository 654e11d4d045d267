package bootmend.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class ConfigDocumentTest {

    @Test
    void eachLineEndIsItsOwn() {
        ConfigDocument document = document("a=1\nb=2\r\nc=3\rd=4");

        assertThat(document.lines())
                .extracting(ConfigLine::end)
                .containsExactly(LineEnd.LF, LineEnd.CRLF, LineEnd.CR, LineEnd.NONE);
        assertThat(document.lines()).extracting(ConfigLine::text).containsExactly("a=1", "b=2", "c=3", "d=4");
        assertThat(document.lines()).extracting(ConfigLine::number).containsExactly(1, 2, 3, 4);
    }

    @Test
    void aLineKnowsTheSectionAboveIt() {
        ConfigDocument document = document("a=1\n[pi4]\nb=2\n[all]\nc=3\n");

        assertThat(document.line(1).section()).isEmpty();
        assertThat(document.line(2).section()).isEmpty();
        assertThat(document.line(3).section()).contains("[pi4]");
        assertThat(document.line(4).section()).contains("[pi4]");
        assertThat(document.line(5).section()).contains("[all]");
    }

    @Test
    void theByteOrderMarkIsNoPartOfTheFirstKey() {
        ConfigDocument document = document("\uFEFFarm_freq=2000\n");

        assertThat(document.hasByteOrderMark()).isTrue();
        assertThat(document.line(1).text()).isEqualTo("arm_freq=2000");
        assertThat(text(document.commentOut(1))).isEqualTo("\uFEFF#arm_freq=2000\n");
        assertThat(text(document.remove(1))).isEqualTo("\uFEFF");
        assertThat(text(document.insertAfter(0, List.of("# lab")))).isEqualTo("\uFEFF# lab\narm_freq=2000\n");
    }

    @Test
    void commentingOutPutsAHashInFrontOfLeadingBlanks() {
        assertThat(text(document("  arm_freq=2000\r\nb=2").commentOut(1))).isEqualTo("#  arm_freq=2000\r\nb=2");
    }

    @Test
    void commentingOutLeavesCommentsAndBlankLines() {
        ConfigDocument document = document("# note\n\n#a=1\n");

        assertThat(document.commentOut(List.of(1, 2, 3))).isEqualTo(document);
    }

    @Test
    void severalLinesGoByTheNumbersOfTheSameDocument() {
        ConfigDocument document = document("a=1\nb=2\nc=3\nd=4\n");

        assertThat(text(document.remove(List.of(3, 1, 3)))).isEqualTo("b=2\nd=4\n");
        assertThat(text(document.commentOut(List.of(4, 2)))).isEqualTo("a=1\n#b=2\nc=3\n#d=4\n");
    }

    @Test
    void settingAValueReplacesTheWholeValue() {
        assertThat(text(document(" arm_freq=2000 # fast\r\n").setValue(1, "1500")))
                .isEqualTo(" arm_freq=1500\r\n");
        assertThat(text(document("arm_freq=" + "9".repeat(200)).setValue(1, "1500")))
                .isEqualTo("arm_freq=1500");
        assertThat(text(document("arm_freq=").setValue(1, "1500"))).isEqualTo("arm_freq=1500");
    }

    @Test
    void aValueOnlyGoesWhereThereIsOne() {
        assertThatThrownBy(() -> document("# note\n").setValue(1, "1"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("Line 1")
                .hasMessageContaining("choose another line");
    }

    @Test
    void aValueMayFillTheLineToTheLimitAndNoFurther() {
        int room = ConfigLine.LIMIT - "arm_freq=".length();

        assertThat(document("arm_freq=1").setValue(1, "2".repeat(room)).line(1).isPastLimit())
                .isFalse();
        assertThatThrownBy(() -> document("arm_freq=1").setValue(1, "2".repeat(room + 1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("98")
                .hasMessageContaining("shorten");
    }

    @Test
    void aValueCannotBreakItsLine() {
        assertThatThrownBy(() -> document("a=1").setValue(1, "2\nforce_turbo=1"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("2\\x0Aforce_turbo=1");
    }

    @Test
    void newLinesTakeTheMainLineEnd() {
        assertThat(text(document("a=1\r\nb=2\r\nc=3\n").insertAfter(1, List.of("x=1", "y=2"))))
                .isEqualTo("a=1\r\nx=1\r\ny=2\r\nb=2\r\nc=3\n");
        assertThat(text(document("").append(List.of("x=1")))).isEqualTo("x=1\n");
        assertThat(text(document("a=1\rb=2\r").append(List.of("x=1")))).isEqualTo("a=1\rb=2\rx=1\r");
    }

    @Test
    void aLastLineWithoutLineEndGetsOneBeforeALineIsAppended() {
        assertThat(text(document("a=1\r\nb=2").append(List.of("x=1")))).isEqualTo("a=1\r\nb=2\r\nx=1\r\n");
        assertThat(text(document("a=1\r\nb=2").append(List.of()))).isEqualTo("a=1\r\nb=2");
    }

    @Test
    void aNewLineLongerThanTheBoardReadsMustBeAComment() {
        String longText = "y".repeat(98);

        assertThat(document("").append(List.of("# " + longText)).lines()).hasSize(1);
        assertThatThrownBy(() -> document("").append(List.of("dtoverlay=" + longText)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("shorten");
    }

    @Test
    void aLineThatIsNotThereIsRefused() {
        ConfigDocument document = document("a=1\n");

        assertThatThrownBy(() -> document.commentOut(2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("1 lines, no line 2");
        assertThatThrownBy(() -> document.remove(0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> document.insertAfter(2, List.of("x=1"))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> document.insertAfter(-1, List.of("x=1"))).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void bytesHandedOutAreCopies() {
        ConfigDocument document = document("a=1\n");
        document.line(1).bytes()[0] = 'z';
        document.line(1).end().bytes()[0] = 'z';

        assertThat(text(document)).isEqualTo("a=1\n");
    }

    private static ConfigDocument document(String text) {
        return ConfigDocument.parse(text.getBytes(StandardCharsets.UTF_8));
    }

    private static String text(ConfigDocument document) {
        return new String(document.toBytes(), StandardCharsets.UTF_8);
    }
}
