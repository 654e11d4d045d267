package bootmend.device.system;

import java.io.IOException;
import java.time.Duration;
import java.util.List;

/** The system's own programs, which bootmend asks about disks; tests put recorded answers in their place. */
@FunctionalInterface
interface Programs {

    /** After which a program that does not end is given up. No source: far above what ejecting a card takes. */
    Duration LIMIT = Duration.ofSeconds(30);
    /** Of each stream; what comes after it is read and dropped. No source: far above any answer. */
    int MOST_OUTPUT = 4 << 20;

    /**
     * How a program ended.
     *
     * @param output what it printed, at most {@link #MOST_OUTPUT} bytes
     * @param errors what it printed beside that
     */
    record Result(int code, String output, String errors) {

        /** What it said in the first place, for a sentence; never empty. */
        String said() {
            return (errors.isBlank() ? output : errors)
                    .strip()
                    .lines()
                    .findFirst()
                    .orElse("nothing");
        }
    }

    /** @throws IOException when it cannot be started or does not end within the limit */
    Result run(List<String> command) throws IOException;

    static Programs ofThisComputer() {
        return new LimitedPrograms(LIMIT, MOST_OUTPUT);
    }
}
