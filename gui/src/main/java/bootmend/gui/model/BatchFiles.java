package bootmend.gui.model;

import bootmend.CardException;
import bootmend.check.Purpose;
import bootmend.job.CardResult;
import bootmend.job.CheckView;
import bootmend.page.BatchPage;
import bootmend.page.CardOutcome;
import bootmend.page.PackingSlip;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;

/** Writes what a batch found to files that a user named; a file is there whole or as it was before. */
final class BatchFiles {

    private static final String UNFINISHED = ".part";

    private BatchFiles() {
    }

    /** What stands in a file. */
    @FunctionalInterface
    private interface Content {
        void write(Writer out) throws IOException;
    }

    /** A sheet a card, to print and pack. */
    static Path slips(Path file, Purpose purpose, List<CardResult<CheckView>> checked) throws CardException {
        return save(file, out -> {
            try (PackingSlip slip = PackingSlip.open(out, purpose, ZoneId.systemDefault())) {
                for (CardResult<CheckView> result : checked) {
                    String card = result.card().toString();
                    if (result.view().isPresent()) {
                        slip.add(card, result.view().get());
                    } else if (result.error().isPresent()) {
                        slip.add(card, result.error().get());
                    }
                }
            }
        });
    }

    /**
     * A row a card.
     *
     * @param what was done, in a few words
     */
    static Path report(Path file, String what, List<CardOutcome> outcomes) throws CardException {
        return save(file, out -> {
            try (BatchPage page = BatchPage.open(out, what)) {
                for (CardOutcome outcome : outcomes) {
                    page.add(outcome);
                }
            }
        });
    }

    private static Path save(Path file, Content content) throws CardException {
        Path whole = file.toAbsolutePath();
        try {
            Path part = whole.resolveSibling(whole.getFileName() + "." + UUID.randomUUID() + UNFINISHED);
            try {
                try (Writer out = Files.newBufferedWriter(part, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW)) {
                    content.write(out);
                }
                Files.move(part, whole, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(part);
            }
            return whole;
        } catch (IOException e) {
            throw CardException.refused(file + " could not be written (" + e.getMessage() + ")",
                    "Name a file in a folder that is there and that you may write to.", e);
        }
    }
}
