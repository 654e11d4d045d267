package bootmend.keep;

import com.fasterxml.jackson.annotation.JsonAutoDetect;
import com.fasterxml.jackson.annotation.PropertyAccessor;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/**
 * What a file of kept files says of them; nothing in it but what the card has, so that the same card gives the same bytes.
 *
 * @param schema the layout of this version; a file with a higher number is a later version's
 * @param files in the order of their paths
 * @param notes sentences on what was not kept, or not whole
 */
record KeptManifest(int schema, KeptPartition partition, List<Entry> files, List<String> notes) {

    static final int SCHEMA = 1;

    /** Larger than any that is written. No source: a bound. */
    static final int MOST_BYTES = 32 << 20;

    private static final ObjectMapper JSON = JsonMapper.builder()
            .enable(SerializationFeature.INDENT_OUTPUT)
            .visibility(PropertyAccessor.ALL, JsonAutoDetect.Visibility.NONE)
            .visibility(PropertyAccessor.FIELD, JsonAutoDetect.Visibility.ANY)
            .visibility(PropertyAccessor.CREATOR, JsonAutoDetect.Visibility.ANY)
            .build();

    KeptManifest {
        Objects.requireNonNull(partition);
        files = List.copyOf(files);
        notes = List.copyOf(notes);
    }

    /**
     * One file or folder.
     *
     * @param path from the boot partition's root, parts separated by {@code /}
     * @param sha256 of the bytes that are kept, in hex; empty for a folder
     * @param written local time as the volume has it, such as {@code 2026-02-03T10:11:12}; empty where it has none
     * @param created the same of when it was made
     * @param attributes the entry's attribute byte
     * @param whole whether every byte that the entry promises was read
     */
    record Entry(
            String path,
            boolean folder,
            long bytes,
            String sha256,
            String written,
            String created,
            int attributes,
            boolean whole) {

        Entry {
            Objects.requireNonNull(path);
            Objects.requireNonNull(sha256);
        }
    }

    byte[] toJson() {
        try {
            // The line ends of no system are to show in it.
            return (JSON.writeValueAsString(this).replace("\r\n", "\n") + "\n").getBytes(StandardCharsets.UTF_8);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** @throws IOException where it is none that this version can read */
    static KeptManifest parse(byte[] bytes) throws IOException {
        try {
            KeptManifest manifest = JSON.readValue(bytes, KeptManifest.class);
            if (manifest == null || manifest.schema() != SCHEMA) {
                throw new IOException("its list of files is of another version");
            }
            return manifest;
        } catch (JsonProcessingException | RuntimeException e) {
            throw new IOException("its list of files cannot be read", e);
        }
    }
}
