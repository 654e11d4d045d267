package bootmend.boot;

import bootmend.fat.FileBytes;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which build of boot firmware a file holds, by the strings in it.
 *
 * <p>Sources: strings that begin with {@code VC_BUILD_} in start files: "Secure boot", docs/secure-boot.md, commit
 * 87d6e032 (their list is not published); {@code BUILD_TIMESTAMP=} with seconds since 1970 in images of the boot memory:
 * the version script, commit 86759b04; {@code MFG_VER: }: release notes of firmware-2712, 2026-05-11.
 *
 * @param file path on the boot partition
 * @param strings what stands in it, by name in the order found; at most {@value #MOST_STRINGS}
 * @param built when the boot memory's image was built, where it says so
 */
public record FirmwareVersion(String file, Map<String, String> strings, Optional<Instant> built) {

    private static final int MOST_STRINGS = 16;
    private static final int LONGEST = 120;
    /** No source: a bound against hostile cards; the largest start files have some 5 MB. */
    private static final long MOST_BYTES = 32L << 20;

    private static final int PIECE = 1 << 16;
    private static final long LATEST = 0xFFFF_FFFFL;
    private static final Pattern MARK = Pattern.compile("(VC_BUILD_[A-Z0-9_]{1,40})[:=] ?([ -~]{1," + LONGEST
            + "})|BUILD_TIMESTAMP=(\\d{1,10})|MFG_VER: ?(\\d{1,9})");

    public FirmwareVersion {
        strings = Collections.unmodifiableMap(new LinkedHashMap<>(strings));
    }

    /** Empty where the file holds no such string. */
    static Optional<FirmwareVersion> in(String path, FileBytes file) throws IOException {
        Map<String, String> strings = new LinkedHashMap<>();
        Optional<Instant> built = Optional.empty();
        long end = Math.min(file.size(), MOST_BYTES);
        // Pieces overlap, so that no string is cut in two; a string found twice is kept once.
        for (long at = 0; at < end; at += PIECE - 2L * LONGEST) {
            byte[] piece = file.read(at, PIECE);
            if (piece.length == 0) {
                break;
            }
            Matcher marks = MARK.matcher(new String(piece, StandardCharsets.ISO_8859_1));
            while (marks.find()) {
                // A string at the piece's end is whole in the next one.
                if (marks.hitEnd() && at + piece.length < end) {
                    continue;
                }
                if (marks.group(3) != null && built.isEmpty() && Long.parseLong(marks.group(3)) <= LATEST) {
                    built = Optional.of(Instant.ofEpochSecond(Long.parseLong(marks.group(3))));
                } else if (marks.group(1) != null && strings.size() < MOST_STRINGS) {
                    put(strings, marks.group(1), marks.group(2).strip());
                } else if (marks.group(4) != null && strings.size() < MOST_STRINGS) {
                    put(strings, "MFG_VER", marks.group(4));
                }
            }
        }
        return strings.isEmpty() && built.isEmpty()
                ? Optional.empty()
                : Optional.of(new FirmwareVersion(path, strings, built));
    }

    /** One name may stand twice with a time of day and a date. */
    private static void put(Map<String, String> strings, String name, String value) {
        String before = strings.get(name);
        if (before == null) {
            strings.put(name, value);
        } else if (!List.of(before.split(" / ")).contains(value) && before.length() < LONGEST) {
            strings.put(name, before + " / " + value);
        }
    }

    /** The build in one phrase: version, date and time where they are there. */
    public String words() {
        List<String> words = new ArrayList<>();
        strings.forEach((name, value) -> {
            if (name.endsWith("_VERSION")
                    || name.endsWith("_TIME")
                    || name.endsWith("_DATE")
                    || name.equals("MFG_VER")) {
                words.add(name.equals("MFG_VER") ? "version number " + value : value);
            }
        });
        built.ifPresent(time -> words.add("built " + time));
        return words.isEmpty() ? String.join(", ", strings.values()) : String.join(", ", words);
    }
}
