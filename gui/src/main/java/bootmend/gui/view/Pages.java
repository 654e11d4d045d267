package bootmend.gui.view;

import bootmend.gui.model.BatchModel;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.DeskModel;
import bootmend.gui.model.LinePlace;
import bootmend.gui.model.Reading;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javafx.scene.Node;
import javafx.scene.control.Tab;

/** The pages between which the middle part changes. */
final class Pages {

    /** The place of the page of earlier versions. */
    private static final int EARLIER = 5;

    private final Kit kit;
    private final Dialogs dialogs;
    private final List<Tab> tabs;
    private final List<Function<CardModel, Node>> ofCard;
    private Optional<ManyCardsPage> batch = Optional.empty();

    Pages(DeskModel desk, Kit kit, Dialogs dialogs) {
        this.kit = kit;
        this.dialogs = dialogs;
        this.tabs = List.of(
                tab("boot"),
                tab("sheet"),
                tab("check"),
                tab("damage"),
                tab("changes"),
                tab("earlier"),
                tab("profiles"),
                tab("trials"));
        this.ofCard = List.of(
                card -> new BootPage(card, kit),
                card -> new SheetPage(card, kit),
                card -> new PurposePage(card, kit, dialogs, place -> takeTo(card, place)),
                card -> new DamagePage(card, kit),
                card -> new ChangesPage(card, kit),
                this::earlier);
        ProfilesPage profiles = new ProfilesPage(desk, kit, dialogs);
        TrialsPage trials = new TrialsPage(desk, kit, dialogs);
        open(tabs.get(ofCard.size()), profiles, profiles::read);
        open(tabs.get(ofCard.size() + 1), trials, trials::read);
    }

    /** A card is searched once its page comes into view. */
    private Node earlier(CardModel card) {
        EarlierPage page = new EarlierPage(card, kit);
        Tab tab = tabs.get(EARLIER);
        tab.setOnSelectionChanged(event -> {
            if (tab.isSelected()) {
                page.read();
            }
        });
        card.sheet().watch(sheet -> {
            if (tab.isSelected() && tab.getContent() == page && sheet instanceof Reading.Ready) {
                page.read();
            }
        });
        return page;
    }

    /** @param read is run whenever the page comes into view: its files may have been edited by hand meanwhile */
    private static void open(Tab tab, Node page, Runnable read) {
        tab.setContent(page);
        tab.setOnSelectionChanged(event -> {
            if (tab.isSelected()) {
                read.run();
            }
        });
    }

    List<Tab> all() {
        return tabs;
    }

    /** Puts a card, or none, on the pages that are about one. */
    void show(Optional<CardModel> card) {
        for (int i = 0; i < ofCard.size(); i++) {
            Tab tab = tabs.get(i);
            Function<CardModel, Node> page = ofCard.get(i);
            tab.setContent(card.map(page).orElseGet(() -> new StartPage(kit)));
            tab.setDisable(card.isEmpty() && i > 0);
        }
    }

    /** The page of several cards together; of the same cards the same page, so that its table stays where it was. */
    Node batch(BatchModel model) {
        if (batch.filter(page -> page.model() == model).isEmpty()) {
            batch = Optional.of(new ManyCardsPage(model, kit, dialogs));
        }
        return batch.get();
    }

    private void takeTo(CardModel card, LinePlace place) {
        Tab sheet = tabs.stream()
                .filter(tab -> tab.getId().equals("tab-sheet"))
                .findFirst()
                .orElseThrow();
        sheet.getTabPane().getSelectionModel().select(sheet);
        card.pointAt(place);
    }

    private Tab tab(String key) {
        Tab tab = new Tab(kit.words().of("page." + key));
        tab.setId("tab-" + key);
        return tab;
    }
}
