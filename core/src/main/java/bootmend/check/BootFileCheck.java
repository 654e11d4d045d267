package bootmend.check;

import bootmend.finding.Place;
import java.util.ArrayList;
import java.util.List;

/** Files that a board starts from and that are not on the card. */
record BootFileCheck() implements Check {

    @Override
    public List<Remark> look(CardContent card) {
        if (!card.bootable()) {
            return List.of(Remark.of(
                    "boots-no-board",
                    Place.Region.VOLUME,
                    "No known board finds firmware, a kernel and a device tree on this card."));
        }
        List<Remark> remarks = new ArrayList<>();
        for (BoardReading board : card.boards()) {
            BoardNeeds needs = card.needs().get(board.id());
            needs.files().stream()
                    .filter(file -> file.isMissing(card.files()))
                    .forEach(file -> remarks.add(missing(board, file)));
            needs.prefixesToNowhere()
                    .forEach(line -> remarks.add(Remark.on(
                            board,
                            "os-prefix-nowhere",
                            Places.of(line),
                            "os_prefix=" + line.value() + " has no kernel and device tree behind it.")));
        }
        return remarks;
    }

    private static Remark missing(BoardReading board, BootFile file) {
        String names = String.join(" or ", file.paths());
        String by = file.namedAt().isPresent() ? ", which the config file asks for," : "";
        return Remark.on(
                board,
                file.kind().ruleWhenMissing(),
                file.namedAt().orElse(Place.file(file.paths().get(0))),
                names + by + " is not on the card.");
    }
}
