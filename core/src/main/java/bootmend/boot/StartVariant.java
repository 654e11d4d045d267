package bootmend.boot;

import bootmend.tuning.DataFile;
import java.util.List;

/**
 * A setting that chooses another pair of start and fixup file.
 *
 * @param plain letters behind {@code start} for boards whose family has none
 * @param joined letters behind the family's own
 */
record StartVariant(String key, long value, String plain, String joined) {

    /** In the order in which they count. */
    static List<StartVariant> load() {
        return DataFile.resource(StartVariant.class, "start-variants.csv")
                .withColumns("key", "value", "plain", "joined")
                .map(
                        row -> new StartVariant(
                                row.required("key"),
                                row.number("value", row.required("value")),
                                row.required("plain"),
                                row.required("joined")),
                        StartVariant::key);
    }

    /** What stands between {@code start} and {@code .elf} for a family. */
    String letters(String family) {
        return family.isEmpty() ? plain : family + joined;
    }
}
