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
import java.util.Objects;
import java.util.Optional;

/**
 * The form of an undo record on disk: one line of JSON, sector contents in Base64, then a line with its SHA-256, so
 * that a record that was not wholly written is never taken for one.
 */
final class RecordFormat {

    private static final int VERSION = 2;
    /** Records of this version name the card's path alone. */
    private static final int FIRST_VERSION = 1;
    /** Bytes of the largest record: a plan's most in Base64, and what stands around its sectors. */
    static final int MOST_BYTES = (int) (PlanBounds.MOST_BYTES / 3 * 4 + PlanBounds.MOST_BYTES / 4);

    private static final int LONGEST_END = 100;
    /** A record's components alone: what its methods work out is not part of it. */
    private static final ObjectMapper JSON = JsonMapper.builder()
            .visibility(PropertyAccessor.ALL, JsonAutoDetect.Visibility.NONE)
            .visibility(PropertyAccessor.FIELD, JsonAutoDetect.Visibility.ANY)
            .visibility(PropertyAccessor.CREATOR, JsonAutoDetect.Visibility.ANY)
            .build();

    /** The JSON line's fields. */
    record Stored(int version, String created, String cardPath, String mediumKey, String takesBack, Plan plan) {
        Stored {
            Objects.requireNonNull(created);
            Objects.requireNonNull(cardPath);
            Objects.requireNonNull(takesBack);
            Objects.requireNonNull(plan);
        }

        Medium medium() {
            return new Medium(cardPath, mediumKey);
        }
    }

    private RecordFormat() {}

    static byte[] write(Instant created, Medium medium, String takesBack, Plan plan) {
        try {
            byte[] line = JSON.writeValueAsBytes(
                    new Stored(VERSION, created.toString(), medium.place(), medium.key(), takesBack, plan));
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
        int shown = Math.min(bytes.length - end, LONGEST_END);
        String rest = new String(bytes, end, shown, StandardCharsets.US_ASCII).strip();
        if (bytes.length - end > LONGEST_END || !rest.equals("sha256:" + sha256(line))) {
            return Optional.empty();
        }
        return Optional.of(parsed(line));
    }

    private static Stored parsed(byte[] line) throws IOException {
        Stored stored;
        try {
            stored = JSON.readValue(line, Stored.class);
        } catch (JsonProcessingException e) {
            refuseLater(versionOf(line));
            throw new IOException("it holds what no bootmend writes", e);
        }
        if (stored == null) {
            throw new IOException("it is no record");
        }
        refuseLater(stored.version());
        if (stored.version() < FIRST_VERSION) {
            throw new IOException("it names no version");
        }
        return stored;
    }

    private static int versionOf(byte[] line) throws IOException {
        try {
            return JSON.readTree(line).path("version").asInt();
        } catch (JsonProcessingException e) {
            throw new IOException("it is no record", e);
        }
    }

    private static void refuseLater(int version) throws IOException {
        if (version > VERSION) {
            throw new IOException("it was written by a later bootmend");
        }
    }

    static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
