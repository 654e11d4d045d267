package bootmend.boot;

import bootmend.boot.Settings.Value;
import bootmend.config.VisibleText;
import bootmend.fat.DirectoryEntry;
import bootmend.tuning.resolve.BoardFacts;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The boot firmware that a board takes from the card: the second stage, and a start file with its fixup file.
 *
 * <p>Sources: config_txt/boot.adoc, commit 0456a78c; configuration/boot_folder.adoc, commit 044dfa24; memory keys:
 * config_txt/memory.adoc, commit 0c976deb; that unmatched pairs do not boot: the first.
 */
final class FirmwareCheck {

    /** The start file of a rescue system on the card (value from memory). */
    private static final String RESCUE = "recovery.elf";

    private final BootFolder outer;
    private final BootFolder folder;
    private final BoardFiles board;
    private final BootTables tables;
    private final Settings settings;
    private final BoardFacts facts;
    private final List<String> taken = new ArrayList<>();

    /**
     * @param outer where the ROM looks
     * @param folder where the second stage looks, which is the same but for a boot ramdisk
     */
    FirmwareCheck(
            BootFolder outer,
            BootFolder folder,
            BoardFiles board,
            BootTables tables,
            Settings settings,
            BoardFacts facts) {
        this.outer = outer;
        this.folder = folder;
        this.board = board;
        this.tables = tables;
        this.settings = settings;
        this.facts = facts;
    }

    /** A pair that the settings may come to. */
    private record Pair(String start, String fixup, Optional<Value> named) {}

    ChainPart check() throws IOException {
        List<ChainPart> parts = new ArrayList<>();
        for (String name : board.secondStage()) {
            parts.add(plain(outer, name, Origin.INCOMPLETE_COPY, List.of(name)));
        }
        if (board.start().isEmpty()) {
            parts.add(ChainPart.whole(
                    Found.words("boot memory", "the board's firmware is in its boot memory, not on the card")));
        } else {
            List<ChainPart> pairs = new ArrayList<>();
            for (Pair pair : pairs(board.start().get())) {
                pairs.add(pair(pair));
            }
            parts.add(ChainPart.oneOf(pairs, "which start file the settings come to"));
        }
        return ChainPart.all(parts);
    }

    /** The start files that the board may take and that are there. */
    List<String> taken() {
        return taken;
    }

    private List<Pair> pairs(String family) {
        List<Value> starts = settings.earlyValues("start_file");
        List<Value> fixups = settings.earlyValues("fixup_file");
        List<String> variants = variants(family);
        List<Pair> pairs = new ArrayList<>();
        for (Value start : starts) {
            for (Value fixup : fixups) {
                boolean usual = start.value().isEmpty() || fixup.value().isEmpty();
                for (String letters : usual ? variants : variants.subList(0, 1)) {
                    pairs.add(new Pair(
                            start.value().orElse("start" + letters + ".elf"),
                            fixup.value().orElse("fixup" + letters + ".dat"),
                            start.by().isPresent()
                                    ? Optional.of(start)
                                    : fixup.by().map(by -> fixup)));
                }
            }
        }
        return pairs;
    }

    /** Letters behind {@code start} that the settings may choose, the first that applies. */
    private List<String> variants(String family) {
        List<String> possible = new ArrayList<>();
        for (StartVariant variant : tables.variants()) {
            List<Value> values = variant.key().equals("gpu_mem") ? memory() : settings.earlyValues(variant.key());
            if (values.stream().anyMatch(each -> each.is(variant.value()))) {
                possible.add(variant.letters(family));
            }
            if (values.stream().allMatch(each -> each.is(variant.value()))) {
                return possible;
            }
        }
        possible.add(family);
        return possible;
    }

    /** What {@code gpu_mem} may come to: {@code gpu_mem_256}, {@code _512} and {@code _1024} override it by memory. */
    private List<Value> memory() {
        OptionalInt fitted =
                facts.revision().isPresent() ? facts.revision().get().memoryMegabytes() : OptionalInt.empty();
        List<Value> plain = settings.earlyValues("gpu_mem");
        List<Value> all = new ArrayList<>(fitted.isEmpty() ? plain : List.of());
        for (int size : new int[] {256, 512, 1024}) {
            boolean fits = fitted.isEmpty() || (size == 1024 ? fitted.getAsInt() >= 1024 : fitted.getAsInt() == size);
            for (Value value : fits ? settings.earlyValues("gpu_mem_" + size) : List.<Value>of()) {
                all.addAll(value.value().isPresent() ? List.of(value) : plain);
            }
        }
        return all.isEmpty() ? plain : all;
    }

    private ChainPart pair(Pair pair) throws IOException {
        Optional<DirectoryEntry> start = folder.file(pair.start());
        Optional<DirectoryEntry> fixup = folder.file(pair.fixup());
        String names = VisibleText.of(pair.start()) + " and " + VisibleText.of(pair.fixup());
        if (start.isEmpty() && pair.named().isEmpty() && folder.has(RESCUE)) {
            return ChainPart.unknown(VisibleText.of(pair.start()) + " is not on the card, " + RESCUE
                    + " is, and whether the board takes that in its place hangs on its second stage");
        }
        if (start.isEmpty() || fixup.isEmpty()) {
            String gone = start.isEmpty() && fixup.isEmpty()
                    ? names + " are"
                    : VisibleText.of(start.isEmpty() ? pair.start() : pair.fixup()) + " is";
            List<String> put = new ArrayList<>();
            put.add(pair.start());
            put.add(pair.fixup());
            return ChainPart.stops(
                    LinkState.MISSING,
                    new Cause(
                            LinkKind.FIRMWARE,
                            gone + " not on the card; a board takes start file and fixup file as a pair.",
                            pair.named().isPresent() ? Origin.WRONG_EDIT : Origin.INCOMPLETE_COPY,
                            remedy(pair, put)),
                    at(pair, start.isEmpty() ? pair.start() : pair.fixup(), Found.LOOKED_FOR));
        }
        taken.add(pair.start());
        Optional<String> letters = letters(pair.start());
        if (letters.isPresent() && letters(pair.fixup()).isPresent() && !letters.equals(letters(pair.fixup()))) {
            return ChainPart.stops(
                    LinkState.DAMAGED,
                    new Cause(
                            LinkKind.FIRMWARE,
                            names + " are of two variants; such a pair does not boot.",
                            Origin.WRONG_EDIT,
                            remedy(pair, List.of(pair.start(), pair.fixup()))),
                    at(pair, pair.start(), "its name beside that of " + pair.fixup()));
        }
        FileLook look = folder.elf(pair.start());
        if (!look.isWhole()) {
            return broken(LinkKind.FIRMWARE, start.get(), pair.start(), look, List.of(pair.start(), pair.fixup()));
        }
        String version =
                folder.version(pair.start()).map(found -> "; " + found.words()).orElse("");
        return ChainPart.all(List.of(
                ChainPart.whole(Found.file(pair.start(), start.get().size(), look.check() + version)),
                plain(folder, pair.fixup(), Origin.CUT_WRITE, List.of(pair.start(), pair.fixup()))));
    }

    private static Found at(Pair pair, String file, String check) {
        return pair.named()
                .flatMap(Value::by)
                .map(by -> Found.line(by.file(), by.line(), "names " + file))
                .orElseGet(() -> Found.words(file, check));
    }

    private static Remedy remedy(Pair pair, List<String> files) {
        return pair.named()
                .flatMap(Value::by)
                .<Remedy>map(by -> new Remedy.CorrectLine(by.file(), by.line()))
                .orElseGet(() -> new Remedy.PutFiles(files));
    }

    /** What stands between {@code start} or {@code fixup} and the ending; empty for names that are made otherwise. */
    private static Optional<String> letters(String name) {
        String plain = name.toLowerCase(Locale.ROOT).replaceFirst("^.*/", "");
        return plain.matches("(start|fixup)[a-z0-9_]*\\.(elf|dat)")
                ? Optional.of(plain.replaceFirst("^(start|fixup)", "").replaceFirst("\\.(elf|dat)$", ""))
                : Optional.empty();
    }

    private ChainPart plain(BootFolder where, String name, Origin origin, List<String> put) throws IOException {
        Optional<DirectoryEntry> entry = where.file(name);
        if (entry.isEmpty()) {
            return ChainPart.stops(
                    LinkState.MISSING,
                    new Cause(
                            LinkKind.FIRMWARE,
                            VisibleText.of(name) + " is not on the card; the board loads it before anything else.",
                            origin,
                            new Remedy.PutFiles(put)),
                    Found.words(name, Found.LOOKED_FOR));
        }
        FileLook look = where.plain(name);
        return look.state() == LinkState.DAMAGED
                ? broken(LinkKind.FIRMWARE, entry.get(), name, look, put)
                : ChainPart.whole(Found.file(name, entry.get().size(), look.check()));
    }

    /** A file that is there and not whole. */
    private ChainPart broken(LinkKind link, DirectoryEntry entry, String path, FileLook look, List<String> put) {
        return BrokenFile.part(link, path, entry.size(), look, put, settings.resolution());
    }
}
