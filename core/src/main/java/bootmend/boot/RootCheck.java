package bootmend.boot;

import bootmend.config.VisibleText;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.function.Predicate;

/** Whether the partition that {@code root=} names lies on the card and holds a file system that is not cut off. */
final class RootCheck {

    /** How many partitions are looked into. No source: a bound against hostile cards. */
    private static final int MOST_LOOKED = 16;

    /** FileNumbers by which early file systems, some of them inside a kernel, are told where the system is. */
    private static final List<String> OWN_WORDS = List.of("boot", "disk", "rdinit", "live-media");

    /** What the early file system is to this start. */
    enum Early {
        NONE,
        /** It hangs on something, or it cannot be told whether it is whole. */
        PERHAPS,
        THERE
    }

    private final BootCard card;
    private final CardLayout layout;
    private final int bootPartition;
    private final String file;
    private final Early early;

    /**
     * @param bootPartition the partition that this start takes
     * @param file path of the command line
     */
    RootCheck(BootCard card, int bootPartition, String file, Early early) throws IOException {
        this.card = card;
        this.layout = card.layout();
        this.bootPartition = bootPartition;
        this.file = file;
        this.early = early;
    }

    /** What the command line's {@code root=} comes to. */
    ChainPart of(CommandLine line) throws IOException {
        Optional<String> value = line.value("root");
        if (value.isEmpty()) {
            return unnamed(line);
        }
        String shown = "root=" + VisibleText.of(value.get());
        RootName name = RootName.parse(value.get());
        if (early != Early.NONE
                && (line.value("boot").isPresent() || line.value("overlayroot").isPresent())) {
            return ChainPart.whole(Found.line(file, 1, shown + ", which the early file system takes in its own way"));
        }
        if (name instanceof RootName.Network) {
            return ChainPart.whole(Found.line(file, 1, shown + " is fetched over the network, not from this card"));
        } else if (name instanceof RootName.Memory) {
            return early == Early.THERE
                    ? ChainPart.whole(Found.line(file, 1, shown + " is in memory, from the early file system"))
                    : unsure(shown + " is in memory, and what the kernel puts there is not told");
        } else if (name instanceof RootName.Malformed malformed) {
            return early == Early.NONE
                    ? stop(LinkState.DAMAGED, shown + " " + malformed.why(), Origin.WRONG_EDIT)
                    : unsure(shown + " " + malformed.why() + "; the early file system may");
        } else if (name instanceof RootName.OtherDisk other) {
            return unsure(shown + " is on " + VisibleText.of(other.name()) + ", which is not this card");
        } else if (layout.kind() == CardLayout.Kind.UNSEEN && !(early == Early.NONE && isSuper(name))) {
            return unsure(shown + " names a partition that a mounted folder does not show");
        }
        return onCard(name, shown, line);
    }

    private static boolean isSuper(RootName name) {
        return name instanceof RootName.FileSystemId || name instanceof RootName.FileSystemLabel;
    }

    private ChainPart unnamed(CommandLine line) {
        if (line.laterValue("root").isPresent()) {
            return ChainPart.stops(
                    LinkState.MISSING,
                    new Cause(
                            LinkKind.ROOT,
                            "root= stands on a later line of " + VisibleText.of(file)
                                    + ", of which the kernel gets the first alone.",
                            Origin.WRONG_EDIT,
                            new Remedy.OneLine(file)));
        }
        if (early == Early.NONE
                && OWN_WORDS.stream().anyMatch(word -> line.value(word).isPresent())) {
            return unsure("the command line names no root=; its other words may be for an early file system that is"
                    + " built into the kernel");
        }
        return early == Early.NONE
                ? stop(LinkState.MISSING, "the command line names no root=", Origin.WRONG_EDIT)
                : early == Early.THERE
                        ? ChainPart.whole(Found.line(file, 1, "no root=; the early file system finds it by itself"))
                        : unsure("the command line names no root=, and the early file system may find one");
    }

    private ChainPart onCard(RootName name, String shown, CommandLine line) throws IOException {
        if (name instanceof RootName.PartitionId id) {
            return byId(id, shown, line);
        } else if (name instanceof RootName.PartitionName wanted) {
            if (layout.kind() != CardLayout.Kind.GPT) {
                return stop(
                        LinkState.MISSING,
                        shown + " names a partition by its name, and this card's table keeps no names",
                        Origin.OTHER_CARD);
            }
            return named(
                    each -> each.name().equals(Optional.of(wanted.name())),
                    shown,
                    "no partition of this card has that name",
                    line);
        } else if (name instanceof RootName.FileSystemId id) {
            return bySuper(
                    shown,
                    line,
                    mark -> mark.id()
                            .filter(each -> each.equalsIgnoreCase(id.id()))
                            .isPresent());
        } else if (name instanceof RootName.FileSystemLabel label) {
            return bySuper(shown, line, mark -> mark.label().equals(Optional.of(label.label())));
        } else if (name instanceof RootName.CardPartitionNumber wanted) {
            return byNumber(wanted.number(), shown, line);
        }
        return layout.kind() == CardLayout.Kind.NONE
                ? stop(LinkState.MISSING, shown + " is the boot partition itself", Origin.WRONG_EDIT)
                : stop(LinkState.MISSING, shown + " is the whole card, not a partition of it", Origin.WRONG_EDIT);
    }

    private ChainPart byNumber(int number, String shown, CommandLine line) throws IOException {
        if (number > 4 && layout.hasMore() && layout.number(number).isEmpty()) {
            return unsure(shown + " is a partition inside an extended one, which was not followed");
        }
        return named(each -> each.number() == number, shown, "this card has no partition " + number, line);
    }

    private ChainPart byId(RootName.PartitionId id, String shown, CommandLine line) throws IOException {
        String wanted = id.id().toLowerCase(Locale.ROOT);
        Optional<CardPartition> first = layout.partitions().stream()
                .filter(each -> each.id().filter(own -> own.startsWith(wanted)).isPresent())
                .findFirst();
        if (first.isPresent() && id.further() != 0) {
            return byNumber(first.get().number() + id.further(), shown, line);
        }
        if (first.isPresent()) {
            return partition(first.get(), shown, line);
        }
        Optional<String> disk = layout.diskId();
        if (layout.kind() == CardLayout.Kind.MBR && disk.isPresent() && wanted.startsWith(disk.get() + "-")) {
            String number = wanted.substring(disk.get().length() + 1);
            if (number.matches("[0-9a-f]{2}") && Integer.parseInt(number, 16) > 4 && layout.hasMore()) {
                return unsure(shown + " is a partition inside an extended one, which was not followed");
            }
            return stop(
                    LinkState.MISSING,
                    shown + " names partition "
                            + (number.matches("[0-9a-f]{2}") ? Integer.parseInt(number, 16) : VisibleText.of(number))
                            + " of this card, which has no such partition",
                    Origin.WRONG_EDIT);
        }
        return elsewhere(shown, "names another disk; this card is " + disk.orElse("without an id"));
    }

    /** A name that fits nothing on this card: another card's, or a disk that is to be attached beside it. */
    private ChainPart elsewhere(String shown, String why) throws IOException {
        return candidate().isPresent()
                ? stop(LinkState.MISSING, shown + " " + why + ", and it holds a system of its own", Origin.OTHER_CARD)
                : layout.partitions().size() > 1
                        ? stop(LinkState.MISSING, shown + " " + why, Origin.OTHER_CARD)
                        : unsure(shown + " " + why + " and holds no system; that disk would have to be attached");
    }

    private ChainPart bySuper(String shown, CommandLine line, Predicate<FileSystemMark> fits) throws IOException {
        if (early == Early.NONE) {
            return stop(
                    LinkState.MISSING,
                    shown
                            + " names a file system, which a kernel does not look for by itself: only an early file system"
                            + " does, and none is loaded",
                    Origin.WRONG_EDIT);
        }
        for (CardPartition each : looked()) {
            Optional<FileSystemMark> mark = FileSystemMark.read(card, each);
            if (mark.filter(fits).isPresent()) {
                return early == Early.PERHAPS
                        ? unsure(shown + " needs the early file system, of which the card does not tell enough")
                        : partition(each, shown, line);
            }
        }
        return elsewhere(shown, "names a file system that is not on this card");
    }

    private ChainPart named(Predicate<CardPartition> test, String shown, String otherwise, CommandLine line)
            throws IOException {
        Optional<CardPartition> found =
                layout.partitions().stream().filter(test).findFirst();
        return found.isPresent()
                ? partition(found.get(), shown, line)
                : stop(
                        LinkState.MISSING,
                        shown + ", and " + otherwise,
                        candidate().isPresent() ? Origin.WRONG_EDIT : Origin.STOPPED_COPY);
    }

    /** What stands on the partition that is meant. */
    private ChainPart partition(CardPartition partition, String shown, CommandLine line) throws IOException {
        String where = "partition " + partition.number();
        if (partition.number() == bootPartition || layout.kind() == CardLayout.Kind.NONE) {
            return early == Early.NONE
                    ? stop(
                            LinkState.MISSING,
                            shown + " is the boot partition itself, which holds no system",
                            Origin.WRONG_EDIT)
                    : unsure(shown + " is the boot partition itself; the early file system may know why");
        }
        OptionalLong end = layout.bytes();
        Optional<FileSystemMark> read = FileSystemMark.read(card, partition);
        if (read.isEmpty() || end.isPresent() && partition.start() >= end.getAsLong()) {
            return cut(
                    where,
                    shown + " is " + where + ", which begins at byte " + partition.start()
                            + ", past the end of this card or image");
        }
        FileSystemMark mark = read.get();
        Found found = new Found(
                where,
                OptionalInt.empty(),
                OptionalLong.of(partition.length()),
                LinkState.WHOLE,
                shown + ", holds " + mark.kind().word());
        if (mark.kind() == FileSystemMark.Kind.ZEROS) {
            return ChainPart.stops(
                    LinkState.DAMAGED,
                    new Cause(
                            LinkKind.ROOT,
                            shown + " is " + where + ", which begins with zeros and holds no file system.",
                            Origin.STOPPED_COPY,
                            new Remedy.WriteAnew()),
                    found);
        }
        if (mark.bytes().isPresent()) {
            long needed = mark.bytes().getAsLong();
            if (end.isPresent() && needed > end.getAsLong() - partition.start()) {
                return cut(
                        where,
                        shown + " is " + where + ", whose file system has " + needed + " bytes, but the card or image"
                                + " ends after " + (end.getAsLong() - partition.start()) + " of them");
            }
            if (needed > partition.length()) {
                return ChainPart.stops(
                        LinkState.DAMAGED,
                        new Cause(
                                LinkKind.ROOT,
                                shown + " is " + where + ", whose file system has " + needed
                                        + " bytes, more than the partition's " + partition.length() + ".",
                                Origin.NOT_KNOWN,
                                new Remedy.WriteAnew()),
                        found);
            }
        }
        return mounted(mark, shown, where, found, line);
    }

    private ChainPart mounted(FileSystemMark mark, String shown, String where, Found found, CommandLine line) {
        FileSystemMark.Kind kind = mark.kind();
        if (!kind.canBeRoot()) {
            boolean opened = kind == FileSystemMark.Kind.CONTAINER && early == Early.THERE;
            return opened
                    ? ChainPart.whole(found)
                    : kind == FileSystemMark.Kind.OTHER || early == Early.PERHAPS
                            ? unsure(shown + " is " + where + ", which holds " + kind.word(), found)
                            : stop(
                                    LinkState.DAMAGED,
                                    shown + " is " + where + ", which holds " + kind.word()
                                            + ", from which no kernel starts by itself",
                                    Origin.WRONG_EDIT);
        }
        Optional<String> types = line.value("rootfstype");
        if (early == Early.NONE
                && types.isPresent()
                && Arrays.stream(types.get().split(",", -1)).noneMatch(type -> isType(type, kind))) {
            return ChainPart.stops(
                    LinkState.DAMAGED,
                    new Cause(
                            LinkKind.ROOT,
                            "rootfstype=" + VisibleText.of(types.get()) + " stands on the command line, but " + where
                                    + " holds " + kind.word() + ".",
                            Origin.WRONG_EDIT,
                            new Remedy.CorrectLine(file, 1)),
                    found);
        }
        return mark.hasErrors()
                ? ChainPart.whole(
                        List.of(found, Found.words(where, "its file system carries the mark of errors found in use")))
                : ChainPart.whole(found);
    }

    private static boolean isType(String type, FileSystemMark.Kind kind) {
        return type.equals(kind.word())
                || kind.isExt() && type.matches("ext[234]")
                || type.equals("auto")
                || kind == FileSystemMark.Kind.FAT && type.equals("msdos");
    }

    private ChainPart unsure(String why, Found... found) {
        return ChainPart.unknown(why, found.length == 0 ? new Found[] {Found.words(file, why)} : found);
    }

    private ChainPart cut(String where, String what) {
        return ChainPart.stops(
                LinkState.DAMAGED,
                new Cause(LinkKind.ROOT, what + ".", Origin.STOPPED_COPY, new Remedy.CopyAgain()),
                Found.words(where, "its place in the table, and where the card ends"));
    }

    private ChainPart stop(LinkState state, String what, Origin origin) {
        Optional<CardPartition> fit;
        try {
            fit = candidate();
        } catch (IOException e) {
            fit = Optional.empty();
        }
        String sentence = Character.toUpperCase(what.charAt(0)) + what.substring(1) + ".";
        boolean hasNone = layout.kind() != CardLayout.Kind.UNSEEN
                && fit.isEmpty()
                && layout.partitions().size() < 2;
        return ChainPart.stops(
                state,
                new Cause(
                        LinkKind.ROOT,
                        what.startsWith("root=") ? what + "." : sentence,
                        origin,
                        hasNone
                                ? new Remedy.WriteAnew()
                                : new Remedy.FitRoot(
                                        file, fit.map(this::fitting).orElse(""))),
                Found.words(file, "its root= was read"));
    }

    private String fitting(CardPartition partition) {
        return partition.id().map(id -> "PARTUUID=" + id).orElse("/dev/mmcblk0p" + partition.number());
    }

    private List<CardPartition> looked() {
        return layout.partitions().stream().limit(MOST_LOOKED).toList();
    }

    /** The first partition that holds a file system from which a kernel could start. */
    private Optional<CardPartition> candidate() throws IOException {
        for (CardPartition each : looked()) {
            if (each.number() != bootPartition) {
                Optional<FileSystemMark> mark = FileSystemMark.read(card, each);
                if (mark.filter(found -> found.kind().canBeRoot() && found.kind() != FileSystemMark.Kind.FAT)
                        .isPresent()) {
                    return Optional.of(each);
                }
            }
        }
        return Optional.empty();
    }
}
