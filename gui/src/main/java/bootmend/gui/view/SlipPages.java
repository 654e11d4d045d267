package bootmend.gui.view;

import bootmend.page.SlipContent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.geometry.Insets;
import javafx.scene.layout.Background;
import javafx.scene.layout.Border;
import javafx.scene.layout.BorderStroke;
import javafx.scene.layout.BorderStrokeStyle;
import javafx.scene.layout.BorderWidths;
import javafx.scene.layout.CornerRadii;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.FontPosture;
import javafx.scene.text.FontWeight;
import javafx.scene.text.Text;
import javafx.scene.text.TextFlow;

/**
 * A packing slip on sheets of paper, black on white whatever the window's look.
 *
 * <p>The sheets belong to no scene, so that no style of the window reaches them.
 */
final class SlipPages {

    private static final String TYPE = "Serif";
    private static final String HASH_TYPE = "Monospaced";
    private static final double TITLE = 15;
    private static final double BODY = 10;
    private static final double SMALL = 8.5;
    private static final double NAMES = 80;
    private static final double FOOT = 24;
    private static final double GAP = 3;
    /** Longer text, which only a hostile card has, would not fit on a sheet. */
    private static final int LONGEST = 1500;

    private final double width;
    private final double height;

    /** @param width of what can be printed on a sheet, and {@code height}: in points of 1/72 inch */
    SlipPages(double width, double height) {
        this.width = width;
        this.height = height;
    }

    /** The sheets in order, laid out; at least one. */
    List<Region> of(SlipContent slip) {
        List<List<Region>> sheets = new ArrayList<>(List.of(new ArrayList<>()));
        double used = 0;
        for (Region block : blocks(slip)) {
            double needed = Math.ceil(block.prefHeight(width));
            if (used + needed > height - FOOT && used > 0) {
                sheets.add(new ArrayList<>());
                used = 0;
            }
            sheets.get(sheets.size() - 1).add(block);
            used += needed;
        }
        List<Region> pages = new ArrayList<>();
        for (int i = 0; i < sheets.size(); i++) {
            pages.add(page(sheets.get(i), slip.card() + ", " + (i + 1) + " / " + sheets.size()));
        }
        return pages;
    }

    private Region page(List<Region> blocks, String foot) {
        VBox page = new VBox();
        page.setBackground(Background.fill(Color.WHITE));
        Region spacer = new Region();
        VBox.setVgrow(spacer, Priority.ALWAYS);
        page.getChildren().addAll(blocks);
        page.getChildren().addAll(spacer, flow(text(foot, SMALL)));
        page.setMinSize(width, height);
        page.setPrefSize(width, height);
        page.setMaxSize(width, height);
        page.resize(width, height);
        page.layout();
        return page;
    }

    private List<Region> blocks(SlipContent slip) {
        List<Region> blocks = new ArrayList<>();
        blocks.add(padded(flow(bold(slip.card(), TITLE)), 0));
        VBox verdict = new VBox(flow(slip.ready() ? text(slip.verdict(), BODY + 1) : bold(slip.verdict(), BODY + 1)));
        verdict.setPadding(new Insets(4, 8, 4, 8));
        verdict.setBorder(border(new BorderWidths(slip.ready() ? 1 : 3)));
        blocks.add(verdict);
        blocks.add(space(4));
        slip.facts().forEach(fact -> blocks.add(fact(fact)));
        blocks.add(space(6));
        slip.groups().forEach(group -> blocks.addAll(group(group)));
        if (slip.groups().isEmpty()) {
            blocks.add(flow(text(SlipContent.NOTHING, BODY)));
        }
        blocks.add(blanks());
        blocks.add(flow(text(SlipContent.CAUTION, SMALL)));
        return blocks;
    }

    private static Region fact(SlipContent.Fact fact) {
        TextFlow name = flow(text(fact.name(), BODY));
        name.setMinWidth(NAMES);
        name.setPrefWidth(NAMES);
        VBox value = new VBox(flow(text(fact.value(), BODY)));
        if (!fact.detail().isEmpty()) {
            Text detail = text(fact.detail(), 0);
            detail.setFont(Font.font(HASH_TYPE, SMALL - 1));
            value.getChildren().add(flow(detail));
        }
        HBox.setHgrow(value, Priority.ALWAYS);
        return padded(new HBox(6, name, value), 0);
    }

    /** The heading stays on one sheet with the first finding; what follows may go on the next. */
    private static List<Region> group(SlipContent.Group group) {
        List<Region> pieces = new ArrayList<>();
        VBox head =
                new VBox(flow(bold(group.severity().toUpperCase(Locale.ROOT) + "  ", BODY), text(group.rule(), BODY)));
        pieces.add(head);
        group.items()
                .forEach(item -> pieces.add(flow(
                        bold("\u2022 " + item.where(), BODY),
                        text(": " + item.what() + (item.boards().isEmpty() ? "" : " " + item.boards()), BODY))));
        head.getChildren().add(pieces.remove(1));
        Text remedy = text(group.remedy(), 0);
        remedy.setFont(Font.font(TYPE, FontPosture.ITALIC, BODY));
        pieces.addAll(List.of(
                flow(text(group.meaning(), BODY)), flow(remedy), flow(text("Source: " + group.source(), SMALL))));
        double edge =
                switch (group.severity()) {
                    case "blocker" -> 4;
                    case "warning" -> 2;
                    default -> 0.5;
                };
        pieces.forEach(piece -> padded(piece, 12 - edge).setBorder(border(new BorderWidths(0, 0, 0, edge))));
        pieces.add(space(8));
        return pieces;
    }

    private static Region padded(Region block, double left) {
        block.setPadding(new Insets(0, 0, GAP, left));
        return block;
    }

    private Region blanks() {
        HBox row = new HBox(20);
        row.setPadding(new Insets(34, 0, 4, 0));
        SlipContent.BLANKS.forEach(name -> {
            VBox blank = new VBox(flow(text(name, SMALL)));
            blank.setBorder(border(new BorderWidths(0.7, 0, 0, 0)));
            blank.setPrefWidth(width);
            row.getChildren().add(blank);
        });
        return row;
    }

    private static Region space(double points) {
        Region space = new Region();
        space.setMinHeight(points);
        space.setPrefHeight(points);
        return space;
    }

    private static Border border(BorderWidths widths) {
        return new Border(new BorderStroke(Color.BLACK, BorderStrokeStyle.SOLID, CornerRadii.EMPTY, widths));
    }

    private static TextFlow flow(Text... texts) {
        TextFlow flow = new TextFlow(texts);
        flow.setMinWidth(0);
        flow.setMinHeight(Region.USE_PREF_SIZE);
        return flow;
    }

    private static Text bold(String words, double size) {
        Text text = text(words, size);
        text.setFont(Font.font(TYPE, FontWeight.BOLD, size));
        return text;
    }

    private static Text text(String words, double size) {
        Text text = new Text(words.length() <= LONGEST ? words : words.substring(0, LONGEST) + "\u2026");
        text.setFont(Font.font(TYPE, size));
        text.setFill(Color.BLACK);
        return text;
    }
}
