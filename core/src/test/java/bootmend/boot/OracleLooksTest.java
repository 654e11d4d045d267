package bootmend.boot;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.oracle.Tool;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Looks into files that general-purpose tools made: a device tree compiler, a C compiler, packers, an archiver. */
class OracleLooksTest {

    @TempDir
    Path dir;

    private byte[] shell(String command) throws IOException {
        return Tool.run("sh", "-c", "cd " + dir + " && " + command);
    }

    private byte[] compiled(String source, String... more) throws IOException {
        Tool.need("dtc");
        Files.writeString(dir.resolve("tree.dts"), source);
        shell("dtc -q " + String.join(" ", more) + " -I dts -O dtb -o tree.dtb tree.dts");
        return Files.readAllBytes(dir.resolve("tree.dtb"));
    }

    private static final String TREE =
            "/dts-v1/; / { compatible = \"lab,board\"; #address-cells = <1>; #size-cells = <1>;"
                    + " model = \"Lab board\"; soc: soc { compatible = \"simple-bus\"; ranges; uart: serial@1000 {"
                    + " reg = <0x1000 0x100>; status = \"okay\"; }; }; chosen { bootargs = \"quiet\"; };"
                    + " memory@0 { device_type = \"memory\"; reg = <0 0x100000>; }; };";

    @Test
    void aCompiledDeviceTreeIsWholeAndEveryCutOfItIsNot() throws IOException {
        byte[] tree = compiled(TREE, "-@");
        FlatTree whole = FlatTree.of(new ArrayBytes(tree));
        assertThat(whole.look().state()).isEqualTo(LinkState.WHOLE);
        assertThat(whole.nodes()).containsKeys("soc", "chosen", "memory@0", "__symbols__");
        for (int length = 0; length < tree.length; length += 7) {
            assertThat(FlatTree.of(ArrayBytes.cut(tree, length)).look().state())
                    .as("%d of %d bytes", length, tree.length)
                    .isEqualTo(LinkState.DAMAGED);
        }
    }

    @Test
    void aCompiledTreeWithRoomBehindItIsWhole() throws IOException {
        byte[] padded = compiled(TREE, "-p", "4000");
        assertThat(FlatTree.of(new ArrayBytes(padded)).look().isWhole()).isTrue();
        ByteArrayOutputStream more = new ByteArrayOutputStream();
        more.writeBytes(padded);
        more.writeBytes(new byte[333]);
        assertThat(FlatTree.of(new ArrayBytes(more.toByteArray())).look().isWhole())
                .as("a file may be longer than the tree in it")
                .isTrue();
    }

    @Test
    void aCompiledMapOfOverlaysIsRead() throws IOException {
        byte[] map = compiled("/dts-v1/; / { gpu { bcm2835; bcm2711 = \"gpu-pi4\"; bcm2712 = \"gpu-pi5\"; };"
                + " old-name { renamed = \"new-name\"; }; new-name { bcm2711; }; };");
        Map<String, Map<String, byte[]>> nodes =
                FlatTree.of(new ArrayBytes(map)).nodes();
        assertThat(nodes).containsOnlyKeys("gpu", "old-name", "new-name");
        assertThat(new String(nodes.get("gpu").get("bcm2711"), StandardCharsets.US_ASCII))
                .isEqualTo("gpu-pi4\0");
        assertThat(nodes.get("gpu").get("bcm2835")).isEmpty();
    }

    @Test
    void aCompiledProgramIsWholeAndEveryCutOfItIsNot() throws IOException {
        Tool.need("gcc", "readelf");
        Files.writeString(dir.resolve("lab.c"), "int x[100] = {1, 2, 3}; int main(void) { return x[2]; }\n");
        for (String options : List.of("", "-static -s", "-c", "-g")) {
            shell("gcc " + options + " -o lab.elf lab.c");
            byte[] elf = Files.readAllBytes(dir.resolve("lab.elf"));
            if (!options.equals("-c")) {
                assertThat(ElfLook.of(new ArrayBytes(elf)).state()).as(options).isEqualTo(LinkState.WHOLE);
            } else {
                assertThat(ElfLook.of(new ArrayBytes(elf)).why())
                        .as("an object file loads nothing")
                        .contains("loads nothing");
            }
            String header = new String(shell("readelf -hW lab.elf"), StandardCharsets.US_ASCII);
            String sections = header.replaceAll("(?s).*Number of section headers: *(\\d+).*", "$1");
            if (!options.equals("-c")) {
                assertThat(ElfLook.of(new ArrayBytes(elf)).check()).contains(sections + " sections");
            }
            for (int part = 1; part < 20; part++) {
                assertThat(ElfLook.of(ArrayBytes.cut(elf, (int) ((long) elf.length * part / 20)))
                                .state())
                        .as("%s cut to %d twentieths", options, part)
                        .isEqualTo(LinkState.DAMAGED);
            }
            assertThat(ElfLook.of(ArrayBytes.cut(elf, elf.length - 1)).state()).isEqualTo(LinkState.DAMAGED);
        }
    }

    private byte[] archive() throws IOException {
        Tool.need("cpio");
        Files.createDirectories(dir.resolve("tree/bin"));
        Files.writeString(dir.resolve("tree/init"), "#!/bin/sh\nexec /bin/sh\n");
        byte[] noise = new byte[200_000];
        new SplittableRandom(5).nextBytes(noise);
        Files.write(dir.resolve("tree/bin/sh"), noise);
        Files.createSymbolicLink(dir.resolve("tree/sbin"), Path.of("bin"));
        shell("cd tree && find . | cpio --quiet -o -H newc > ../early.cpio");
        return Files.readAllBytes(dir.resolve("early.cpio"));
    }

    @Test
    void anArchiveIsFollowedToItsEndMark() throws IOException {
        byte[] archive = archive();
        FileLook look = InitramfsLook.of(new ArrayBytes(archive));
        assertThat(look.state()).isEqualTo(LinkState.WHOLE);
        assertThat(look.check()).isEqualTo("cpio archive of 5 files to its end mark");
        assertCutsAreSeen(archive, "cpio", 2000);
    }

    @Test
    void packedArchivesAreWholeAndEveryCutOfThemIsNot() throws IOException {
        archive();
        Tool.need("gzip", "xz", "zstd", "lz4");
        for (String packer : List.of(
                "gzip -9",
                "xz -6 --check=crc32",
                "xz -0 --check=sha256",
                "zstd -q -3",
                "zstd -q -19 --no-check",
                "lz4 -q -l -9")) {
            byte[] packed = shell(packer + " -c < early.cpio");
            assertThat(InitramfsLook.of(new ArrayBytes(packed)).state())
                    .as(packer)
                    .isEqualTo(LinkState.WHOLE);
            assertCutsAreSeen(packed, packer, packed.length / 37);
        }
    }

    private static void assertCutsAreSeen(byte[] whole, String what, int step) throws IOException {
        for (int length = 600; length < whole.length - 8; length += step) {
            assertThat(InitramfsLook.of(ArrayBytes.cut(whole, length)).state())
                    .as("%s cut to %d of %d bytes", what, length, whole.length)
                    .isEqualTo(LinkState.DAMAGED);
        }
    }

    @Test
    void damageInsideIsSeenWhereAChecksumIs() throws IOException {
        archive();
        Tool.need("gzip", "xz");
        for (String packer : List.of("gzip -6", "xz -6 --check=crc32")) {
            byte[] packed = shell(packer + " -c < early.cpio");
            for (int at = 200; at < packed.length - 40; at += packed.length / 23) {
                assertThat(InitramfsLook.of(ArrayBytes.flipped(packed, at)).state())
                        .as("%s with byte %d changed", packer, at)
                        .isEqualTo(LinkState.DAMAGED);
            }
        }
    }

    @Test
    void archivesMayStandBehindOneAnother() throws IOException {
        archive();
        Tool.need("gzip", "zstd");
        byte[] both = shell("cat early.cpio; head -c 512 /dev/zero; gzip -c < early.cpio");
        assertThat(InitramfsLook.of(new ArrayBytes(both)).check())
                .startsWith("cpio archive of 5 files to its end mark, then gzip unpacks to ");
        byte[] frames = shell("zstd -q -c < early.cpio; zstd -q -c < early.cpio");
        assertThat(InitramfsLook.of(new ArrayBytes(frames)).check()).contains(", then zstd");
        byte[] garbage = shell("cat early.cpio; echo garbage");
        assertThat(InitramfsLook.of(new ArrayBytes(garbage)).state()).isEqualTo(LinkState.DAMAGED);
    }
}
