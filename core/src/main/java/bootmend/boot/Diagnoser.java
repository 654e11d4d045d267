package bootmend.boot;

import bootmend.CardException;
import bootmend.boot.Settings.Value;
import bootmend.config.ConfigName;
import bootmend.config.IncludeProblem;
import bootmend.config.VisibleText;
import bootmend.device.OutsideDeviceException;
import bootmend.device.PartitionWindow;
import bootmend.fat.BadVolumeException;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fat.FileBytes;
import bootmend.partition.AutobootFile;
import bootmend.partition.Partition;
import bootmend.partition.PartitionTable;
import bootmend.partition.PartitionTableReader;
import bootmend.tuning.Board;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Resolution;
import bootmend.tuning.resolve.Resolver;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Works a diagnosis out, each file looked into once for all boards. */
final class Diagnoser {

    private static final String TRY_ONCE_CONFIG = "tryboot.txt";
    private static final String RAMDISK = "boot.img";
    private static final String TRY_ONCE_RAMDISK = "tryboot.img";
    private static final int MOST_VERSIONS = 32;

    static final List<String> NOT_TOLD = List.of(
            "Boards from pi4 on keep settings in their own boot memory too: which disk they try first, and lines that"
                    + " are added to config.txt. No card shows them.",
            "Whether supply, cooling and the board itself are sound, no card shows.");

    private final BootCard card;
    private final BoardFacts facts;
    private final BootTables tables;
    private final Depth depth;
    private final Resolver resolver;
    private final BootFolder boot;
    private final Map<Integer, Optional<BootFolder>> others = new HashMap<>();
    /** By the folder that holds them and their entry. */
    private final Map<List<Object>, Inner> images = new HashMap<>();

    private final Set<String> startFiles = new LinkedHashSet<>();
    private final Set<FirmwareVersion> versions = new LinkedHashSet<>();

    Diagnoser(BootCard card, BoardFacts facts, BootTables tables, Depth depth) {
        this.card = new RememberedCard(card);
        this.facts = facts;
        this.tables = tables;
        this.depth = depth;
        this.resolver = new Resolver(tables.tuning());
        this.boot = new BootFolder(card.files(), depth);
    }

    /** A boot ramdisk: its files, or why there are none. */
    private record Inner(Optional<BootFolder> folder, String problem) {}

    /** Which files a start takes: of which partition, by which config file. */
    private record Way(BootChain.Start start, int partition, BootFolder folder, String config) {}

    BootDiagnosis diagnose() throws IOException {
        Map<String, String> meant = new LinkedHashMap<>();
        boolean none = false;
        if (facts.board().isPresent()) {
            meant.put(facts.board().get().id(), "it was asked for");
        } else {
            meant.putAll(new MeantFor(
                            tables,
                            names(),
                            settings(boot, ConfigName.NAME, facts).values("kernel").stream()
                                    .anyMatch(value -> value.value().isPresent()))
                    .boards());
            none = meant.isEmpty();
            if (none) {
                tables.all().forEach(board -> meant.put(board.board(), "nothing on the card tells another"));
            }
        }
        boolean once = facts.tryboot().orElse(false);
        // What a board reads instead once is another file, which a listing does not tell of.
        Optional<Way> tryOnce = depth == Depth.LISTING && !once ? Optional.empty() : tryOnce();
        List<BoardDiagnosis> boards = new ArrayList<>();
        for (Map.Entry<String, String> each : meant.entrySet()) {
            Board board = tables.tuning().boards().find(each.getKey()).orElseThrow();
            Way ordinary = new Way(BootChain.Start.ORDINARY, card.bootPartition(), boot, ConfigName.NAME);
            Way asked = once
                    ? tryOnce.orElse(new Way(BootChain.Start.TRY_ONCE, card.bootPartition(), boot, TRY_ONCE_CONFIG))
                    : ordinary;
            BootChain chain = chain(board, asked);
            boards.add(new BoardDiagnosis(
                    board.id(),
                    each.getValue(),
                    chain,
                    once || tryOnce.isEmpty() ? Optional.empty() : Optional.of(chain(board, tryOnce.get()))));
        }
        return new BootDiagnosis(boards, none, versions(), NOT_TOLD);
    }

    /** Builds in the start files that the boards take, and in update images; no other file is opened. */
    List<FirmwareVersion> builds() throws IOException {
        diagnose();
        Set<String> names = new LinkedHashSet<>(startFiles);
        tables.updates().forEach(file -> names.add(file.name()));
        List<FirmwareVersion> builds = new ArrayList<>();
        for (String name : names) {
            Optional<DirectoryEntry> entry = boot.file(name);
            if (entry.isPresent()) {
                FirmwareVersion.in(entry.get().name(), boot.files().bytes(entry.get()))
                        .ifPresent(builds::add);
            }
        }
        return builds;
    }

    /** Builds in the start files that boards take, then in the others and in update images. */
    private List<FirmwareVersion> versions() throws IOException {
        Set<String> names = new LinkedHashSet<>(startFiles);
        for (String name : boot.names("")) {
            if (name.toLowerCase(Locale.ROOT).matches("start[a-z0-9_]*\\.elf")) {
                names.add(name);
            }
        }
        tables.updates().forEach(file -> names.add(file.name()));
        for (String name : names) {
            if (versions.size() < MOST_VERSIONS) {
                boot.version(name).ifPresent(versions::add);
            }
        }
        return List.copyOf(versions);
    }

    /** Names where boards look: the root, folders that a prefix may name, and inside a boot ramdisk. */
    private List<String> names() throws IOException {
        List<String> names = new ArrayList<>(boot.names(""));
        Settings settings = settings(boot, ConfigName.NAME, facts);
        for (Value prefix : settings.values("os_prefix")) {
            names.addAll(boot.names(prefix.value().orElse("")));
        }
        if (settings.values("upstream_kernel").stream().anyMatch(each -> each.is(1))) {
            names.addAll(boot.names("upstream"));
        }
        if (depth != Depth.LISTING
                && settings.earlyValues("boot_ramdisk").stream().anyMatch(each -> each.is(1))) {
            Inner inner = inner(boot, RAMDISK);
            if (inner.folder().isPresent()) {
                names.addAll(inner.folder().get().names(""));
            }
        }
        return names;
    }

    private Settings settings(BootFolder folder, String config, BoardFacts board) throws IOException {
        ConfigSource source = folder.config(config);
        return new Settings(source.on(board, resolver), source.name());
    }

    /**
     * The way of a try-once start, where the card has one of its own.
     *
     * <p>Sources: config_txt/autoboot.adoc, commit 04d84a86; bootflow-eeprom.adoc, commit 33cd51c5.
     */
    private Optional<Way> tryOnce() throws IOException {
        Optional<byte[]> autoboot = autoboot();
        if (autoboot.isPresent() && AutobootFile.parse(autoboot.get()).switchesPartition()) {
            OptionalInt number = TryOncePartition.in(autoboot.get());
            Optional<BootFolder> folder = number.isPresent() ? folder(number.getAsInt()) : Optional.empty();
            if (folder.isPresent()) {
                return Optional.of(new Way(BootChain.Start.TRY_ONCE, number.getAsInt(), folder.get(), ConfigName.NAME));
            }
        }
        return boot.has(TRY_ONCE_CONFIG)
                ? Optional.of(new Way(BootChain.Start.TRY_ONCE, card.bootPartition(), boot, TRY_ONCE_CONFIG))
                : Optional.empty();
    }

    /** On the first FAT partition (value from memory). */
    private Optional<byte[]> autoboot() throws IOException {
        List<CardPartition> partitions = card.layout().partitions();
        Optional<BootFolder> first = Optional.of(boot);
        for (int i = 0; i < Math.min(8, partitions.size()); i++) {
            Optional<BootFolder> found = folder(partitions.get(i).number());
            if (found.isPresent()) {
                first = found;
                break;
            }
        }
        Optional<DirectoryEntry> file = first.get().file(AutobootFile.NAME);
        return file.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        first.get().read(file.get(), AutobootFile.MAX_BYTES).bytes());
    }

    private Optional<BootFolder> folder(int partition) throws IOException {
        if (partition == card.bootPartition()) {
            return Optional.of(boot);
        }
        Optional<BootFolder> folder = others.get(partition);
        if (folder == null) {
            folder = card.files(partition).map(files -> new BootFolder(files, depth));
            others.put(partition, folder);
        }
        return folder;
    }

    private BootChain chain(Board board, Way way) throws IOException {
        BoardFiles files = tables.of(board.id());
        BoardFacts known = facts.withBoard(board).withTryboot(way.start() == BootChain.Start.TRY_ONCE);
        Settings settings = settings(way.folder(), way.config(), known);
        Map<LinkKind, ChainPart> parts = new EnumMap<>(LinkKind.class);
        parts.put(LinkKind.PARTITION, new PartitionCheck(card, way.folder().files(), way.partition()).on(board));
        parts.put(
                LinkKind.UPDATE,
                new WaitingUpdateCheck(way.folder(), tables)
                        .on(board.id(), board.chip(), files.secondStage().isEmpty()));
        BootFolder folder = way.folder();
        ConfigSource config = folder.config(way.config());
        ChainPart ramdisk = ChainPart.whole();
        List<Value> asked = settings.earlyValues("boot_ramdisk");
        if (asked.stream().allMatch(each -> each.is(1))) {
            String name = way.start() == BootChain.Start.TRY_ONCE
                            && way.config().equals(TRY_ONCE_CONFIG)
                            && way.folder().has(TRY_ONCE_RAMDISK)
                    ? TRY_ONCE_RAMDISK
                    : RAMDISK;
            if (depth == Depth.LISTING && way.folder().has(name)) {
                return unopened(board, way, parts, settings);
            }
            Inner inner = inner(way.folder(), name);
            if (inner.folder().isEmpty()) {
                return gone(board, way, parts, config, inner, settings);
            }
            Found outer =
                    Found.words(name, "boot ramdisk; firmware, settings and all that follow are read from inside it");
            ramdisk = ChainPart.all(List.of(ChainPart.whole(outer), configPart(files, config, settings)));
            folder = inner.folder().get();
            config = folder.config(ConfigName.NAME);
            settings = new Settings(config.on(known, resolver), config.name());
        } else if (asked.stream().anyMatch(each -> each.is(1))) {
            ramdisk = ChainPart.unknown("whether boot_ramdisk=1 counts hangs on the board");
        }
        FirmwareCheck firmware = new FirmwareCheck(way.folder(), folder, files, tables, settings, known);
        parts.put(LinkKind.FIRMWARE, firmware.check());
        for (String start : firmware.taken()) {
            startFiles.add(start);
            folder.version(start).ifPresent(versions::add);
        }
        parts.put(LinkKind.CONFIG, ChainPart.all(List.of(ramdisk, configPart(files, config, settings))));
        parts.putAll(started(way, folder, files, settings, known));
        return new BootChain(board.id(), way.start(), links(parts), verdict(parts, settings.resolution()));
    }

    /** A start that goes no further than its boot ramdisk. */
    private BootChain gone(
            Board board, Way way, Map<LinkKind, ChainPart> parts, ConfigSource config, Inner inner, Settings settings) {
        Cause cause = new Cause(
                LinkKind.FIRMWARE,
                inner.problem() + "; boot_ramdisk=1 has the board read everything from it.",
                inner.problem().contains("not on the card") ? Origin.WRONG_EDIT : Origin.CUT_WRITE,
                new Remedy.PutFiles(List.of(RAMDISK)));
        parts.put(
                LinkKind.FIRMWARE,
                ChainPart.stops(
                        inner.problem().contains("not on the card") ? LinkState.MISSING : LinkState.DAMAGED, cause));
        parts.put(LinkKind.CONFIG, ChainPart.whole(Found.words(config.name(), "asks for a boot ramdisk")));
        for (LinkKind kind : LinkKind.values()) {
            parts.putIfAbsent(kind, ChainPart.unknown("it would be in the boot ramdisk"));
        }
        return new BootChain(board.id(), way.start(), links(parts), verdict(parts, settings.resolution()));
    }

    /** A start whose files are all in a boot ramdisk that was not looked into. */
    private BootChain unopened(Board board, Way way, Map<LinkKind, ChainPart> parts, Settings settings) {
        for (LinkKind kind : LinkKind.values()) {
            parts.putIfAbsent(kind, ChainPart.unknown("it is in the boot ramdisk, which was not looked into"));
        }
        return new BootChain(board.id(), way.start(), links(parts), verdict(parts, settings.resolution()));
    }

    private Map<LinkKind, ChainPart> started(
            Way way, BootFolder folder, BoardFiles files, Settings settings, BoardFacts known) throws IOException {
        Map<LinkKind, List<ChainPart>> all = new EnumMap<>(LinkKind.class);
        Set<String> done = new LinkedHashSet<>();
        for (Value upstream : settings.values("upstream_kernel")) {
            for (Value named : settings.values("os_prefix")) {
                boolean first = upstream.is(1);
                String prefix = named.value().orElse(first ? "upstream/" : "");
                StartFiles start = new StartFiles(card, way.partition(), folder, files, settings, known, prefix, first);
                boolean dropped = !prefix.isEmpty() && !start.leadsSomewhere();
                if (dropped) {
                    start = new StartFiles(card, way.partition(), folder, files, settings, known, "", first);
                }
                if (done.add((dropped ? "" : prefix) + "\n" + first)) {
                    Found note = Found.words(
                            prefix, "prefix without kernel and device tree behind it; the board leaves it out");
                    start.check()
                            .forEach((kind, part) -> all.computeIfAbsent(kind, none -> new ArrayList<>())
                                    .add(
                                            dropped && kind == LinkKind.KERNEL
                                                    ? ChainPart.all(List.of(ChainPart.whole(note), part))
                                                    : part));
                }
            }
        }
        Map<LinkKind, ChainPart> joined = new EnumMap<>(LinkKind.class);
        all.forEach((kind, parts) -> joined.put(kind, ChainPart.oneOf(parts, "which prefix the settings come to")));
        return joined;
    }

    /** The config file: what a board without one does is its own matter; from pi5 on it must be there. */
    private ChainPart configPart(BoardFiles files, ConfigSource config, Settings settings) {
        List<ChainPart> parts = new ArrayList<>();
        config.entry()
                .ifPresent(entry -> parts.add(ChainPart.whole(Found.file(
                        config.name(), entry.size(), config.document().lines().size() + " lines read"))));
        config.problem().ifPresent(problem -> {
            boolean stops = files.needsConfig() && problem.state() == LinkState.MISSING;
            Found found = Found.words(config.name(), problem.sentence());
            // A clause may begin with the file's name, which stays as it is written.
            String sentence = problem.sentence().startsWith("there")
                    ? "There" + problem.sentence().substring("there".length())
                    : problem.sentence();
            parts.add(
                    stops
                            ? ChainPart.stops(
                                    problem.state(),
                                    new Cause(
                                            LinkKind.CONFIG,
                                            sentence + ", and " + files.board() + " does not start without one.",
                                            problem.origin(),
                                            problem.remedy()),
                                    found)
                            : ChainPart.lacking(
                                    problem.state(),
                                    problem.sentence() + "; the board starts with its own defaults",
                                    found));
        });
        config.oddForms().forEach(form -> parts.add(ChainPart.whole(Found.words(config.name(), form))));
        settings.resolution().reading().problems().stream()
                .limit(8)
                .forEach(problem -> parts.add(ChainPart.whole(Found.line(
                        problem.file(),
                        problem.line(),
                        problem.kind() == IncludeProblem.Kind.MISSING
                                ? "includes " + problem.name() + ", which is not there: nothing is read in its place"
                                : problem.sentence()))));
        return ChainPart.all(parts);
    }

    private Inner inner(BootFolder outer, String name) throws IOException {
        Optional<DirectoryEntry> entry = outer.file(name);
        if (entry.isEmpty()) {
            return new Inner(Optional.empty(), name + " is not on the card");
        }
        Inner inner = images.get(List.of(outer, entry.get()));
        if (inner == null) {
            inner = opened(outer, name, entry.get());
            images.put(List.of(outer, entry.get()), inner);
        }
        return inner;
    }

    private Inner opened(BootFolder outer, String name, DirectoryEntry entry) {
        try {
            FileBytes bytes = outer.files().bytes(entry);
            if (!bytes.warnings().isEmpty()) {
                return new Inner(
                        Optional.empty(),
                        name + " cannot be read to its end: " + bytes.warnings().get(0));
            }
            FileDevice device = new FileDevice(bytes);
            PartitionTable table = PartitionTableReader.read(device);
            for (Partition partition : table.partitions()) {
                if (partition.fatType()) {
                    FatVolume volume =
                            FatVolume.open(new PartitionWindow(device, partition.start(), partition.length()));
                    volume.root();
                    return volume.geometry().length() > device.getSize() - partition.start()
                            ? new Inner(
                                    Optional.empty(),
                                    name + " ends too early: its volume has "
                                            + volume.geometry().length() + " bytes, the file " + entry.size())
                            : new Inner(Optional.of(new BootFolder(volume, depth)), "");
                }
            }
            return new Inner(Optional.empty(), name + " holds no FAT volume");
        } catch (BadVolumeException | OutsideDeviceException | CardException e) {
            return new Inner(Optional.empty(), name + " holds no FAT volume that can be read");
        } catch (IOException e) {
            return new Inner(
                    Optional.empty(), name + " cannot be read: " + VisibleText.of(String.valueOf(e.getMessage())));
        }
    }

    private static List<BootLink> links(Map<LinkKind, ChainPart> parts) {
        return parts.entrySet().stream()
                .map(each -> each.getValue().link(each.getKey()))
                .toList();
    }

    private Verdict verdict(Map<LinkKind, ChainPart> parts, Resolution settings) {
        for (ChainPart part : parts.values()) {
            if (part.cause().isPresent()) {
                return new Verdict.Stops(part.cause().get());
            }
        }
        for (Map.Entry<LinkKind, ChainPart> each : parts.entrySet()) {
            if (each.getValue().state() == LinkState.UNKNOWN) {
                return new Verdict.Unknown(each.getKey(), each.getValue().why());
            }
        }
        return new Verdict.Boots(AboveStock.keys(tables.tuning(), settings));
    }
}
