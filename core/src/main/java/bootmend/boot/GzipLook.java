package bootmend.boot;

import bootmend.fat.FileBytes;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;

/**
 * Unpacks a gzip file to its end, so that its own checksum tells whether it is whole; keeps only the beginning.
 *
 * <p>Source: RFC 1952, sections 2.2 and 2.3.
 *
 * @param look what it came to
 * @param unpacked bytes inside, as far as they came
 * @param head the first bytes inside, at most {@value #HEAD}
 */
record GzipLook(FileLook look, long unpacked, byte[] head) {

    static final int HEAD = 4096;

    /** No source: a bound against hostile cards; kernels unpack to some 30 MB, early file systems to a few times that. */
    private static final long MOST_UNPACKED = 512L << 20;

    private static final String KIND = "a gzip file";
    private static final int BUFFER = 1 << 16;

    static boolean isGzip(byte[] head) {
        return head.length >= 3 && head[0] == 0x1F && head[1] == (byte) 0x8B && head[2] == 8;
    }

    static GzipLook of(FileBytes file, long from) throws IOException {
        return of(new FileInput(file, from), MOST_UNPACKED);
    }

    static GzipLook of(InputStream packed, long most) throws IOException {
        byte[] head = new byte[HEAD];
        byte[] buffer = new byte[BUFFER];
        long count = 0;
        FileLook look;
        try (GZIPInputStream in = new GZIPInputStream(packed, BUFFER)) {
            int got = in.read(buffer);
            while (got >= 0 && count <= most) {
                if (count < HEAD) {
                    System.arraycopy(buffer, 0, head, (int) count, (int) Math.min(got, HEAD - count));
                }
                count += got;
                got = in.read(buffer);
            }
            look = got < 0
                    ? FileLook.whole(KIND, "gzip unpacks to " + count + " bytes, its checksum fits")
                    : FileLook.unknown(KIND, "unpacks to more than " + most + " bytes, which was not followed");
        } catch (EOFException e) {
            look = FileLook.cut(KIND, "ends in the middle of its packed content, after " + count + " unpacked bytes");
        } catch (ZipException e) {
            look = FileLook.damaged(
                    KIND,
                    "cannot be unpacked to its end: its packed content is damaged after " + count
                            + " bytes, or its checksum does not fit");
        }
        return new GzipLook(look, count, Arrays.copyOf(head, (int) Math.min(HEAD, count)));
    }
}
