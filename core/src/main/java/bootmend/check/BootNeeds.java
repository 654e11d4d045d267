package bootmend.check;

import bootmend.check.BootFile.Kind;
import bootmend.config.LineKind;
import bootmend.config.Truth;
import bootmend.finding.Place;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.resolve.Candidate;
import bootmend.tuning.resolve.Effective;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Works out which files a board starts from, as its own defaults and the config file name them.
 *
 * <p>Source: "Boot options", config_txt/boot.adoc, commit f6839a6f. Values from memory: that a prefix without kernel
 * and device tree behind it is dropped, that overlays are shared unless {@code README} stands behind both prefixes, and
 * the names of the firmware's variants.
 */
final class BootNeeds {

    /** Keys that this class reads, for whoever looks for misspelt ones. */
    static final Set<String> KEYS = Set.of(
            "kernel",
            "device_tree",
            "start_file",
            "fixup_file",
            "start_x",
            "start_debug",
            "gpu_mem",
            "arm_64bit",
            "os_prefix",
            "overlay_prefix",
            "dtoverlay",
            "ramfsfile",
            "cmdline");

    /** How many prefixes that depend on something are followed. No source: a bound against hostile cards. */
    private static final int MOST_PREFIXES = 8;

    private final BoardReading reading;
    private final BoardFiles board;
    private final CardFiles files;

    BootNeeds(BoardReading reading, BoardFiles board, CardFiles files) {
        this.reading = reading;
        this.board = board;
        this.files = files;
    }

    /** Every file, each once. */
    List<BootFile> all() {
        return List.copyOf(new LinkedHashSet<>(needed()));
    }

    private List<BootFile> needed() {
        List<BootFile> all = new ArrayList<>(firmware());
        for (String prefix : prefixesInForce()) {
            all.addAll(kernels(prefix));
            all.addAll(deviceTrees(prefix));
            all.addAll(overlays(prefix));
            all.addAll(initialFileSystems(prefix));
            all.addAll(namedOr("cmdline", Kind.COMMAND_LINE, prefix, List.of("cmdline.txt")));
        }
        return all;
    }

    /**
     * Whether kernel and firmware that the board needs by its own defaults are there. A device tree tells boards apart
     * only on a card that has some; without any, a board is not ruled out.
     */
    boolean boardCanBoot() {
        boolean deviceTrees = files.hasInRoot(".dtb");
        return needed().stream()
                .noneMatch(file -> file.isUsual()
                        && file.isMissing(files)
                        && file.kind() != Kind.COMMAND_LINE
                        && (deviceTrees || file.kind() != Kind.DEVICE_TREE));
    }

    /** The lines whose {@code os_prefix} leads to no kernel and device tree. */
    List<Candidate> prefixesToNowhere() {
        return prefixes().stream()
                .filter(prefix -> !leadsSomewhere(prefix.value()))
                .toList();
    }

    private List<Candidate> prefixes() {
        return reading.possibleSetting("os_prefix").stream()
                .limit(MOST_PREFIXES)
                .toList();
    }

    private Set<String> prefixesInForce() {
        Set<String> inForce = new LinkedHashSet<>();
        prefixes().forEach(prefix -> inForce.add(leadsSomewhere(prefix.value()) ? prefix.value() : ""));
        if (hasDefault("os_prefix")) {
            inForce.add("");
        }
        return inForce;
    }

    private boolean leadsSomewhere(String prefix) {
        return Stream.concat(kernels(prefix).stream(), deviceTrees(prefix).stream())
                .noneMatch(file -> file.isMissing(files));
    }

    private List<BootFile> firmware() {
        List<BootFile> wanted = new ArrayList<>();
        if (board.bootcode()) {
            wanted.add(BootFile.usual(Kind.BOOTCODE, List.of("bootcode.bin")));
        }
        if (board.firmware().isPresent()) {
            Optional<Variant> variant = variant();
            String family = board.firmware().get();
            String middle = family
                    + variant.map(each -> (family.isEmpty() ? "_" : "") + each.letters())
                            .orElse("");
            Optional<Place> by = variant.map(Variant::by);
            wanted.addAll(firmware("start_file", Kind.FIRMWARE, "start" + middle + ".elf", by));
            wanted.addAll(firmware("fixup_file", Kind.FIXUP, "fixup" + middle + ".dat", by));
        }
        return wanted;
    }

    private List<BootFile> firmware(String key, Kind kind, String usual, Optional<Place> by) {
        List<Candidate> named = reading.possibleSetting(key);
        if (named.isEmpty()) {
            return List.of(new BootFile(kind, List.of(usual), by));
        }
        return named.stream()
                .map(each -> BootFile.named(kind, behind("", each.value()), Places.of(each)))
                .toList();
    }

    private record Variant(String letters, Place by) {}

    private Optional<Variant> variant() {
        return Stream.of(variant("start_debug", 1, "db"), variant("start_x", 1, "x"), variant("gpu_mem", 16, "cd"))
                .flatMap(Optional::stream)
                .findFirst();
    }

    private Optional<Variant> variant(String key, long value, String letters) {
        return reading.possibleSetting(key).stream()
                .filter(each -> TuningNumber.parse(each.value()).orElse(-1) == value)
                .map(each -> new Variant(letters, Places.of(each)))
                .findFirst();
    }

    private List<BootFile> kernels(String prefix) {
        List<String> usual = new ArrayList<>();
        List<Candidate> bits = reading.possibleSetting("arm_64bit");
        boolean sixtyFour = bits.isEmpty()
                ? board.defaultsTo64()
                : bits.stream()
                        .anyMatch(each -> TuningNumber.parse(each.value()).orElse(0) != 0);
        boolean thirtyTwo = bits.isEmpty()
                ? !board.defaultsTo64()
                : bits.stream()
                        .anyMatch(each -> TuningNumber.parse(each.value()).orElse(1) == 0);
        if (sixtyFour || board.kernels32().isEmpty()) {
            usual.addAll(board.kernels64());
        }
        if (thirtyTwo || board.kernels64().isEmpty()) {
            usual.addAll(board.kernels32());
        }
        return namedOr("kernel", Kind.KERNEL, prefix, usual);
    }

    private List<BootFile> deviceTrees(String prefix) {
        return namedOr("device_tree", Kind.DEVICE_TREE, prefix, board.deviceTrees());
    }

    private List<BootFile> namedOr(String key, Kind kind, String prefix, List<String> usual) {
        List<BootFile> wanted = new ArrayList<>();
        reading.possibleSetting(key)
                .forEach(each -> wanted.add(BootFile.named(kind, behind(prefix, each.value()), Places.of(each))));
        if (hasDefault(key)) {
            wanted.add(BootFile.usual(
                    kind, usual.stream().map(name -> behind(prefix, name)).toList()));
        }
        return wanted;
    }

    private boolean hasDefault(String key) {
        Optional<Effective> setting = reading.resolution().setting(key);
        return setting.isEmpty()
                || setting.get().mayBeStock()
                || reading.possibleSetting(key).isEmpty();
    }

    private List<BootFile> overlays(String prefix) {
        String folder = reading.possibleSetting("overlay_prefix").stream()
                .map(Candidate::value)
                .findFirst()
                .orElse("overlays/");
        String place =
                !prefix.isEmpty() && files.has(behind(prefix, folder + "README")) ? behind(prefix, folder) : folder;
        List<BootFile> wanted = new ArrayList<>();
        for (Candidate line : reading.resolution().assignments("dtoverlay")) {
            String name = line.value().split("[,:]", 2)[0].strip();
            if (!name.isEmpty()) {
                wanted.add(BootFile.named(Kind.OVERLAY, behind(place, name + ".dtbo"), Places.of(line)));
            }
        }
        return wanted;
    }

    private List<BootFile> initialFileSystems(String prefix) {
        List<BootFile> wanted = new ArrayList<>();
        reading.possibleSetting("ramfsfile")
                .forEach(line -> names(line.value())
                        .forEach(name ->
                                wanted.add(BootFile.named(Kind.INITRAMFS, behind(prefix, name), Places.of(line)))));
        reading.resolution().reading().lines().stream()
                .filter(line -> line.line().kind() instanceof LineKind.Other
                        && line.condition().truth() != Truth.FALSE)
                .forEach(line -> {
                    String[] words = line.line().text().strip().split("\\s+", -1);
                    if (words.length > 1 && words[0].equals("initramfs")) {
                        names(words[1])
                                .forEach(name -> wanted.add(
                                        BootFile.named(Kind.INITRAMFS, behind(prefix, name), Places.of(line))));
                    }
                });
        return wanted;
    }

    private static Stream<String> names(String list) {
        return Stream.of(list.split(",", -1)).filter(name -> !name.isEmpty());
    }

    /** A prefix is put in front as it is; a name that begins with a slash escapes it. */
    private static String behind(String prefix, String name) {
        return name.startsWith("/") ? name.substring(1) : prefix + name;
    }
}
