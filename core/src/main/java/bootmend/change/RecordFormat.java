package bootmend.change;

import com.fasterxml.jackson.annotation.JsonAutoDetect;
import com.fasterxml.jackson.annotation.PropertyAccessor;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;

/**
 * The form of an undo record on disk: one line of JSON, sector contents in Base64, then a line with its SHA-256, so
 * that a record that was not wholly written is never taken for one.
 */
final class RecordFormat {

    private static final int VERSION = 1;
    /** A record's components alone: what its methods work out is not part of it. */
    private static final ObjectMapper JSON = JsonMapper.builder()
            .visibility(PropertyAccessor.ALL, JsonAutoDetect.Visibility.NONE)
            .visibility(PropertyAccessor.FIELD, JsonAutoDetect.Visibility.ANY)
            .visibility(PropertyAccessor.CREATOR, JsonAutoDetect.Visibility.ANY)
            .build();

    /** The JSON line's fields. */
    record Stored(int version, String created, String cardPath, String takesBack, Plan plan) {}

    private RecordFormat() {}

    static byte[] write(Instant created, String cardPath, String takesBack, Plan plan) {
        try {
            byte[] line = JSON.writeValueAsBytes(new Stored(VERSION, created.toString(), cardPath, takesBack, plan));
            String end = "\nsha256:" + sha256(line) + "\n";
            byte[] all = new byte[line.length + end.length()];
            System.arraycopy(line, 0, all, 0, line.length);
            System.arraycopy(end.getBytes(StandardCharsets.US_ASCII), 0, all, line.length, end.length());
            return all;
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /**
     * The record, or nothing where it was not wholly written.
     *
     * @throws IOException when it is whole but not one that this version can read
     */
    static Optional<Stored> read(byte[] bytes) throws IOException {
        int end = 0;
        while (end < bytes.length && bytes[end] != '\n') {
            end++;
        }
        byte[] line = Arrays.copyOf(bytes, end);
        String rest = new String(bytes, end, bytes.length - end, StandardCharsets.US_ASCII).strip();
        if (!rest.equals("sha256:" + sha256(line))) {
            return Optional.empty();
        }
        Stored stored = JSON.readValue(line, Stored.class);
        if (stored.version() != VERSION) {
            throw new IOException("it was written by a later bootmend");
        }
        return Optional.of(stored);
    }

    static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
