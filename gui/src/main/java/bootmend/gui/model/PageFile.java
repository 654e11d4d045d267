package bootmend.gui.model;

import bootmend.CardException;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Locale;
import java.util.UUID;

/** A file that a page is saved to: written beside and moved over, so that it is whole or not there. */
final class PageFile {

    private final Path file;

    /** What stands in the page. */
    @FunctionalInterface
    interface Content {
        void write(Writer out) throws IOException;
    }

    PageFile(Path file) {
        this.file = file.toAbsolutePath();
    }

    /**
     * Saves the page; what was in the file before is gone only once the new one is whole.
     *
     * @param cards the cards that it is about, to which no page is ever saved
     * @return where it is
     */
    Path save(List<Path> cards, Content content) throws CardException {
        for (Path card : cards) {
            refuseOnCard(card);
        }
        refuseToReplaceOthers();
        Path beside = file.resolveSibling(file.getFileName() + "." + UUID.randomUUID() + ".part");
        try {
            write(beside, content);
            moveOver(beside);
            return file;
        } catch (IOException e) {
            throw CardException.refused(
                    file + " could not be written (" + e.getMessage() + ")",
                    "Name a file in a folder that is there and that you may write to.",
                    e);
        } finally {
            deleteLeft(beside);
        }
    }

    private void refuseOnCard(Path card) throws CardException {
        try {
            Path parent = file.getParent();
            boolean onCard = Files.exists(file) && Files.exists(card) && Files.isSameFile(file, card)
                    || parent != null
                            && Files.isDirectory(card)
                            && Files.exists(parent)
                            && parent.toRealPath().startsWith(card.toRealPath());
            if (onCard) {
                throw CardException.refused(
                        file + " is on the card itself, or is the card", "Name a file in another folder.");
            }
        } catch (IOException e) {
            throw CardException.refused(
                    file + " could not be looked at (" + e.getMessage() + ")", "Name a file in another folder.", e);
        }
    }

    /** The system's dialog asked before a file is replaced; a card image named by mistake is left alone even so. */
    private void refuseToReplaceOthers() throws CardException {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        boolean page = (name.endsWith(".html") || name.endsWith(".htm"))
                && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS);
        if (!page && Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            throw CardException.refused(
                    file + " is there already and was left alone, for it does not look like a page",
                    "Name a file that is not there yet, or one that ends in .html.");
        }
    }

    private static void write(Path beside, Content content) throws IOException {
        try (Writer out = Files.newBufferedWriter(
                beside, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            content.write(out);
        }
    }

    private void moveOver(Path beside) throws IOException {
        try {
            Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static void deleteLeft(Path beside) {
        try {
            Files.deleteIfExists(beside);
        } catch (IOException e) {
            // Whatever kept the slip from being saved was told already.
            return;
        }
    }
}
