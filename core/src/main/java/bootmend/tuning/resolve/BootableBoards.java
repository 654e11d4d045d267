package bootmend.tuning.resolve;

import bootmend.tuning.BoardFiles;
import bootmend.tuning.BoardFileTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Tells from the names in the root folder which boards a card can boot: the kernel and the firmware decide, and device
 * trees narrow them down where a known one is there.
 *
 * <p>Source: "Boot options", config_txt/boot.adoc, commit f6839a6f. A kernel in another folder ({@code os_prefix}, or a
 * path in {@code kernel}) is taken to be there.
 */
public final class BootableBoards {

    private static final String BOOTCODE = "bootcode.bin";

    private final BoardFileTable table;

    public BootableBoards(BoardFileTable table) {
        this.table = table;
    }

    /**
     * What the board would look for in vain, each as a phrase that names files; empty where it can boot.
     *
     * @param names names of the files in the root folder, in lower case
     * @param onBoard what the config file comes to on the board, which must be known
     */
    public List<String> missing(Set<String> names, Resolution onBoard) {
        String board = onBoard.facts().board().orElseThrow().id();
        Optional<BoardFiles> files = table.find(board);
        if (files.isEmpty()) {
            return List.of("boot files, which are not known for " + board);
        }
        List<String> missing = new ArrayList<>();
        if (files.get().bootcode() && !names.contains(BOOTCODE)) {
            missing.add(BOOTCODE);
        }
        if (!files.get().firmware().isEmpty() && files.get().firmware().stream()
                .noneMatch(pair -> names.contains(pair.firmware()) && names.contains(pair.fixup()))) {
            missing.add(files.get().firmware().get(0).words());
        }
        if (!isNamed(onBoard, "os_prefix")) {
            List<String> kernels = kernels(files.get(), onBoard);
            if (kernels.stream().noneMatch(kernel -> kernel.contains("/") || names.contains(kernel))) {
                missing.add(String.join(" or ", kernels));
            }
            if (!isNamed(onBoard, "device_tree") && isKnownElsewhere(names, files.get())) {
                missing.add(String.join(" or ", files.get().deviceTrees()));
            }
        }
        return missing;
    }

    private boolean isKnownElsewhere(Set<String> names, BoardFiles files) {
        return !files.deviceTrees().isEmpty() && files.deviceTrees().stream().noneMatch(names::contains)
                && table.deviceTrees().stream().anyMatch(names::contains);
    }

    /** Every kernel that may be the one: those the config file names, and the defaults where it may name none. */
    private static List<String> kernels(BoardFiles files, Resolution onBoard) {
        Optional<Effective> named = onBoard.setting("kernel");
        if (named.isEmpty()) {
            return files.kernels();
        }
        Stream<String> possible = Stream.concat(Stream.of(named.get().chosen()), named.get().otherwise().stream())
                .map(candidate -> candidate.value().replace('\\', '/').replaceFirst("^/+", "")
                        .toLowerCase(Locale.ROOT));
        return Stream.concat(possible, named.get().mayBeStock() ? files.kernels().stream() : Stream.empty())
                .distinct().toList();
    }

    private static boolean isNamed(Resolution onBoard, String key) {
        return onBoard.setting(key).filter(setting -> !setting.value().isEmpty()).isPresent();
    }
}
