package bootmend.bench;

import bootmend.fixtures.SampleBootFiles;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Config files of the robotics lab: the demo card's, and longer ones. */
final class ConfigText {

    /** One line in four is a tuning line; short ones, so that 100,000 stay within what a config file may have. */
    private static final String[] LINES = {"gpu_freq=", "# lab", "", "dtparam=x"};

    private static final int LINES_A_SECTION = 1000;

    private ConfigText() {}

    /** The config file of the first demo card. */
    static byte[] demo() {
        try (InputStream in = SampleBootFiles.class.getResourceAsStream("config-hurried.txt")) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A config file of this many lines, a section line among each thousand. */
    static byte[] ofLines(int count) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < count; i++) {
            if (i % LINES_A_SECTION == LINES_A_SECTION - 1) {
                text.append(i / LINES_A_SECTION % 2 == 0 ? "[pi4]" : "[all]");
            } else {
                text.append(LINES[i % LINES.length]);
                if (i % LINES.length == 0) {
                    text.append(200 + i / LINES.length % 700);
                }
            }
            text.append('\n');
        }
        return text.toString().getBytes(StandardCharsets.US_ASCII);
    }
}
