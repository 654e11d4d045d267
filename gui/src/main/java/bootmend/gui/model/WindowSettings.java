package bootmend.gui.model;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Properties;

/**
 * What the window remembers between starts, in a small text file: its place and size, its look, the board, the cards that
 * were looked at.
 *
 * <p>A file that cannot be read or written is passed over: a window that opens in the wrong place is better than none.
 */
public final class WindowSettings {

    private static final int MOST_CARDS = 12;
    private static final String BOARD = "board";
    private static final String DARK = "dark";
    private static final String CARD = "card.";

    private final Path file;
    private final Properties values = new Properties();

    private WindowSettings(Path file) {
        this.file = file;
    }

    /** @param file need not be there */
    public static WindowSettings load(Path file) {
        WindowSettings settings = new WindowSettings(file);
        try (Reader in = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            settings.values.load(in);
        } catch (IOException | IllegalArgumentException e) {
            settings.values.clear();
        }
        return settings;
    }

    public void save() {
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
            try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
                values.store(out, null);
            }
        } catch (IOException e) {
            // As the class says; nothing of worth is lost.
            return;
        }
    }

    public Optional<String> board() {
        return Optional.ofNullable(values.getProperty(BOARD)).filter(board -> !board.isBlank());
    }

    public void setBoard(Optional<String> board) {
        values.setProperty(BOARD, board.orElse(""));
    }

    public boolean isDark() {
        return Boolean.parseBoolean(values.getProperty(DARK));
    }

    public void setDark(boolean dark) {
        values.setProperty(DARK, Boolean.toString(dark));
    }

    /** A measure of the window by name, in pixels. */
    public OptionalDouble measure(String name) {
        try {
            double value = Double.parseDouble(values.getProperty("window." + name, ""));
            return Double.isFinite(value) && Math.abs(value) < 100_000
                    ? OptionalDouble.of(value)
                    : OptionalDouble.empty();
        } catch (NumberFormatException e) {
            return OptionalDouble.empty();
        }
    }

    public void setMeasure(String name, double value) {
        values.setProperty("window." + name, Double.toString(value));
    }

    /** The cards that were looked at, the latest first. */
    public List<Path> cards() {
        List<Path> cards = new ArrayList<>();
        for (int i = 0; i < MOST_CARDS && values.containsKey(CARD + i); i++) {
            try {
                cards.add(Path.of(values.getProperty(CARD + i)));
            } catch (InvalidPathException e) {
                // Another system's name of a file: nothing to open here.
            }
        }
        return cards;
    }

    /** Puts a card at the head of those that were looked at. */
    public void remember(Path card) {
        List<Path> cards = new ArrayList<>(cards());
        cards.remove(card.toAbsolutePath());
        cards.add(0, card.toAbsolutePath());
        for (int i = 0; i < MOST_CARDS; i++) {
            values.remove(CARD + i);
        }
        for (int i = 0; i < Math.min(MOST_CARDS, cards.size()); i++) {
            values.setProperty(CARD + i, cards.get(i).toString());
        }
    }
}
