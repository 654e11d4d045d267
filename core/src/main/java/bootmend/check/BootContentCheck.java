package bootmend.check;

import bootmend.check.BootFile.Kind;
import bootmend.fat.FileSample;
import bootmend.finding.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Boot files that are empty, filled with zeros, not whole, or not what their name says. */
record BootContentCheck() implements Check {

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        card.bootFiles().forEach((entry, uses) -> {
            FileSample sample = card.samples().get(entry.path());
            // The command line is told about by its own check as far as it can be read.
            boolean own = uses.stream().anyMatch(use -> use.file().kind() == Kind.COMMAND_LINE);
            if (sample != null && !(own && sample.doubts().isEmpty())) {
                Set<String> boards = new TreeSet<>();
                uses.forEach(use -> boards.addAll(use.boards()));
                look(entry, uses.get(0).file(), sample)
                        .ifPresent(remark ->
                                remarks.add(new Remark(remark.rule(), remark.where(), remark.what(), boards)));
            }
        });
        return remarks;
    }

    private static Optional<Remark> look(CardFiles.Entry entry, BootFile use, FileSample sample) {
        Place where = Place.file(entry.path());
        if (sample.size() == 0) {
            return Optional.of(Remark.of("boot-file-empty", where, "The file has no byte."));
        }
        if (!sample.doubts().isEmpty()) {
            return Optional.of(Remark.of(
                    "boot-file-not-whole",
                    where,
                    "Not all of its " + sample.size() + " bytes can be read: "
                            + sample.doubts().get(0) + "."));
        }
        if (sample.isAllZero()) {
            return Optional.of(Remark.of(
                    "boot-file-zero-filled",
                    where,
                    "All of the " + clusters(sample) + " looked at are zero, in a file of " + sample.size()
                            + " bytes."));
        }
        Optional<Remark> head = head(where, entry, use, sample);
        if (head.isEmpty() && sample.hasZeroTail()) {
            return Optional.of(Remark.of(
                    "boot-file-zero-tail",
                    where,
                    "Of the " + clusters(sample) + " looked at, the later half is zero."));
        }
        return head;
    }

    private static String clusters(FileSample sample) {
        int looked = sample.zeroClusters().size();
        return looked + (looked == 1 ? " cluster" : " clusters");
    }

    private static Optional<Remark> head(Place where, CardFiles.Entry entry, BootFile use, FileSample sample) {
        return switch (use.kind()) {
            case FIRMWARE ->
                BootFileHead.isElf(sample.head())
                        ? Optional.empty()
                        : Optional.of(Remark.of(
                                "firmware-not-elf",
                                where,
                                "The file begins with " + begin(sample) + ", not as an ELF file."));
            case DEVICE_TREE, OVERLAY ->
                BootFileHead.deviceTreeProblem(sample.head(), sample.size())
                        .map(problem -> Remark.of("device-tree-damaged", where, "The file " + problem + "."));
            case KERNEL -> kernel(where, entry, use, sample);
            case FIXUP, BOOTCODE, INITRAMFS, COMMAND_LINE -> Optional.empty();
        };
    }

    private static Optional<Remark> kernel(Place where, CardFiles.Entry entry, BootFile use, FileSample sample) {
        BootFileHead.Kernel found = BootFileHead.kernel(sample.head());
        boolean named64 = entry.name().toLowerCase(Locale.ROOT).matches("kernel8\\.img|kernel_2712\\.img");
        boolean known = found != BootFileHead.Kernel.NONE;
        boolean fits = known && (!use.isUsual() || named64 == (found != BootFileHead.Kernel.IMAGE_32));
        if (fits) {
            return Optional.empty();
        }
        return Optional.of(Remark.of(
                use.isUsual() ? "kernel-damaged" : "kernel-kind-unknown",
                where,
                "The file begins with " + begin(sample) + "; as a kernel it is " + found.words() + "."));
    }

    /** The first bytes in hexadecimal. */
    private static String begin(FileSample sample) {
        byte[] head = sample.head();
        StringBuilder hex = new StringBuilder();
        for (int i = 0; i < Math.min(4, head.length); i++) {
            hex.append(String.format(i == 0 ? "%02x" : " %02x", head[i] & 0xFF));
        }
        return hex.toString();
    }
}
