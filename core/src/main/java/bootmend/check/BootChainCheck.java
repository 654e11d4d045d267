package bootmend.check;

import bootmend.boot.BoardDiagnosis;
import bootmend.boot.BootChain;
import bootmend.boot.BootLink;
import bootmend.boot.Found;
import bootmend.boot.LinkKind;
import bootmend.boot.LinkState;
import bootmend.finding.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Links of the boot chain that are not whole, on the boards that the card can be meant for. */
record BootChainCheck() implements Check {

    private static final Map<LinkKind, String> NAMES = Map.of(
            LinkKind.PARTITION, "boot-partition",
            LinkKind.FIRMWARE, "firmware",
            LinkKind.KERNEL, "kernel",
            LinkKind.DEVICE_TREE, "device-tree",
            LinkKind.OVERLAYS, "overlay",
            LinkKind.INITRAMFS, "initramfs",
            LinkKind.COMMAND_LINE, "cmdline",
            LinkKind.ROOT, "root");

    @Override
    public List<Remark> look(CardContent card) {
        if (card.read().boot().isEmpty()) {
            return List.of();
        }
        if (!card.bootable()) {
            return List.of(Remark.of(
                    "boots-no-board",
                    Place.Region.VOLUME,
                    "No known board finds a kernel or a device tree of its own on this card."));
        }
        List<Remark> remarks = new ArrayList<>();
        for (BoardDiagnosis board : card.read().boot().get().boards()) {
            look(board.chain(), remarks);
        }
        return remarks;
    }

    private static void look(BootChain chain, List<Remark> remarks) {
        boolean stopped = false;
        for (BootLink link : chain.links()) {
            // Behind a broken link, what is not known of the others says nothing.
            if (!stopped || link.state() != LinkState.UNKNOWN) {
                look(chain.board(), link, remarks);
            }
            stopped |= link.stops();
        }
    }

    private static void look(String board, BootLink link, List<Remark> remarks) {
        if (link.kind() == LinkKind.UPDATE && link.stops()) {
            remarks.add(remark("rescue-card", board, link.at(), link.why()));
        } else if (link.state() != LinkState.WHOLE && NAMES.containsKey(link.kind())) {
            String rule = NAMES.get(link.kind()) + "-" + link.state().word();
            if (link.kind() == LinkKind.OVERLAYS) {
                link.found().stream()
                        // A file that is not there is told at the line that asks for it.
                        .filter(found -> found.state() == LinkState.MISSING
                                ? found.line().isPresent()
                                : !found.isWhole())
                        .forEach(found -> remarks.add(remark(
                                found.line().isPresent() ? "overlay-missing" : "overlay-damaged",
                                board,
                                Optional.of(found),
                                found.check())));
            } else {
                remarks.add(remark(rule, board, link.at(), link.why()));
            }
        }
    }

    private static Place place(Found found) {
        return found.line().isPresent() ? Place.line(found.what(), found.line().getAsInt()) : Place.file(found.what());
    }

    private static Remark remark(String rule, String board, Optional<Found> at, String why) {
        Place place = at.map(BootChainCheck::place).orElse(Place.Region.VOLUME);
        // A clause may begin with a file's name or a setting, which stays as it is written.
        boolean plainWord = why.matches("(?s)[a-z]+[ ,:].*")
                && at.filter(found -> why.startsWith(found.what())).isEmpty();
        String sentence = plainWord ? Character.toUpperCase(why.charAt(0)) + why.substring(1) : why;
        return new Remark(rule, place, sentence + ".", Set.of(board));
    }
}
