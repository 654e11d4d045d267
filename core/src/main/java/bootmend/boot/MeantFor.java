package bootmend.boot;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Which boards a card can be meant for, by the names of what stands on it.
 *
 * <p>A board is never left out because a file that it needs is missing: its device tree tells that it was meant, and where
 * that is what is missing, those of its kin do. Common practice, no source.
 */
final class MeantFor {

    /** Kin of a chip's first board that tell it is missing; no build takes the later ones and leaves that out. */
    private static final int ENOUGH_KIN_OF_FIRST = 2;
    /** The same for any other board, on a card that serves several chips: a build that is after every board. */
    private static final int ENOUGH_KIN = 3;

    private final BootTables tables;
    private final Set<String> names = new HashSet<>();
    private final boolean namesKernel;

    /**
     * @param fileNames names of files where boards look for device trees, kernels and start files
     * @param namesKernel whether the settings name a kernel, so that it need not go by a usual name
     */
    MeantFor(BootTables tables, List<String> fileNames, boolean namesKernel) {
        this.tables = tables;
        this.namesKernel = namesKernel;
        fileNames.forEach(name -> names.add(name.toLowerCase(Locale.ROOT)));
    }

    /** A clause on what tells so, by board id, in the boards' order; empty where nothing tells any board. */
    Map<String, String> boards() {
        Map<String, String> meant = new LinkedHashMap<>();
        boolean anyTree = tables.all().stream().anyMatch(this::hasTree);
        List<BoardFiles> byFiles = anyTree ? List.of() : byFirmwareAndKernel();
        boolean only64 =
                names.stream().noneMatch(this::isKernel32) && names.stream().anyMatch(this::isKernel64);
        for (BoardFiles board : tables.all()) {
            if (only64 && board.kernels64().isEmpty()) {
                continue;
            }
            if (hasTree(board)) {
                meant.put(board.board(), "its device tree is on the card");
            } else if (anyTree && hasLostTree(board)) {
                meant.put(board.board(), "device trees of its kin are on the card, later ones among them");
            } else if (byFiles.contains(board)) {
                meant.put(board.board(), "boot firmware or a kernel that it takes is on the card");
            }
        }
        return meant;
    }

    private boolean hasTree(BoardFiles board) {
        return board.anyTree().anyMatch(names::contains);
    }

    /** Device trees of enough kin are there, one that came later among them. */
    private boolean hasLostTree(BoardFiles board) {
        List<BoardFiles> kin = tables.all().stream()
                .filter(board::sharesChipWith)
                .filter(this::hasTree)
                .toList();
        boolean later = kin.stream().anyMatch(other -> other.order() > board.order() && other.order() < 99);
        long chips = tables.all().stream()
                .filter(this::hasTree)
                .map(BoardFiles::start)
                .distinct()
                .count();
        boolean first = board.order() == 1 && board.needsTree();
        return later && (first && kin.size() >= ENOUGH_KIN_OF_FIRST || chips > 1 && kin.size() >= ENOUGH_KIN);
    }

    private List<BoardFiles> byFirmwareAndKernel() {
        List<BoardFiles> byStart = new ArrayList<>();
        List<BoardFiles> byKernel = new ArrayList<>();
        for (BoardFiles board : tables.all()) {
            if (board.start().isPresent()
                    && names.stream()
                            .anyMatch(name -> isStart(name, board.start().get()))) {
                byStart.add(board);
            }
            if (Stream.concat(board.kernels32().stream(), board.kernels64().stream())
                    .anyMatch(names::contains)) {
                byKernel.add(board);
            }
        }
        // Start files alone tell little: builds carry those of every board.
        if (byKernel.isEmpty()) {
            return namesKernel ? byStart : List.of();
        }
        List<BoardFiles> both = new ArrayList<>(byStart);
        both.retainAll(byKernel);
        // Boards whose firmware is in their boot memory have no start file to be told by.
        if (byStart.isEmpty() || both.isEmpty()) {
            both.addAll(byStart.isEmpty() ? byKernel : byStart);
        } else {
            byKernel.stream()
                    .filter(board -> board.start().isEmpty()
                            && names.contains(board.kernels64().get(0)))
                    .forEach(both::add);
        }
        return both;
    }

    private static boolean isStart(String name, String family) {
        return name.matches("start" + family + "(_?[a-z]+)?\\.elf");
    }

    private boolean isKernel32(String name) {
        return tables.all().stream().anyMatch(board -> board.kernels32().contains(name));
    }

    private boolean isKernel64(String name) {
        return tables.all().stream().anyMatch(board -> board.kernels64().contains(name));
    }
}
