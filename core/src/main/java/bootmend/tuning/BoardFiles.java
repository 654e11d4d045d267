package bootmend.tuning;

import java.util.List;

/**
 * What a board must find in the root folder of its boot partition to start. File names are in lower case.
 *
 * @param board board id, such as {@code pi4}
 * @param kernels each of them serves, the default first; never empty
 * @param firmware each pair serves; empty where the board needs none
 * @param bootcode whether the board needs {@code bootcode.bin}
 * @param deviceTrees names of its device trees that stand on cards; none of them is required
 * @param citation where this is published
 */
public record BoardFiles(String board, List<String> kernels, List<FirmwarePair> firmware, boolean bootcode,
        List<String> deviceTrees, String citation) {

    public BoardFiles {
        kernels = List.copyOf(kernels);
        firmware = List.copyOf(firmware);
        deviceTrees = List.copyOf(deviceTrees);
    }
}
