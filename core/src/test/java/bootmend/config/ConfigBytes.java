package bootmend.config;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Provide;
import net.jqwik.api.domains.DomainContextBase;

/** Config files for properties: lines of every kind with every line end, with and without a byte-order mark. */
public final class ConfigBytes extends DomainContextBase {

    private static final byte[] MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

    @Provide
    public Arbitrary<byte[]> files() {
        Arbitrary<byte[]> body = line().list().ofMaxSize(12).map(ConfigBytes::join);
        Arbitrary<byte[]> marked = body.map(bytes -> join(List.of(MARK, bytes)));
        return Arbitraries.oneOf(body, marked);
    }

    private static Arbitrary<byte[]> line() {
        Arbitrary<byte[]> key = texts(
                "arm_freq",
                "  over_voltage",
                "gpu_freq ",
                "FORCE_TURBO",
                "dtparam",
                "\ttemp_limit",
                "#arm_freq",
                "# core_freq",
                "\0sdram_freq",
                "arm_boost");
        Arbitrary<byte[]> setting = Combinators.combine(key, texts("=2000", "= 6", "=", "=0x10", "=on # fast", "=é"))
                .as((left, right) -> join(List.of(left, right)));
        Arbitrary<byte[]> other = texts(
                "",
                "  ",
                "# note",
                "[all]",
                "[none]",
                "[pi4]",
                "[pi4",
                "include bench.txt",
                "initramfs rd.gz followkernel",
                "\0\0\0",
                "x".repeat(120),
                "dtoverlay=" + "y".repeat(100));
        Arbitrary<byte[]> noise = Arbitraries.bytes().array(byte[].class).ofMaxSize(20);
        return Combinators.combine(Arbitraries.oneOf(setting, other, noise), texts("\n", "\r\n", "\r", "\n\r", ""))
                .as((content, end) -> join(List.of(content, end)));
    }

    private static Arbitrary<byte[]> texts(String... choices) {
        return Arbitraries.of(choices).map(text -> text.getBytes(StandardCharsets.UTF_8));
    }

    private static byte[] join(List<byte[]> parts) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        parts.forEach(out::writeBytes);
        return out.toByteArray();
    }
}
