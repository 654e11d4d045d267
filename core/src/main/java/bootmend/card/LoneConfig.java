package bootmend.card;

import bootmend.CardException;
import bootmend.ReportedIOException;
import bootmend.boot.BootCard;
import bootmend.change.CardId;
import bootmend.change.Committed;
import bootmend.change.FilePlanner;
import bootmend.change.FileTextPlanner;
import bootmend.change.FileWrite;
import bootmend.change.Interruption;
import bootmend.change.Plan;
import bootmend.change.Target;
import bootmend.change.UndoStore;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.LineKind;
import bootmend.config.SavedText;
import bootmend.device.FileType;
import bootmend.finding.Finding;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A config file on its own, as people keep it beside their cards: no partition, no other file, and no undo record; it is
 * changed as files are, whole.
 */
public final class LoneConfig implements OpenCard {

    private static final String WORDS = "a config file on its own";
    private static final int BOOT_MARK_AT = 510;
    private static final int BOOT_MARK_FIRST = 0x55;
    private static final int BOOT_MARK_SECOND = 0xAA;

    private final Path named;
    private final Optional<Path> file;
    private final LoneFile content;
    private final boolean forChanging;

    private LoneConfig(Path named, Optional<Path> file, byte[] bytes, boolean forChanging) {
        this.named = named;
        this.file = file;
        this.content = new LoneFile(bytes);
        this.forChanging = forChanging;
    }

    /**
     * Whether a request is about a config file rather than a card: its bytes are handed over, or it names a file no larger
     * than one that is text, has no boot sector's mark, and has a line that a board would heed, or none but comments.
     */
    public static boolean isNamed(CardRequest request) {
        if (request.text().isPresent()) {
            return true;
        }
        try {
            Path path = request.card();
            if (FileType.of(path) != FileType.FILE || Files.size(path) > ConfigFiles.MAX_BYTES) {
                return false;
            }
            byte[] bytes = read(path);
            String name = path.getFileName().toString().toLowerCase(Locale.ROOT);
            boolean wide =
                    name.endsWith(".txt") && SavedText.of(bytes).problems().contains(SavedText.Problem.UTF_16);
            return !hasBootMark(bytes) && (wide || isText(bytes) && isConfig(bytes));
        } catch (IOException | InvalidPathException e) {
            // Whoever opens it as a card says what is the matter with it.
            return false;
        }
    }

    private static boolean hasBootMark(byte[] bytes) {
        return bytes.length >= BOOT_MARK_AT + 2
                && (bytes[BOOT_MARK_AT] & 0xFF) == BOOT_MARK_FIRST
                && (bytes[BOOT_MARK_AT + 1] & 0xFF) == BOOT_MARK_SECOND;
    }

    /** An editor's end mark and form feeds are text too; nothing at all is not. */
    private static boolean isText(byte[] bytes) {
        for (byte each : bytes) {
            boolean control = each >= 0 && each < ' ' && "\t\n\r\f\032".indexOf(each) < 0;
            if (control) {
                return false;
            }
        }
        return bytes.length > 0;
    }

    private static boolean isConfig(byte[] bytes) {
        List<ConfigLine> live = ConfigDocument.parse(bytes).lines().stream()
                .filter(ConfigLine::isLive)
                .toList();
        return live.isEmpty()
                || live.stream()
                        .map(ConfigLine::kind)
                        .anyMatch(kind -> kind instanceof LineKind.Section
                                || kind instanceof LineKind.Include
                                || kind instanceof LineKind.Setting setting
                                        && setting.trimmedKey().chars().noneMatch(c -> c <= ' '));
    }

    static LoneConfig open(CardRequest request, boolean forChanging) throws CardException, IOException {
        byte[] bytes = request.text().isPresent() ? request.text().get().bytes() : read(request.card());
        if (bytes.length > ConfigFiles.MAX_BYTES) {
            throw CardException.unreadable(
                    "it has over " + ConfigFiles.MAX_BYTES + " bytes, which no config file has",
                    "Name a config file, or the card.");
        }
        if (forChanging && request.text().isPresent()) {
            throw CardException.refused(
                    "what was handed over cannot be written to", "Name the file, or take the result as it comes.");
        }
        if (request.partition().isPresent() || request.offset().isPresent()) {
            throw CardException.usage("a config file on its own has no partition", "Name the card for that.");
        }
        Optional<Path> file = request.text().isPresent() ? Optional.empty() : Optional.of(request.card());
        if (forChanging && !Files.isWritable(request.card())) {
            throw CardException.refused("you have no right to write to it", "Check your rights to the file.");
        }
        return new LoneConfig(request.card(), file, bytes, forChanging);
    }

    private static byte[] read(Path path) throws IOException {
        try (InputStream in = Files.newInputStream(path)) {
            return in.readNBytes(ConfigFiles.MAX_BYTES + 1);
        }
    }

    /** A text as the only config file there is. */
    public static ConfigFiles files(byte[] text) throws CardException, IOException {
        return ConfigFiles.read(new LoneFile(text));
    }

    /** The config file as it is. */
    public byte[] text() {
        return content.bytes().clone();
    }

    @Override
    public boolean hasBootPartition() {
        return false;
    }

    @Override
    public boolean isForChanging() {
        return forChanging;
    }

    @Override
    public String named() {
        return named.toString();
    }

    @Override
    public String path() {
        return file.map(path -> path.toAbsolutePath().normalize().toString()).orElse(named.toString());
    }

    @Override
    public String kind() {
        return "config file";
    }

    @Override
    public long bytes() {
        return content.bytes().length;
    }

    @Override
    public LoneFile volume() {
        return content;
    }

    @Override
    public PartitionView partition() {
        return PartitionView.none(WORDS);
    }

    @Override
    public List<String> tableWarnings() {
        return List.of();
    }

    @Override
    public List<Finding> fullLook() {
        return List.of();
    }

    @Override
    public BootCard bootCard() throws CardException {
        throw CardException.refused(
                WORDS + " tells nothing of the boot files beside it",
                "Name the card, or the folder where its boot partition is mounted.");
    }

    @Override
    public boolean switchesPartition() {
        return false;
    }

    @Override
    public CardId id() {
        return CardId.ofFolder(0, bytes());
    }

    @Override
    public FilePlanner planner(LocalDateTime written, boolean inPlace) {
        return new FileTextPlanner(id());
    }

    @Override
    public Target target() throws ReportedIOException {
        throw new ReportedIOException(CardException.refused(
                "no changes are kept of " + WORDS,
                "Name the card, or the folder where its boot partition is mounted."));
    }

    @Override
    public Committed commit(Workplace workplace, Plan plan) throws CardException {
        return FileWrite.run(file.orElseThrow(), plan.files().get(0), workplace.instant());
    }

    @Override
    public Interruption waiting(UndoStore store) {
        return new Interruption.None();
    }

    @Override
    public RawCard raw(String doing) throws CardException {
        throw CardException.refused(WORDS + " cannot be " + doing, "Name the card.");
    }

    @Override
    public void close() {
        // It was read when it was opened.
    }
}
