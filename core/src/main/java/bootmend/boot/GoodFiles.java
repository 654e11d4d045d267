package bootmend.boot;

import bootmend.fat.BootFiles;
import bootmend.fat.DirectoryEntry;
import bootmend.tuning.resolve.BoardFacts;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Works out which boot files of a good card a broken one must get so that its boards start from it, link after link: each
 * time as if those of before were there already.
 *
 * <p>Only what a board is started with is taken: firmware, kernel, device tree, overlays, early file system. What is a
 * card's own, such as its config file, its command line and its keys, is never chosen here.
 */
public final class GoodFiles {

    /** How often it is looked again. No source: a bound. */
    private static final int MOST_ROUNDS = 24;

    private static final int MOST_FILES = 200;
    private static final Set<LinkKind> TAKEN =
            Set.of(LinkKind.FIRMWARE, LinkKind.KERNEL, LinkKind.DEVICE_TREE, LinkKind.OVERLAYS, LinkKind.INITRAMFS);

    /** A card's own. */
    private static final Set<String> OWN = Set.of("config.txt", "tryboot.txt", "cmdline.txt", "autoboot.txt");

    private final BootCard card;
    private final BootFiles good;
    private final BoardFacts facts;
    private final BootTables tables;
    private final Map<String, DirectoryEntry> chosen = new TreeMap<>();
    /** Those of {@link #chosen} that the diagnosis in hand was made with. */
    private final Set<String> there = new HashSet<>();

    private final Set<String> absent = new LinkedHashSet<>();
    private final Set<String> broken = new LinkedHashSet<>();

    /** @param facts what is known of the board; where it names none, every board that the card can be meant for */
    public GoodFiles(BootCard card, BootFiles good, BoardFacts facts, BootTables tables) {
        this.card = card;
        this.good = good;
        this.facts = facts;
        this.tables = tables;
    }

    /**
     * What came of it.
     *
     * @param files the good card's files by the path that they are to have
     * @param absent paths of files that the card needs and the good one has not
     * @param broken clauses on files of the good one that a board could not use either
     * @param after what the boards would come to with them
     */
    public record Choice(
            Map<String, DirectoryEntry> files, List<String> absent, List<String> broken, BootDiagnosis after) {

        public Choice {
            files = new LinkedHashMap<>(files);
            absent = List.copyOf(absent);
            broken = List.copyOf(broken);
        }
    }

    /** The choice. */
    public Choice choose() throws IOException {
        BootDiagnosis diagnosis = diagnosis();
        for (int round = 0; round < MOST_ROUNDS; round++) {
            int before = chosen.size();
            for (BoardDiagnosis board : diagnosis.boards()) {
                take(board.chain());
                if (board.tryOnce().isPresent()) {
                    take(board.tryOnce().get());
                }
            }
            if (chosen.size() == before || chosen.size() > MOST_FILES) {
                break;
            }
            diagnosis = diagnosis();
        }
        return new Choice(chosen, List.copyOf(absent), List.copyOf(broken), diagnosis);
    }

    private BootDiagnosis diagnosis() throws IOException {
        there.addAll(chosen.keySet());
        BootFiles patched = new PatchedFiles(card.files(), good, chosen);
        return BootDiagnosis.of(new PatchedCard(card, patched), facts, tables, Depth.CONTENTS);
    }

    private void take(BootChain chain) throws IOException {
        if (chain.verdict() instanceof Verdict.Stops stops
                && TAKEN.contains(stops.cause().link())
                && stops.cause().remedy() instanceof Remedy.PutFiles put) {
            takeAll(put.files(), stops.cause().sentence());
        }
        for (BootLink link : chain.links()) {
            if (TAKEN.contains(link.kind())) {
                for (Found found : link.found()) {
                    boolean bad = found.state() == LinkState.DAMAGED || found.state() == LinkState.MISSING;
                    boolean looked = found.state() == LinkState.UNKNOWN
                            && found.check().equals(Found.LOOKED_FOR)
                            && !isIn(there, found.what());
                    if ((bad || looked) && found.line().isEmpty()) {
                        takeAll(List.of(found.what()), found.what() + ": " + found.check());
                    }
                }
            }
        }
    }

    /** Of several that would do, each that the good one has; the same bytes are no repair. */
    private void takeAll(List<String> paths, String why) throws IOException {
        List<String> missing = new ArrayList<>();
        boolean any = false;
        for (String path : paths) {
            String plain = path.replace('\\', '/').replaceFirst("^/+", "");
            Optional<DirectoryEntry> entry = plain.isEmpty() || OWN.contains(plain.toLowerCase(Locale.ROOT))
                    ? Optional.empty()
                    : good.find(plain).filter(each -> !each.folder());
            if (isIn(there, plain)) {
                broken.add(why);
                any = true;
            } else if (isIn(chosen.keySet(), plain)) {
                any = true;
            } else if (entry.isPresent()) {
                any = true;
                chosen.put(spelled(plain), entry.get());
            } else {
                missing.add(plain);
            }
        }
        if (!any) {
            absent.addAll(missing);
        }
    }

    private static boolean isIn(Set<String> paths, String path) {
        return paths.stream().anyMatch(each -> each.equalsIgnoreCase(path));
    }

    /** As the card spells it where it has it, for FAT does not tell the case of letters apart; else as the good one does. */
    private String spelled(String path) throws IOException {
        StringBuilder spelled = new StringBuilder();
        StringBuilder asked = new StringBuilder();
        for (String part : path.split("/", -1)) {
            asked.append(asked.isEmpty() ? "" : "/").append(part);
            String name = card.files()
                    .find(asked.toString())
                    .or(() -> find(good, asked.toString()))
                    .map(DirectoryEntry::name)
                    .orElse(part.toLowerCase(Locale.ROOT));
            spelled.append(spelled.isEmpty() ? "" : "/").append(name);
        }
        return spelled.toString();
    }

    private static Optional<DirectoryEntry> find(BootFiles files, String path) {
        try {
            return files.find(path);
        } catch (IOException e) {
            return Optional.empty();
        }
    }
}
