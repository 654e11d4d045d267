package bootmend.boot;

import bootmend.boot.Settings.Value;
import bootmend.config.ReachedLine;
import bootmend.config.Truth;
import bootmend.config.VisibleText;
import bootmend.fat.DirectoryEntry;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Candidate;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Kernel, device tree, overlays, early file system, command line and root of a start with one {@code os_prefix}.
 *
 * <p>Sources: config_txt/boot.adoc, commit 0456a78c; legacy_config_txt/boot.adoc, commit 32f78cdf
 * ({@code upstream_kernel}); configuration/device-tree.adoc, commit 042aa6fd. The keys of the map of overlays are values
 * from memory.
 */
final class StartFiles {

    private static final int MOST_COMMAND_LINE = 64 << 10;
    /** What the firmware took of a command line in 2012; today's limit is not published. */
    private static final int OLD_LIMIT = 1024;

    /** A stub of a few instructions hands over to a kernel; one of this size is firmware that loads systems by itself. */
    private static final int LOADER_BYTES = 64 << 10;

    private static final int MOST_OVERLAYS = 128;
    private static final String NOT_LOOKED_AT = "was not looked at";
    private static final String OVERLAY_MAP = "overlay_map.dtb";

    private final BootCard card;
    private final int bootPartition;
    private final BootFolder folder;
    private final BoardFiles board;
    private final Settings settings;
    private final BoardFacts facts;
    private final String prefix;
    private final boolean upstream;
    /** Whether the kernel's place is taken by a program that loads the system in its own way. */
    private boolean isLoader;
    /** Whether that cannot be told, for no boot file is opened and the settings name the kernel. */
    private boolean maybeLoader;

    private final Set<String> kernelPaths = new LinkedHashSet<>();
    private RootCheck.Early early = RootCheck.Early.NONE;

    /**
     * @param bootPartition the partition that this start takes
     * @param prefix what stands before the names, already known to be in force
     * @param upstream whether upstream names of device trees are looked for first
     */
    StartFiles(
            BootCard card,
            int bootPartition,
            BootFolder folder,
            BoardFiles board,
            Settings settings,
            BoardFacts facts,
            String prefix,
            boolean upstream) {
        this.card = card;
        this.bootPartition = bootPartition;
        this.folder = folder;
        this.board = board;
        this.settings = settings;
        this.facts = facts;
        this.prefix = prefix;
        this.upstream = upstream;
    }

    /** The parts in the chain's order; the kernel first, for the others hang on it. */
    Map<LinkKind, ChainPart> check() throws IOException {
        Map<LinkKind, ChainPart> parts = new EnumMap<>(LinkKind.class);
        parts.put(LinkKind.KERNEL, kernel());
        parts.put(LinkKind.DEVICE_TREE, deviceTree());
        parts.put(LinkKind.OVERLAYS, overlays());
        parts.put(LinkKind.INITRAMFS, initramfs());
        if (isLoader) {
            Found left = Found.words("kernel", "a program that loads the system in its own way; this is left to it");
            parts.put(LinkKind.COMMAND_LINE, ChainPart.whole(left));
            parts.put(LinkKind.ROOT, ChainPart.whole(left));
            return parts;
        }
        List<ChainPart> lines = new ArrayList<>();
        List<ChainPart> roots = new ArrayList<>();
        for (Value name : settings.values("cmdline")) {
            commandLine(name, lines, roots);
        }
        parts.put(LinkKind.COMMAND_LINE, ChainPart.oneOf(lines, "which command line the settings come to"));
        ChainPart root = ChainPart.oneOf(roots, "which command line the settings come to");
        parts.put(LinkKind.ROOT, root);
        if (maybeLoader) {
            parts.replaceAll((kind, part) -> kind.compareTo(LinkKind.KERNEL) > 0 && part.isStop()
                    ? ChainPart.unknown(part.why() + ", and whether the kernel needs it was not looked at")
                    : part);
            return parts;
        }
        ChainPart initramfs = parts.get(LinkKind.INITRAMFS);
        if (initramfs.isStop() && initramfs.state() == LinkState.MISSING && !root.isStop()) {
            parts.put(
                    LinkKind.INITRAMFS,
                    new ChainPart(
                            LinkState.UNKNOWN,
                            initramfs.at(),
                            initramfs.found(),
                            initramfs.why() + "; the kernel starts without it, and may or may not find its root then",
                            Optional.empty()));
        }
        return parts;
    }

    /** Whether kernel and device tree that the board expects stand behind the prefix. */
    boolean leadsSomewhere() throws IOException {
        boolean kernel = false;
        for (KernelWish wish : wishes()) {
            kernel |= first(wish.names()).isPresent();
        }
        boolean tree = false;
        for (Value value : settings.values("device_tree")) {
            tree |= value.value().isPresent() && folder.has(behind(value.value().get()));
        }
        for (BoardFiles.Variant variant : Stream.concat(board.trees().stream(), board.upstreamTrees().stream())
                .toList()) {
            tree |= first(variant.names()).isPresent();
        }
        return kernel && tree;
    }

    /** A prefix is put in front as it is; a name that begins with a slash escapes it. */
    private String behind(String name) {
        return name.startsWith("/") ? name.substring(1) : prefix + name;
    }

    private Optional<String> first(List<String> names) throws IOException {
        for (String name : names) {
            if (folder.has(behind(name))) {
                return Optional.of(behind(name));
            }
        }
        return Optional.empty();
    }

    /**
     * A kernel that the board may look for.
     *
     * @param names the first that is there counts
     * @param bits the value of {@code arm_64bit} that it would be started with; empty for the default
     * @param by the setting that names it
     */
    private record KernelWish(List<String> names, Value bits, Optional<Value> by) {}

    private List<KernelWish> wishes() {
        List<KernelWish> wishes = new ArrayList<>();
        boolean both = !board.kernels32().isEmpty() && !board.kernels64().isEmpty();
        List<Value> bits = both ? settings.values("arm_64bit") : List.of(Value.byDefault());
        for (Value value : settings.values("kernel")) {
            for (Value bit : bits) {
                if (value.value().filter(name -> !name.isBlank()).isPresent()) {
                    wishes.add(new KernelWish(List.of(value.value().get()), bit, Optional.of(value)));
                } else {
                    wishes.add(new KernelWish(usual(bit), bit, Optional.empty()));
                }
            }
        }
        return wishes;
    }

    private List<String> usual(Value bit) {
        if (bit.number().isPresent()) {
            return bit.is(0) ? board.kernels32() : board.kernels64();
        }
        if (board.defaultsTo64()) {
            return board.kernels64();
        }
        // Where only a 64-bit kernel is there, arm_64bit sets itself.
        return Stream.concat(board.kernels32().stream(), board.kernels64().stream())
                .toList();
    }

    private ChainPart kernel() throws IOException {
        List<ChainPart> stubs = new ArrayList<>();
        List<Value> named = settings.values("armstub");
        for (Value stub : named) {
            stubs.add(stub(stub, named.size() == 1));
        }
        List<ChainPart> parts = new ArrayList<>();
        for (KernelWish wish : wishes()) {
            parts.add(kernel(wish));
        }
        return ChainPart.all(List.of(
                ChainPart.oneOf(parts, "which kernel the settings come to"),
                ChainPart.oneOf(stubs, "which stub the settings name")));
    }

    private ChainPart stub(Value stub, boolean isSure) throws IOException {
        if (stub.value().filter(name -> !name.isBlank()).isEmpty()) {
            return ChainPart.whole();
        }
        String path = behind(stub.value().get());
        Optional<DirectoryEntry> entry = folder.file(path);
        if (entry.isEmpty()) {
            return ChainPart.unknown("armstub=" + VisibleText.of(stub.value().get())
                    + " is not on the card, and whether the board then takes its own is not published");
        }
        FileLook look = folder.plain(path);
        isLoader |= isSure && look.isWhole() && entry.get().size() >= LOADER_BYTES;
        return look.state() == LinkState.DAMAGED
                ? BrokenFile.part(LinkKind.KERNEL, path, entry.get().size(), look, List.of(path), settings.resolution())
                : ChainPart.whole(
                        Found.file(path, entry.get().size(), "stub that runs before the kernel; " + look.check()));
    }

    private ChainPart kernel(KernelWish wish) throws IOException {
        Optional<String> path = first(wish.names());
        if (path.isEmpty()) {
            return missingKernel(wish);
        }
        kernelPaths.add(path.get());
        DirectoryEntry entry = folder.file(path.get()).orElseThrow();
        KernelLook kernel = folder.kernel(path.get());
        FileLook look = kernel.look();
        if (!look.isWhole()) {
            return BrokenFile.part(
                    LinkKind.KERNEL, path.get(), entry.size(), look, List.of(path.get()), settings.resolution());
        }
        Found found = Found.file(path.get(), entry.size(), look.check());
        if (folder.depth() != Depth.CONTENTS) {
            maybeLoader |= wish.by().isPresent();
            return ChainPart.whole(found);
        }
        if (kernel.kind() == KernelLook.Kind.PROGRAM) {
            isLoader = true;
            return ChainPart.whole(found);
        }
        return misfit(wish, path.get(), entry, kernel, found).orElseGet(() -> ChainPart.whole(found));
    }

    /** A kernel of the other width than the board is about to start. */
    private Optional<ChainPart> misfit(
            KernelWish wish, String path, DirectoryEntry entry, KernelLook kernel, Found found) {
        String name = path.substring(path.lastIndexOf('/') + 1).toLowerCase(Locale.ROOT);
        String shown = VisibleText.of(path);
        boolean known64 = board.kernels64().contains(name) || name.endsWith("8.img");
        if (kernel.is64()) {
            if (board.kernels64().isEmpty()) {
                return Optional.of(stop(
                        LinkKind.KERNEL,
                        LinkState.DAMAGED,
                        shown + " is a 64-bit kernel, which " + board.board() + " cannot run",
                        Origin.OTHER_BOARD,
                        new Remedy.OtherBoard(),
                        found));
            }
            boolean starts64 = board.kernels32().isEmpty()
                    || wish.bits().number().isPresent() && !wish.bits().is(0)
                    || wish.bits().number().isEmpty() && (board.defaultsTo64() || known64);
            if (starts64) {
                return Optional.empty();
            }
            return Optional.of(stop(
                    LinkKind.KERNEL,
                    LinkState.DAMAGED,
                    shown + " is a 64-bit kernel, and the board would start it as a 32-bit one: arm_64bit=1 is not set",
                    wish.by().isPresent() ? Origin.WRONG_EDIT : Origin.OTHER_CARD,
                    new Remedy.SetKey("arm_64bit", "1"),
                    found));
        }
        if (board.kernels32().isEmpty() || known64 && wish.bits().number().isEmpty()) {
            return Optional.of(stop(
                    LinkKind.KERNEL,
                    LinkState.DAMAGED,
                    shown + " is a 32-bit kernel in the place of a 64-bit one",
                    Origin.OTHER_CARD,
                    wish.by()
                            .flatMap(Value::by)
                            .<Remedy>map(by -> new Remedy.CorrectLine(by.file(), by.line()))
                            .orElseGet(() -> new Remedy.PutFiles(List.of(path))),
                    found));
        }
        boolean starts32 = wish.bits().is(0) || wish.bits().number().isEmpty() && !board.defaultsTo64();
        return starts32 || board.kernels32().contains(name)
                ? Optional.empty()
                : Optional.of(ChainPart.unknown(
                        shown + " is a 32-bit kernel, and " + board.board() + " starts 64-bit ones unless arm_64bit=0"
                                + " says otherwise",
                        Found.file(path, entry.size(), kernel.look().check())));
    }

    private ChainPart missingKernel(KernelWish wish) throws IOException {
        String names = VisibleText.of(
                String.join(" or ", wish.names().stream().map(this::behind).toList()));
        if (wish.by().isEmpty() && isLoader) {
            return ChainPart.whole(
                    Found.words(names, "not there; the stub is firmware that loads a system in its own way"));
        }
        if (wish.by().isEmpty()) {
            List<String> others = new ArrayList<>();
            for (String other : folder.names(prefix.endsWith("/") ? prefix : "")) {
                if (other.toLowerCase(Locale.ROOT).matches("(kernel|recovery)[a-z0-9_]*\\.img") && mightServe(other)) {
                    others.add(other);
                }
            }
            if (!others.isEmpty()) {
                return ChainPart.unknown(
                        names + " is not on the card, " + VisibleText.of(String.join(", ", others))
                                + " is, and whether the board takes it hangs on its firmware",
                        Found.words(behind(wish.names().get(0)), Found.LOOKED_FOR));
            }
        }
        Optional<Candidate> line = wish.by().flatMap(Value::by);
        return ChainPart.stops(
                LinkState.MISSING,
                new Cause(
                        LinkKind.KERNEL,
                        names + (line.isPresent() ? ", which the settings name as the kernel," : "")
                                + " is not on the card: the board finds no kernel.",
                        line.isPresent() ? Origin.WRONG_EDIT : Origin.INCOMPLETE_COPY,
                        line.<Remedy>map(by -> new Remedy.CorrectLine(by.file(), by.line()))
                                .orElseGet(() -> new Remedy.PutFiles(
                                        wish.names().stream().map(this::behind).toList()))),
                line.map(by -> Found.line(by.file(), by.line(), "names " + names))
                        .orElseGet(() -> Found.words(behind(wish.names().get(0)), Found.LOOKED_FOR)));
    }

    /** A kernel by whose name some firmware may go, though none that is published does for this board. */
    private boolean mightServe(String other) {
        String name = other.toLowerCase(Locale.ROOT);
        // A card's own rescue system starts under other names (value from memory).
        if (name.startsWith("recovery")) {
            return true;
        }
        return board.defaultsTo64()
                ? board.kernels32().contains(name) || board.kernels32().isEmpty() && name.equals("kernel8_16.img")
                : !board.kernels64().isEmpty() && name.equals("kernel.img");
    }

    private ChainPart deviceTree() throws IOException {
        List<ChainPart> parts = new ArrayList<>();
        for (Value value : settings.values("device_tree")) {
            if (value.value().isEmpty()) {
                parts.add(usualTree());
            } else if (value.value().get().isBlank()) {
                parts.add(treeOff(value));
            } else {
                parts.add(namedTree(value));
            }
        }
        return ChainPart.oneOf(parts, "which device tree the settings name");
    }

    private ChainPart treeOff(Value value) {
        Candidate by = value.by().orElseThrow();
        return board.needsTree() && !isLoader
                ? stop(
                        LinkKind.DEVICE_TREE,
                        LinkState.MISSING,
                        "device_tree= turns device trees off, without which no kernel for " + board.board() + " starts",
                        Origin.WRONG_EDIT,
                        new Remedy.CorrectLine(by.file(), by.line()),
                        Found.line(by.file(), by.line(), "device_tree= without a name"))
                : ChainPart.unknown(
                        "device_tree= turns device trees off, which kernels after 4.4 do not start without");
    }

    private ChainPart namedTree(Value value) throws IOException {
        Candidate by = value.by().orElseThrow();
        String path = behind(value.value().orElseThrow());
        return folder.has(path)
                ? tree(path)
                : treeLess(
                        VisibleText.of(path) + ", which the settings name as the device tree, is not on the card",
                        Origin.WRONG_EDIT,
                        new Remedy.CorrectLine(by.file(), by.line()),
                        Found.line(by.file(), by.line(), "names " + path));
    }

    private ChainPart usualTree() throws IOException {
        List<ChainPart> parts = new ArrayList<>();
        List<BoardFiles.Variant> variants =
                board.trees().stream().filter(this::maybe).toList();
        for (BoardFiles.Variant variant : variants.isEmpty() ? board.trees() : variants) {
            List<String> names = new ArrayList<>();
            if (upstream) {
                board.upstreamTrees().stream()
                        .filter(other -> other.of().isEmpty()
                                || variant.of().isEmpty()
                                || other.of().equals(variant.of()))
                        .forEach(other -> names.addAll(other.names()));
            }
            names.addAll(variant.names());
            Optional<String> path = first(names);
            parts.add(path.isPresent() ? tree(path.get()) : noTree(names));
        }
        return ChainPart.oneOf(parts, "which revision of " + board.board() + " it is");
    }

    /** Whether what is known of the board lets it be this variant. */
    private boolean maybe(BoardFiles.Variant variant) {
        if (variant.of().isEmpty() || facts.revision().isEmpty()) {
            return true;
        }
        Optional<String> chip = facts.revision().get().chip().map(each -> each.toLowerCase(Locale.ROOT));
        Optional<String> type = facts.revision().get().type().isPresent()
                ? Optional.of(
                        String.format("0x%02x", facts.revision().get().type().getAsInt()))
                : Optional.empty();
        boolean byType = variant.of().get(0).startsWith("0x");
        Optional<String> known = byType ? type : chip;
        return known.isEmpty() || variant.of().contains(known.get());
    }

    private ChainPart noTree(List<String> names) throws IOException {
        // The chip's number stands in front of a device tree's name.
        String chip = names.get(0).split("-", 2)[0];
        boolean other = hasTrees() && treeNames().noneMatch(name -> name.startsWith(chip));
        return treeLess(
                VisibleText.of(String.join(
                                " or ", names.stream().map(this::behind).toList()))
                        + " is not on the card: " + board.board() + " finds no device tree of its own",
                other ? Origin.OTHER_BOARD : Origin.INCOMPLETE_COPY,
                other
                        ? new Remedy.OtherBoard()
                        : new Remedy.PutFiles(
                                names.stream().map(this::behind).limit(1).toList()),
                Found.words(behind(names.get(0)), Found.LOOKED_FOR));
    }

    private boolean hasTrees() throws IOException {
        return treeNames().findAny().isPresent();
    }

    /** In lower case. */
    private Stream<String> treeNames() throws IOException {
        return Stream.concat(folder.names("").stream(), folder.names(prefix.endsWith("/") ? prefix : "").stream())
                .map(name -> name.toLowerCase(Locale.ROOT))
                .filter(name -> name.endsWith(".dtb"));
    }

    /** Without a device tree: kernels up to 4.4 started so, a loader may carry its own. */
    private ChainPart treeLess(String what, Origin origin, Remedy remedy, Found found) throws IOException {
        if (isLoader) {
            return ChainPart.unknown(what + ", and whether the loader brings its own is not told", found);
        }
        if (!board.needsTree() && !hasTrees()) {
            return ChainPart.unknown(what + ", which kernels up to 4.4 do without", found);
        }
        return stop(LinkKind.DEVICE_TREE, LinkState.MISSING, what, origin, remedy, found);
    }

    private ChainPart tree(String path) throws IOException {
        DirectoryEntry entry = folder.file(path).orElseThrow();
        FileLook look = folder.tree(path).look();
        return look.isWhole()
                ? ChainPart.whole(Found.file(path, entry.size(), look.check()))
                : BrokenFile.part(LinkKind.DEVICE_TREE, path, entry.size(), look, List.of(path), settings.resolution());
    }

    /** An overlay that is not there, or that the board cannot use, is passed over; the board starts without it. */
    private ChainPart overlays() throws IOException {
        if (folder.depth() == Depth.LISTING) {
            return ChainPart.whole(Found.words("overlays", NOT_LOOKED_AT));
        }
        List<ChainPart> parts = new ArrayList<>();
        for (Value value : settings.values("overlay_prefix")) {
            String folderName = value.value().orElse("overlays/");
            boolean own = !prefix.isEmpty() && folder.has(behind(folderName + "README"));
            parts.add(overlays(own ? behind(folderName) : folderName.replaceFirst("^/", "")));
        }
        return ChainPart.oneOf(parts, "which overlay_prefix counts");
    }

    private ChainPart overlays(String place) throws IOException {
        List<ChainPart> parts = new ArrayList<>();
        Map<String, Map<String, byte[]>> map = Map.of();
        if (folder.has(place + OVERLAY_MAP) && folder.depth() == Depth.CONTENTS) {
            map = folder.tree(place + OVERLAY_MAP).nodes();
        }
        Set<String> seen = new LinkedHashSet<>();
        for (Candidate line : settings.all("dtoverlay")) {
            String name = line.value().split("[,:]", 2)[0].strip();
            if (!name.isEmpty() && seen.add(name) && seen.size() <= MOST_OVERLAYS) {
                parts.add(overlay(place, name, map, line));
            }
        }
        return parts.isEmpty()
                ? ChainPart.whole(Found.words("settings", "no overlay is asked for"))
                : ChainPart.all(parts);
    }

    private ChainPart overlay(String place, String asked, Map<String, Map<String, byte[]>> map, Candidate line)
            throws IOException {
        String shown = "dtoverlay=" + VisibleText.of(asked);
        String name = asked;
        Map<String, byte[]> entry = map.get(name);
        if (entry != null && entry.containsKey("renamed")) {
            name = text(entry.get("renamed"));
            entry = map.get(name);
        }
        if (entry != null) {
            if (entry.containsKey("deprecated") || !entry.containsKey(board.overlayChip())) {
                String why =
                        shown + " is not for " + board.board() + " by the card's map of overlays; it is passed over";
                return ChainPart.lacking(LinkState.MISSING, why, Found.line(line.file(), line.line(), why));
            }
            String other = text(entry.get(board.overlayChip()));
            name = other.isEmpty() ? name : other;
        }
        String path = place + name + ".dtbo";
        Optional<DirectoryEntry> file = folder.file(path);
        if (file.isEmpty()) {
            String why = VisibleText.of(path) + " is not on the card; " + shown + " is passed over";
            return ChainPart.lacking(
                    LinkState.MISSING,
                    why,
                    Found.line(line.file(), line.line(), why),
                    Found.words(path, Found.LOOKED_FOR));
        }
        FileLook look = folder.tree(path).look();
        return look.isWhole()
                ? ChainPart.whole(Found.file(path, file.get().size(), look.check()))
                : ChainPart.lacking(
                        look.state(),
                        VisibleText.of(path) + " " + look.why(),
                        Found.file(path, file.get().size(), VisibleText.of(path) + " " + look.why()));
    }

    private static String text(byte[] value) {
        String text = new String(value, StandardCharsets.ISO_8859_1);
        int zero = text.indexOf('\0');
        return zero < 0 ? text : text.substring(0, zero);
    }

    private ChainPart initramfs() throws IOException {
        List<ChainPart> parts = new ArrayList<>();
        boolean sure = true;
        for (ReachedLine line : settings.words("initramfs")) {
            String[] words = line.line().text().strip().split("\\s+", -1);
            boolean holds = line.condition().truth() == Truth.TRUE;
            if (words.length > 1) {
                parts.add(earlyFiles(words[1], line.file(), line.line().number(), holds));
                sure &= holds;
            }
        }
        for (Value value : settings.values("ramfsfile")) {
            if (value.value().filter(name -> !name.isBlank()).isPresent()) {
                Candidate by = value.by().orElseThrow();
                boolean holds = settings.values("ramfsfile").size() == 1;
                parts.add(earlyFiles(value.value().get(), by.file(), by.line(), holds));
                sure &= holds;
            }
        }
        if (parts.isEmpty()) {
            List<Value> auto = settings.values("auto_initramfs");
            if (auto.stream().anyMatch(each -> each.is(1))) {
                for (String path : beside()) {
                    parts.add(early(path));
                }
                sure = auto.size() == 1 && kernelPaths.size() == 1;
            }
        }
        ChainPart all = parts.isEmpty()
                ? ChainPart.whole(Found.words("settings", "no early file system is asked for"))
                : ChainPart.all(parts);
        if (parts.isEmpty() || all.isStop() && all.state() == LinkState.MISSING) {
            early = RootCheck.Early.NONE;
        } else if (all.state() == LinkState.WHOLE && sure) {
            early = RootCheck.Early.THERE;
        } else {
            early = RootCheck.Early.PERHAPS;
        }
        return all;
    }

    /** Beside each kernel, by its name: {@code kernel} becomes {@code initramfs}, the ending goes; only what is there. */
    private List<String> beside() throws IOException {
        List<String> paths = new ArrayList<>();
        for (String kernel : kernelPaths) {
            int slash = kernel.lastIndexOf('/') + 1;
            String name = kernel.substring(slash);
            int dot = name.lastIndexOf('.');
            String path = kernel.substring(0, slash)
                    + (dot < 0 ? name : name.substring(0, dot)).replace("kernel", "initramfs");
            if (!path.equals(kernel) && folder.has(path)) {
                paths.add(path);
            }
        }
        return paths;
    }

    private ChainPart earlyFiles(String names, String file, int line, boolean holds) throws IOException {
        List<ChainPart> parts = new ArrayList<>();
        for (String name : names.split(",", -1)) {
            if (!name.isEmpty()) {
                String path = behind(name);
                if (folder.has(path)) {
                    parts.add(early(path));
                } else {
                    parts.add(
                            holds
                                    ? ChainPart.stops(
                                            LinkState.MISSING,
                                            new Cause(
                                                    LinkKind.INITRAMFS,
                                                    VisibleText.of(path)
                                                            + ", which the settings name as the early file system, is not"
                                                            + " on the card.",
                                                    Origin.WRONG_EDIT,
                                                    new Remedy.CorrectLine(file, line)),
                                            Found.line(file, line, "names " + name))
                                    : ChainPart.unknown(VisibleText.of(path)
                                            + " is not on the card, and whether its line counts hangs on the board"));
                }
            }
        }
        return parts.isEmpty() ? ChainPart.whole() : ChainPart.all(parts);
    }

    private ChainPart early(String path) throws IOException {
        DirectoryEntry entry = folder.file(path).orElseThrow();
        FileLook look = folder.initramfs(path);
        return look.isWhole()
                ? ChainPart.whole(Found.file(path, entry.size(), look.check()))
                : BrokenFile.part(LinkKind.INITRAMFS, path, entry.size(), look, List.of(path), settings.resolution());
    }

    private void commandLine(Value named, List<ChainPart> lines, List<ChainPart> roots) throws IOException {
        String path = behind(named.value().filter(name -> !name.isBlank()).orElse("cmdline.txt"));
        Optional<DirectoryEntry> entry = folder.file(path);
        if (entry.isEmpty()) {
            boolean helped = early != RootCheck.Early.NONE;
            lines.add(
                    helped
                            ? ChainPart.unknown(
                                    VisibleText.of(path) + " is not on the card; the early file system may do without")
                            : stop(
                                    LinkKind.COMMAND_LINE,
                                    LinkState.MISSING,
                                    VisibleText.of(path)
                                            + " is not on the card: the kernel is not told where its root is",
                                    named.by().isPresent() ? Origin.WRONG_EDIT : Origin.INCOMPLETE_COPY,
                                    named.by()
                                            .<Remedy>map(by -> new Remedy.CorrectLine(by.file(), by.line()))
                                            .orElseGet(() -> new Remedy.PutFiles(List.of(path))),
                                    Found.words(path, Found.LOOKED_FOR)));
            roots.add(ChainPart.unknown("there is no command line to name a root"));
            return;
        }
        if (folder.depth() == Depth.LISTING && entry.get().size() > 0) {
            lines.add(ChainPart.whole(Found.file(path, entry.get().size(), NOT_LOOKED_AT)));
            roots.add(ChainPart.whole(Found.words("root", NOT_LOOKED_AT)));
            return;
        }
        byte[] bytes = folder.read(entry.get(), MOST_COMMAND_LINE).bytes();
        CommandLine line = CommandLine.parse(bytes);
        ChainPart part = line(path, entry.get().size(), line);
        lines.add(part);
        roots.add(
                part.isStop()
                        ? ChainPart.unknown("the command line is damaged")
                        : new RootCheck(card, bootPartition, path, early).of(line));
    }

    private static ChainPart line(String path, long size, CommandLine line) {
        String shown = VisibleText.of(path);
        Found found = Found.file(path, size, line.words().size() + " words on its first line");
        if (line.wide()) {
            return stop(
                    LinkKind.COMMAND_LINE,
                    LinkState.DAMAGED,
                    shown + " is saved with two bytes a character, of which no kernel reads a word",
                    Origin.WRONG_EDIT,
                    new Remedy.SavePlain(path),
                    found);
        } else if (line.isEmpty()) {
            return stop(
                    LinkKind.COMMAND_LINE,
                    LinkState.DAMAGED,
                    shown + " holds no word" + (line.zeros() ? ", zero bytes alone" : "")
                            + ": the kernel is not told where its root is",
                    line.zeros() || size == 0 ? Origin.CUT_WRITE : Origin.WRONG_EDIT,
                    new Remedy.PutFiles(List.of(path)),
                    found);
        } else if (line.emptyFirst()) {
            return stop(
                    LinkKind.COMMAND_LINE,
                    LinkState.DAMAGED,
                    shown + " begins with an empty line, and the kernel gets the first line alone",
                    Origin.WRONG_EDIT,
                    new Remedy.OneLine(path),
                    found);
        } else if (line.zeros()) {
            return stop(
                    LinkKind.COMMAND_LINE,
                    LinkState.DAMAGED,
                    shown + " holds zero bytes, at which a kernel stops reading",
                    Origin.CUT_WRITE,
                    new Remedy.PutFiles(List.of(path)),
                    found);
        } else if (line.marked() && line.words().get(0).startsWith("\u00EF\u00BB\u00BFroot=")) {
            return stop(
                    LinkKind.COMMAND_LINE,
                    LinkState.DAMAGED,
                    shown + " begins with a byte-order mark, which hides its first word, root=",
                    Origin.WRONG_EDIT,
                    new Remedy.SavePlain(path),
                    found);
        } else if (!line.laterWords().isEmpty() && line.value("root").isPresent()) {
            return ChainPart.unknown(
                    shown + " has more than one line; what stands behind the first may be lost", found);
        } else if (line.length() > OLD_LIMIT) {
            return ChainPart.unknown(
                    shown + " has " + line.length() + " characters, more than the " + OLD_LIMIT
                            + " that older firmware takes",
                    found);
        }
        return ChainPart.whole(found);
    }

    private static ChainPart stop(
            LinkKind link, LinkState state, String what, Origin origin, Remedy remedy, Found found) {
        return ChainPart.stops(state, new Cause(link, what + ".", origin, remedy), found);
    }
}
