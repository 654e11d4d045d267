package bootmend.gui.model;

import bootmend.page.PackingSlip;
import bootmend.page.SlipContent;
import bootmend.request.CardRequest;
import bootmend.view.CheckView;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** The packing slip of a card that was checked: what it says, and the file it was saved to. */
public final class SlipModel {

    private final Services services;
    private final CardRequest card;
    private final Watched<Reading<CheckView>> check;
    private final ZoneId zone;
    private final Watched<Reading<Path>> saved = new Watched<>(new Reading.Unasked<>());

    /** @param check what the slip tells of; once it is done anew, nothing counts as saved */
    SlipModel(Services services, CardRequest card, Watched<Reading<CheckView>> check, ZoneId zone) {
        this.services = services;
        this.card = card;
        this.check = check;
        this.zone = zone;
        check.watch(reading -> saved.set(new Reading.Unasked<>()));
    }

    /** Where the slip of the check that is shown was saved, once it was. */
    public Watched<Reading<Path>> saved() {
        return saved;
    }

    /** What the slip says, once the card is checked. */
    public Optional<SlipContent> content() {
        return check.get().value().map(view -> SlipContent.of(cardName(), view, zone, steps()));
    }

    /** A name for its file. */
    public String suggestedName() {
        return "packing-slip-" + cardName().replaceAll("[^A-Za-z0-9._-]", "-") + ".html";
    }

    /** Saves it off the screen's thread; nothing happens while the card is not checked. */
    public void save(Path file) {
        check.get().value().ifPresent(view -> {
            saved.set(new Reading.Waiting<>());
            // Like a change to a card it is not stopped half-way.
            services.queue()
                    .submitChange(
                            services.words().of("busy.slip"),
                            () -> new PageFile(file).save(List.of(card.card()), out -> write(out, view)),
                            where -> told(view, new Reading.Ready<>(where)),
                            error -> told(view, new Reading.Failed<>(error)));
        });
    }

    private void write(Writer out, CheckView view) throws IOException {
        try (PackingSlip slip = PackingSlip.open(out, view.purpose(), zone, steps())) {
            slip.add(cardName(), view);
        }
    }

    private void told(CheckView view, Reading<Path> outcome) {
        if (check.get().value().filter(view::equals).isPresent()) {
            saved.set(outcome);
        }
    }

    private StepPlaces steps() {
        return new StepPlaces(services.words());
    }

    private String cardName() {
        Path name = card.card().getFileName();
        return name == null ? card.card().toString() : name.toString();
    }
}
