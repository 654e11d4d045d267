package bootmend.boot;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What {@code root=} names.
 *
 * <p>Source: the kernel, init/do_mounts.c, commit 010e85f9, and block/early-lookup.c, commit 017fb83e; major number 179
 * and eight minors a device of memory cards: the kernel's list of devices, value from memory.
 */
sealed interface RootName {

    /** {@code PARTUUID=}, with how many partitions further; compared without regard to case, by its beginning. */
    record PartitionId(String id, int further) implements RootName {}

    /** {@code PARTLABEL=}: a GPT's partition name, exactly. */
    record PartitionName(String name) implements RootName {}

    /** {@code UUID=} of a file system; no kernel looks for it by itself. */
    record FileSystemId(String id) implements RootName {}

    /** {@code LABEL=} of a file system; no kernel looks for it by itself. */
    record FileSystemLabel(String label) implements RootName {}

    /** A partition of the first memory card, which is this one. */
    record CardPartitionNumber(int number) implements RootName {}

    /** The first memory card as a whole. */
    record WholeCard() implements RootName {}

    /** Another disk, which the card does not show. */
    record OtherDisk(String name) implements RootName {}

    /** Over the network. */
    record Network() implements RootName {}

    /** In memory, from the early file system. */
    record Memory() implements RootName {}

    /** Of no published form. */
    record Malformed(String why) implements RootName {}

    /** What the kernel keeps of a root name; the rest is lost. */
    int LONGEST = 63;

    Pattern OFFSET = Pattern.compile("(.*)/PARTNROFF=(-?\\d{1,4})");
    Pattern CARD = Pattern.compile("/dev/mmcblk0(?:p(\\d{1,3}))?");
    Pattern NUMBERS = Pattern.compile("(\\d{1,4}):(\\d{1,7})");
    Pattern HEX = Pattern.compile("[0-9a-fA-F]{3,8}");
    Pattern ID = Pattern.compile("[0-9a-fA-F-]{1,36}");
    int CARD_MAJOR = 179;
    int CARD_MINORS = 8;

    /** Reads a value; never fails. */
    static RootName parse(String value) {
        if (value.length() > LONGEST) {
            return new Malformed("has more than the " + LONGEST + " characters that a kernel keeps");
        }
        String upper = value.toUpperCase(Locale.ROOT);
        if (value.startsWith("PARTUUID=")) {
            return partitionId(value.substring(9));
        } else if (value.startsWith("PARTLABEL=")) {
            return new PartitionName(value.substring(10));
        } else if (upper.startsWith("UUID=")) {
            return new FileSystemId(value.substring(5));
        } else if (upper.startsWith("LABEL=")) {
            return new FileSystemLabel(value.substring(6));
        } else if (value.startsWith("/dev/disk/by-")) {
            return byLink(value.substring("/dev/disk/by-".length()));
        } else if (value.equals("/dev/nfs") || value.startsWith("nfs:") || value.startsWith("nbd:")) {
            return new Network();
        } else if (value.matches("/dev/ram\\d*")) {
            return new Memory();
        } else if (value.startsWith("/dev/")) {
            return device(value);
        }
        Matcher numbers = NUMBERS.matcher(value);
        if (numbers.matches()) {
            return numbered(Integer.parseInt(numbers.group(1)), Integer.parseInt(numbers.group(2)), value);
        }
        if (HEX.matcher(value).matches()) {
            long both = Long.parseLong(value, 16);
            // As the kernel's old 16-bit and its new 32-bit device numbers have it.
            return both <= 0xFFFF
                    ? numbered((int) (both >> 8), (int) (both & 0xFF), value)
                    : numbered((int) (both >> 8 & 0xFFF), (int) (both & 0xFF | both >> 12 & 0xFFF00), value);
        }
        return new Malformed("has no form that a kernel knows");
    }

    private static RootName partitionId(String text) {
        Matcher offset = OFFSET.matcher(text);
        String id = offset.matches() ? offset.group(1) : text;
        if (!ID.matcher(id).matches() || !offset.matches() && text.contains("/")) {
            return new Malformed("has a PARTUUID= of no published form, at which a kernel stops waiting for its root");
        }
        return new PartitionId(id, offset.matches() ? Integer.parseInt(offset.group(2)) : 0);
    }

    /** Links that only an early file system makes. */
    private static RootName byLink(String rest) {
        int slash = rest.indexOf('/');
        String name = slash < 0 ? "" : rest.substring(slash + 1);
        return switch (slash < 0 ? "" : rest.substring(0, slash)) {
            case "uuid" -> new FileSystemId(name);
            case "label" -> new FileSystemLabel(name);
            default -> new OtherDisk("/dev/disk/by-" + rest);
        };
    }

    private static RootName device(String value) {
        Matcher card = CARD.matcher(value);
        if (card.matches()) {
            return card.group(1) == null ? new WholeCard() : new CardPartitionNumber(Integer.parseInt(card.group(1)));
        }
        if (value.length() - 5 > 31) {
            return new Malformed("has a device name of more than 31 characters");
        }
        return value.equals("/dev/root") || value.equals("/dev/")
                ? new Malformed("names no device")
                : new OtherDisk(value);
    }

    private static RootName numbered(int major, int minor, String value) {
        if (major == CARD_MAJOR && minor < CARD_MINORS) {
            return minor == 0 ? new WholeCard() : new CardPartitionNumber(minor);
        }
        return major == 1 ? new Memory() : new OtherDisk(value);
    }
}
