package bootmend.partition;

import bootmend.CardException;
import bootmend.NextStep;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;

/**
 * The partition a board boots from, and why it was taken.
 *
 * <p>Sources: "autoboot.txt", config_txt/autoboot.adoc, commit 04d84a86; that {@code autoboot.txt} is looked for on the
 * first FAT partition is a value from memory.
 *
 * @param reason a clause such as "the first FAT partition with boot firmware"
 */
public record BootChoice(Partition partition, String reason) {

    private static final String CONFIG_FILE = "config.txt";

    /**
     * Chooses by {@code wanted} where it is given, else by {@code autoboot.txt}, else the first bootable FAT partition,
     * else the first FAT partition.
     */
    public static BootChoice of(PartitionTable table, BootVolumes volumes, OptionalInt wanted)
            throws CardException, IOException {
        if (wanted.isPresent()) {
            return asked(table, volumes, wanted.getAsInt());
        }
        Map<Integer, BootVolumes.Top> fats = new LinkedHashMap<>();
        for (Partition partition : table.partitions()) {
            if (partition.fatType()) {
                Optional<BootVolumes.Top> top = volumes.top(partition);
                top.ifPresent(found -> fats.put(partition.number(), found));
                if (fats.size() == 1 && top.isPresent() && !needsMore(top.get())) {
                    break;
                }
            }
        }
        if (fats.isEmpty()) {
            throw noFat(table);
        }
        OptionalInt named = autoboot(fats);
        if (named.isPresent() && named.getAsInt() != 0) {
            Optional<Partition> partition =
                    fats.containsKey(named.getAsInt()) ? table.number(named.getAsInt()) : Optional.empty();
            if (partition.isPresent()) {
                return new BootChoice(partition.get(), AutobootFile.NAME + " names it");
            }
        }
        BootChoice choice = first(table, fats, BootChoice::hasFirmware, "the first FAT partition with boot firmware")
                .or(() -> first(
                        table,
                        fats,
                        top -> top.names().contains(CONFIG_FILE),
                        "the first FAT partition with a config file"))
                .or(() -> first(table, fats, top -> true, "the first FAT partition; none is bootable by what it holds"))
                .orElseThrow();
        if (named.isPresent() && named.getAsInt() != 0) {
            return new BootChoice(
                    choice.partition(),
                    choice.reason() + "; " + AutobootFile.NAME + " names partition " + named.getAsInt()
                            + ", which holds no FAT volume that can be read");
        }
        return choice;
    }

    /** Chooses as {@code wanted} says; of a volume that was named by its place, {@code table} has that one alone. */
    public static BootChoice of(PartitionTable table, BootVolumes volumes, PartitionSelection wanted)
            throws CardException, IOException {
        if (wanted instanceof PartitionSelection.AtOffset) {
            Partition volume = table.partitions().get(0);
            if (volumes.top(volume).isEmpty()) {
                throw CardException.unreadable(
                        "the volume at byte " + volume.start() + " cannot be read", "Check the place that was named.");
            }
            return new BootChoice(volume, "you named its place");
        }
        return of(
                table,
                volumes,
                wanted instanceof PartitionSelection.ByNumber number
                        ? OptionalInt.of(number.number())
                        : OptionalInt.empty());
    }

    /**
     * Refuses to change a volume to which no table leads: what was come upon by search may be what is left of an older one.
     *
     * @throws CardException of kind refused
     */
    public void refuseToChangeWhatWasSearched() throws CardException {
        if (partition.origin() == Partition.Origin.SEARCH) {
            throw CardException.refused(
                    "no partition table leads to the boot partition, which was only found by search at byte "
                            + partition.start(),
                    "Look at what it shows; if that is the card's own, name this place as its offset, and it may be changed.");
        }
    }

    private static BootChoice asked(PartitionTable table, BootVolumes volumes, int number)
            throws CardException, IOException {
        Partition partition = table.number(number)
                .orElseThrow(() -> CardException.usage(
                        "this card has no partition " + number,
                        "It has " + numbers(table.partitions()) + ".",
                        named(table.partitions())));
        if (volumes.top(partition).isEmpty()) {
            throw CardException.unreadable(
                    "partition " + number + " holds no FAT volume that can be read",
                    "",
                    NextStep.Plain.LEAVE_PARTITION_OUT);
        }
        return new BootChoice(partition, "you named it");
    }

    /** Whether partitions after a first bootable one can still change the choice. */
    private static boolean needsMore(BootVolumes.Top top) {
        return top.autoboot().isPresent() || !hasFirmware(top);
    }

    private static boolean hasFirmware(BootVolumes.Top top) {
        return top.names().stream().anyMatch(name -> name.startsWith("start") && name.endsWith(".elf"));
    }

    private static OptionalInt autoboot(Map<Integer, BootVolumes.Top> fats) {
        return fats.values()
                .iterator()
                .next()
                .autoboot()
                .map(AutobootFile::parse)
                .map(AutobootFile::bootPartition)
                .orElse(OptionalInt.empty());
    }

    private static Optional<BootChoice> first(
            PartitionTable table, Map<Integer, BootVolumes.Top> fats, Predicate<BootVolumes.Top> test, String reason) {
        return fats.entrySet().stream()
                .filter(entry -> test.test(entry.getValue()))
                .findFirst()
                .flatMap(entry -> table.number(entry.getKey()))
                .map(partition -> new BootChoice(partition, reason));
    }

    private static CardException noFat(PartitionTable table) {
        String warnings = table.warnings().isEmpty() ? "" : "; " + String.join("; ", table.warnings());
        return CardException.unreadable(
                "it has no FAT partition that can be read (found: " + numbers(table.partitions()) + warnings + ")",
                "Check that this is the card the board boots from; if it is, it may be past reading.");
    }

    private static NextStep[] named(List<Partition> partitions) {
        return partitions.isEmpty()
                ? new NextStep[0]
                : new NextStep[] {
                    new NextStep.GivePartition(
                            partitions.stream().map(Partition::number).toList())
                };
    }

    private static String numbers(List<Partition> partitions) {
        if (partitions.isEmpty()) {
            return "no partition";
        }
        StringBuilder text = new StringBuilder(partitions.size() == 1 ? "partition " : "partitions ");
        for (int i = 0; i < partitions.size(); i++) {
            text.append(i == 0 ? "" : ", ")
                    .append(partitions.get(i).number())
                    .append(" (type ")
                    .append(partitions.get(i).type())
                    .append(')');
        }
        return text.toString();
    }
}
