package bootmend.cli.report;

import bootmend.CardException;
import bootmend.cli.outcome.CommandWords;
import bootmend.cli.outcome.ExitCode;
import bootmend.operation.Made;
import bootmend.page.CardOutcome;
import bootmend.view.ConfigView;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** A batch as rows of a table, one a card; what a card has several of stands in one cell. */
final class BatchRows {

    static final List<String> HEADER = List.of(
            "card",
            "state",
            "label",
            "serial",
            "fat",
            "config",
            "config_sha256",
            "stock_before",
            "changed",
            "verified",
            "findings",
            "undo_record",
            "seconds",
            "error",
            "remedy",
            "exit_code");

    private BatchRows() {}

    static List<List<String>> of(CardOutcome card) {
        Optional<ConfigView> config = card.was().flatMap(CardOutcome.Was::config);
        return List.of(List.of(
                card.card(),
                card.state().words(),
                was(card, CardOutcome.Was::label),
                was(card, CardOutcome.Was::serial),
                was(card, CardOutcome.Was::fatType),
                config.map(ConfigView::path).orElse(""),
                config.map(ConfigView::sha256).orElse(""),
                was(card, was -> Boolean.toString(was.stock())),
                String.join("; ", card.changedWords()),
                Boolean.toString(card.verified()),
                card.findings().stream().map(card::words).collect(Collectors.joining("; ")),
                card.made().map(Made::record).orElse(""),
                String.format(Locale.ROOT, "%.3f", card.seconds()),
                card.error().map(CardException::getMessage).orElse(""),
                card.error()
                        .map(error -> CommandWords.about(card.card()).remedy(error))
                        .orElse(""),
                Integer.toString(ExitCode.of(card))));
    }

    private static String was(CardOutcome card, Function<CardOutcome.Was, String> field) {
        return card.was().map(field).orElse("");
    }
}
