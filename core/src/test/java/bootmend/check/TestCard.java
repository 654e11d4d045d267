package bootmend.check;

import bootmend.boot.BootDiagnosis;
import bootmend.boot.BootTables;
import bootmend.boot.Depth;
import bootmend.config.ConfigDocument;
import bootmend.fat.VolumeSpace;
import bootmend.finding.Finding;
import bootmend.finding.Purpose;
import bootmend.fixtures.SampleBootFiles;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A card's content made by hand: the lab's healthy boot files at stock, changed step by step; immutable. */
record TestCard(
        Map<String, byte[]> files,
        Map<String, byte[]> config,
        Optional<String> board,
        ExaminedCard rest,
        Map<String, String> torn) {

    static final TuningTables TABLES = TuningTables.load();
    private static final Checker CHECKER = new Checker(TABLES);
    private static final BootTables BOOT = new BootTables(TABLES);
    private static final CardContents CONTENTS = new CardContents(TABLES);
    private static final int CLUSTER = 4096;
    private static final int KERNEL = 8 * CLUSTER;
    private static final Map<String, byte[]> BOOT_ROOT = SampleBootFiles.bootRoot(2 * CLUSTER, KERNEL);

    /** Boots every board, at stock, for pi4. */
    static TestCard stock() {
        Map<String, byte[]> files = new LinkedHashMap<>(BOOT_ROOT);
        files.put("overlays/wheel-encoder-gpio.dtbo", SampleBootFiles.named("wheel-encoder-gpio.dtbo", 800));
        ExaminedCard rest = new ExaminedCard(
                new CardFiles(List.of()),
                List.of(),
                Optional.empty(),
                Optional.of(new VolumeSpace(1000, 500, CLUSTER)),
                List.of(),
                Optional.empty());
        return new TestCard(files, Map.of(), Optional.of("pi4"), rest, Map.of())
                .config("dtparam=spi=on", "dtoverlay=wheel-encoder-gpio", "enable_uart=1");
    }

    TestCard on(String id) {
        return new TestCard(files, config, Optional.of(id), rest, torn);
    }

    /** For whichever boards it boots. */
    TestCard onItsBoards() {
        return new TestCard(files, config, Optional.empty(), rest, torn);
    }

    TestCard config(String... lines) {
        return configBytes((String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8));
    }

    TestCard configBytes(byte[] bytes) {
        return including("config.txt", bytes);
    }

    TestCard including(String name, byte[] bytes) {
        Map<String, byte[]> more = new LinkedHashMap<>(config);
        more.put(name, bytes);
        return new TestCard(files, more, board, rest, torn).with(name, bytes);
    }

    TestCard withoutConfig() {
        return new TestCard(files, Map.of(), board, rest, torn).without("config.txt");
    }

    TestCard with(String path, byte[] bytes) {
        Map<String, byte[]> more = new LinkedHashMap<>(files);
        more.put(path, bytes);
        return new TestCard(more, config, board, rest, torn);
    }

    TestCard with(String path, String text) {
        return with(path, text.getBytes(StandardCharsets.UTF_8));
    }

    TestCard without(String path) {
        Map<String, byte[]> fewer = new LinkedHashMap<>(files);
        if (fewer.remove(path) == null) {
            throw new IllegalArgumentException("there is no " + path);
        }
        return new TestCard(fewer, config, board, rest, torn);
    }

    TestCard rest(ExaminedCard other) {
        return new TestCard(files, config, board, other, torn);
    }

    /** A file of which not all can be read. */
    TestCard torn(String path, String warning) {
        return new TestCard(files, config, board, rest, Map.of(path, warning));
    }

    CardContent content() {
        List<CardFiles.Entry> entries = new ArrayList<>();
        files.forEach((path, bytes) -> entries.add(CardFiles.Entry.file(path, bytes.length)));
        List<ConfigText> texts = new ArrayList<>();
        config.forEach((path, bytes) -> texts.add(new ConfigText(path, ConfigDocument.parse(bytes), configWarnings())));
        BoardFacts facts = board.map(
                        id -> BoardFacts.of(TABLES.boards().find(id).orElseThrow()))
                .orElse(BoardFacts.none());
        ExaminedCard read = new ExaminedCard(
                new CardFiles(entries), texts, rest.configProblem(), rest.space(), rest.health(), rest.interrupted());
        CardContent content = CONTENTS.of(read.withBoot(diagnosis(facts)), facts);
        Map<String, FileText> heads = new HashMap<>();
        content.wantedTexts().forEach(path -> heads.put(path, text(path)));
        return content.withTexts(heads);
    }

    private FileText text(String path) {
        byte[] bytes = files.get(path);
        return new FileText(
                Arrays.copyOf(bytes, Math.min(bytes.length, FileText.MOST_BYTES)), bytes.length <= FileText.MOST_BYTES);
    }

    private BootDiagnosis diagnosis(BoardFacts facts) {
        try {
            return BootDiagnosis.of(new MemoryBootCard(files, torn), facts, BOOT, Depth.CONTENTS);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Warnings on the config file stand with the rest's texts, where a case needs them. */
    private List<String> configWarnings() {
        return rest.config().stream().flatMap(text -> text.warnings().stream()).toList();
    }

    List<Finding> check(Purpose purpose) {
        return CHECKER.check(content(), purpose);
    }
}
