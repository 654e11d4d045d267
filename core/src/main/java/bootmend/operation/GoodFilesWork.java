package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.NextStep.Allow;
import bootmend.boot.BoardDiagnosis;
import bootmend.boot.BootTables;
import bootmend.boot.GoodFiles;
import bootmend.boot.Verdict;
import bootmend.card.OpenCard;
import bootmend.card.RawCard;
import bootmend.change.FileChange;
import bootmend.change.FilePlanner;
import bootmend.change.RepairPlanner;
import bootmend.config.VisibleText;
import bootmend.fat.BootFiles;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileContent;
import bootmend.finding.Finding;
import bootmend.finding.Place;
import bootmend.request.BoardRequest;
import bootmend.request.RequestedBoard;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.view.CardViews;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Gives a card the boot files of a good one that its boards do not start without. */
record GoodFilesWork(Work work, ChangeRequest.FromGood request) implements WorkOut {

    /** No source: more than a boot file of a board has; a bound on the memory that a change takes. */
    private static final int MOST_FILE_BYTES = 48 << 20;

    private static final long MOST_BYTES = 56L << 20;

    @Override
    public Worked on(OpenCard card) throws CardException, IOException {
        BoardFacts facts = facts();
        refuseDamaged(card);
        try (OpenCard good = open()) {
            if (good.path().equals(card.path())) {
                throw CardException.usage("the good card is the card itself", "Name another card, image or copy.");
            }
            GoodFiles.Choice choice = new GoodFiles(
                            card.bootCard(),
                            good.volume(),
                            facts,
                            new BootTables(work.workplace().tables()))
                    .choose();
            Map<String, DirectoryEntry> files = new TreeMap<>(choice.files());
            named(good.volume()).forEach(files::putIfAbsent);
            refuseBroken(choice, good, files);
            FilePlanner planner = work.planner(card);
            long bytes = 0;
            for (Map.Entry<String, DirectoryEntry> each : files.entrySet()) {
                FileChange change = change(card.volume(), good, each.getKey(), each.getValue());
                if (!Arrays.equals(change.before(), change.after())) {
                    bytes += change.after().length;
                    refuseTooMuch(bytes);
                    planner.put(change);
                }
            }
            return Worked.of(new CardViews(work.workplace()).of(card), planner.plan(title(good)))
                    .noting(notes(choice, files.isEmpty()));
        }
    }

    private BoardFacts facts() throws CardException {
        return request.board().isPresent()
                ? new RequestedBoard(work.workplace().tables())
                        .facts(BoardRequest.of(request.board().get()))
                : BoardFacts.none();
    }

    private OpenCard open() throws CardException {
        try {
            return OpenCard.open(work.workplace().opener(), request.good(), false);
        } catch (CardException e) {
            throw e.about(request.good().card().toString());
        }
    }

    /** What is damaged below the files would be written over; the repair of it comes first. */
    private void refuseDamaged(OpenCard card) throws CardException, IOException {
        if (!(card instanceof RawCard raw)) {
            return;
        }
        var repair = new RepairPlanner(
                        raw.window(),
                        raw.volumeStart(),
                        work.written(),
                        work.order().accepts(Allow.IN_PLACE))
                .plan(false);
        Optional<Finding> damage = repair.findings().stream()
                .filter(finding -> !finding.where().equals(Place.Region.FLAGS)
                        && !finding.where().equals(Place.Region.FS_INFO)
                        && !finding.id().equals("lost-clusters"))
                .findFirst();
        if (damage.isPresent()) {
            throw CardException.refused(
                    "the boot partition has damage of its own, which must be repaired first: "
                            + damage.get().where().words() + ": " + damage.get().what(),
                    "",
                    NextStep.Plain.REPAIR_CARD);
        }
    }

    /** Those that the user names go on the card as the good one has them, whatever they are. */
    private Map<String, DirectoryEntry> named(BootFiles good) throws CardException, IOException {
        Map<String, DirectoryEntry> files = new TreeMap<>();
        for (String name : request.files()) {
            String path = name.replace('\\', '/').replaceFirst("^/+", "");
            Optional<DirectoryEntry> entry = good.find(path).filter(each -> !each.folder());
            if (entry.isEmpty()) {
                throw CardException.usage(
                        VisibleText.of(name) + " is no file of the good card",
                        "Files are named from the root folder of the boot partition, such as kernel8.img.");
            }
            files.put(path, entry.get());
        }
        return files;
    }

    private void refuseBroken(GoodFiles.Choice choice, OpenCard good, Map<String, DirectoryEntry> files)
            throws CardException, IOException {
        if (!choice.broken().isEmpty()) {
            throw CardException.refused(
                    good.named() + " is no better: with its files, "
                            + VisibleText.of(choice.broken().get(0)),
                    "Take another good card, image or copy.");
        }
        for (Finding finding : good.fullLook()) {
            boolean concerns = finding.where().equals(Place.Region.FAT)
                    || files.keySet().stream()
                            .anyMatch(path ->
                                    path.equalsIgnoreCase(finding.where().path()));
            if (concerns) {
                throw CardException.refused(
                        good.named() + " is not whole itself: "
                                + finding.where().words() + ": " + finding.what(),
                        "Take another good card, image or copy.");
            }
        }
        if (files.isEmpty() && !choice.absent().isEmpty()) {
            throw CardException.refused(
                    good.named() + " has not what this card needs: "
                            + VisibleText.of(String.join(", ", choice.absent())),
                    "Take a good card for the same boards, of the same system.");
        }
    }

    private static FileChange change(BootFiles card, OpenCard good, String path, DirectoryEntry from)
            throws CardException, IOException {
        byte[] after = whole(good.volume(), from, good.named() + ": " + VisibleText.of(path));
        Optional<DirectoryEntry> there = card.find(path);
        if (there.isPresent() && there.get().folder()) {
            throw CardException.refused(
                    VisibleText.of(path) + " is a folder on this card",
                    "Rename it on a computer that mounts the card.");
        }
        byte[] before = there.isPresent() ? whole(card, there.get(), VisibleText.of(path)) : null;
        return new FileChange(path, before, after);
    }

    private static byte[] whole(BootFiles files, DirectoryEntry entry, String name) throws CardException, IOException {
        if (entry.size() > MOST_FILE_BYTES) {
            throw CardException.refused(
                    name + " has " + entry.size() + " bytes; a change takes files of at most " + MOST_FILE_BYTES,
                    "Copy it over on a computer that mounts the card.");
        }
        FileContent content = files.read(entry, MOST_FILE_BYTES);
        if (!content.isWhole() || content.bytes().length != entry.size()) {
            throw CardException.refused(
                    name + " cannot be read whole"
                            + (content.warnings().isEmpty()
                                    ? ""
                                    : " (" + content.warnings().get(0) + ")"),
                    "",
                    NextStep.Plain.REPAIR_CARD);
        }
        return content.bytes();
    }

    private static void refuseTooMuch(long bytes) throws CardException {
        if (bytes > MOST_BYTES) {
            throw CardException.refused(
                    "the files that the card needs have over " + (MOST_BYTES >> 20) + " MiB together, more than one "
                            + "change takes",
                    "Name the largest of them alone first, then do it again for the rest.",
                    NextStep.Plain.NAME_FILES);
        }
    }

    private static List<String> notes(GoodFiles.Choice choice, boolean nothing) {
        List<String> notes = new ArrayList<>();
        if (!nothing) {
            notes.add(
                    "A kernel of another version than the system on the root partition may not find its drivers there;"
                            + " take files of the same system's same version.");
        }
        if (!choice.absent().isEmpty()) {
            notes.add("Not there to be taken: " + VisibleText.of(String.join(", ", choice.absent())) + ".");
        }
        for (BoardDiagnosis board : choice.after().boards()) {
            if (board.chain().verdict() instanceof Verdict.Stops stops) {
                notes.add("With this " + board.board() + " still stops: "
                        + stops.cause().sentence());
            }
        }
        return notes;
    }

    private static String title(OpenCard good) {
        String from = VisibleText.of(good.named());
        return "boot files from " + (from.length() > 100 ? from.substring(from.length() - 100) : from);
    }
}
